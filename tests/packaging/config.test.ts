import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { matchesGlob, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, test } from 'vitest';
import { neededDownloads, whyNoPackage } from '../../electron/launch/packageTexts.mjs';
import { FONT_FILE_NAMES } from '../../templates/fonts.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const require = createRequire(import.meta.url);
// electron-builder's own loader and schema, as it finds them itself.
const ofBuilder = createRequire(require.resolve('electron-builder'));
const builder = ofBuilder('app-builder-lib/out/util/config/config.js');
const { DebugLogger } = ofBuilder('builder-util');

const { convertIcon } = ofBuilder('app-builder-lib/out/util/iconConverter.js') as {
  convertIcon(wanted: object): Promise<{ icons: { file: string; size: number }[] }>;
};

interface Config {
  /** As electron-builder reads the list of the file. */
  readonly files: readonly { readonly filter: readonly string[] }[];
  readonly asar: boolean;
  readonly asarUnpack: readonly string[];
  readonly extraResources: readonly { readonly from: string; readonly to: string }[];
  readonly electronFuses: Readonly<Record<string, boolean>>;
  readonly fileAssociations: readonly Readonly<Record<string, string>>[];
  readonly [name: string]: unknown;
}

let config: Config;
beforeAll(async () => {
  config = await builder.getConfig(ROOT, 'electron-builder.yml', null);
});

const globs = (): string[] => config.files.flatMap(({ filter }) => filter);

// A dry check: no package is built here, and no Electron runtime is needed.
describe('the packages', () => {
  test('are configured as electron-builder wants it', async () => {
    await expect(builder.validateConfiguration(config, new DebugLogger(false))).resolves.toBe(
      undefined,
    );
    await expect(
      builder.validateConfiguration({ ...config, fuses: {} }, new DebugLogger(false)),
    ).rejects.toThrow('fuses');
  });

  test('come as deb, dmg and nsis for one user, and neither publish nor update themselves', () => {
    expect(config).toMatchObject({
      // An AppImage would start without the sandbox of its window.
      linux: { target: ['deb'] },
      mac: { target: ['dmg'] },
      win: { target: ['nsis'] },
      nsis: { perMachine: false },
      publish: null,
    });
    const { dependencies } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'));
    expect(Object.keys(dependencies)).not.toContain('electron-updater');
  });

  test('name files that exist, and hold all that main and service start from', () => {
    for (const { from } of config.extraResources) expect(existsSync(join(ROOT, from))).toBe(true);
    const { main } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as {
      main: string;
    };
    const packed = (path: string): boolean =>
      globs().some((glob) => matchesGlob(path, glob)) && !globs().includes(`!${path}`);
    for (const file of [main, 'out/main/service.js', 'out/main/printThread.js', 'package.json']) {
      expect(packed(file), file).toBe(true);
    }
    expect(packed('core/index.ts')).toBe(false);
    expect(packed('out/main/loopback.js')).toBe(false);
  });

  test('bring the fonts of the handouts where the packaged program looks for them', () => {
    const fonts = config.extraResources.find(({ to }) => to === 'fonts');
    expect(fonts?.from).toBe('templates/fonts');
    for (const name of FONT_FILE_NAMES) {
      expect(existsSync(join(ROOT, fonts!.from, name)), name).toBe(true);
    }
    const shell = readFileSync(join(ROOT, 'electron', 'shell', 'main.ts'), 'utf8');
    expect(shell).toContain("join(process.resourcesPath, 'fonts')");
  });

  test('keep every native module outside the archive, and rebuild none', () => {
    const folder = join(ROOT, 'node_modules', 'better-sqlite3');
    const native = readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.node'))
      .map((name) => relative(ROOT, join(folder, name)).replaceAll('\\', '/'));
    expect(native.length).toBeGreaterThan(0);
    for (const file of native) {
      expect(config.asarUnpack.some((glob) => matchesGlob(file, glob))).toBe(true);
      const left = globs().filter((glob) => glob.startsWith('!'));
      expect(left.some((glob) => matchesGlob(file, glob.slice(1)))).toBe(false);
    }
    expect(config).toMatchObject({ asar: true, npmRebuild: false });
  });

  // Electron's list for a secure program, item 19 (docs/tutorial/security.md, fuses.md) (S).
  test('have the fuses set', () => {
    expect(config.electronFuses).toMatchObject({
      runAsNode: false,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      onlyLoadAppFromAsar: true,
      enableEmbeddedAsarIntegrityValidation: true,
      enableCookieEncryption: false,
      grantFileProtocolExtraPrivileges: false,
    });
  });

  test.each([
    ['set', 'linux'],
    ['icns', 'mac'],
    ['ico', 'win'],
  ] as const)('bring an icon that electron-builder takes as it is: %s', async (format, system) => {
    const { icon } = config[system] as { icon: string };
    // Anything it has to convert would come to another folder.
    const outDir = join(ROOT, 'dist', 'never-made');
    const { icons } = await convertIcon({
      ...{ sources: [icon], fallbackSources: [], roots: [ROOT], format, outDir },
    });
    expect(icons.length).toBeGreaterThan(0);
    expect(existsSync(outDir)).toBe(false);
    const all = icons.map(({ size }) => size);
    if (format === 'set') expect(all).toEqual(expect.arrayContaining([16, 48, 256, 512]));
    if (format === 'ico') expect(all).toEqual([256]);
    if (format === 'icns') {
      const bytes = readFileSync(icons[0]!.file);
      expect([bytes.toString('latin1', 0, 4), bytes.readUInt32BE(4)]).toEqual([
        'icns',
        bytes.length,
      ]);
    }
  });

  test('open backups of our own type', () => {
    expect(config.fileAssociations).toHaveLength(1);
    expect(config.fileAssociations[0]).toMatchObject({ ext: 'trotwell', name: 'Trotwell backup' });
  });
});

describe('npm run package', () => {
  test.each(['linux', 'darwin', 'win32'] as const)('names what %s has to fetch', (platform) => {
    expect(neededDownloads(platform)).toMatch(/Electron runtime .* and /);
  });

  test('tells a refused download from another fault', () => {
    expect(whyNoPackage('  ⨯ getaddrinfo ENOTFOUND github.com')).toMatch(/download was refused/);
    expect(whyNoPackage('  ⨯ cannot find entry file')).toMatch(/the lines above say why/);
  });
});
