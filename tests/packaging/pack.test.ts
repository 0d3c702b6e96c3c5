import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { FONT_FILE_NAMES } from '../../templates/fonts.ts';
import { hasTool } from '../templates/support/tools.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const require = createRequire(import.meta.url);
const builder = require('electron-builder') as {
  build(options: object): Promise<unknown>;
  Platform: { LINUX: { createTarget(name: string): unknown } };
};
const asar = createRequire(require.resolve('electron-builder'))('@electron/asar') as {
  listPackage(file: string, options: object): string[];
};

// Where Electron's fuses lie in its program: this mark, version 1, the number of fuses, one digit
// each (docs/tutorial/fuses.md) (S).
const MARK = 'dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX';
const FUSES = 9;
/** Off, or on; in the order of Electron's fuses: run as Node, cookie encryption, NODE_OPTIONS, inspect
 * arguments, archive integrity, only from the archive, snapshot of its own, file privileges, and the
 * last one left as Electron ships it. */
const SET = '00001100';

let folder: string;
let resources: string;

/** A stand-in for the Electron runtime: a program that holds nothing but its fuses, all on. */
function pretendRuntime(): string {
  const runtime = join(folder, 'runtime');
  mkdirSync(join(runtime, 'resources'), { recursive: true });
  writeFileSync(
    join(runtime, 'electron'),
    `stand-in ${MARK}\x01${String.fromCharCode(FUSES)}${'1'.repeat(FUSES)}`,
  );
  chmodSync(join(runtime, 'electron'), 0o755);
  writeFileSync(join(runtime, 'version'), '0.0.0');
  return runtime;
}

/** What electron-builder hands to fpm, which lays out the deb: its words, and the files it wrote. */
let deb: { readonly args: readonly string[]; readonly files: Readonly<Record<string, string>> };

/** @returns true, which keeps electron-builder from calling fpm, a program to be fetched */
async function keepDeb([args]: [string[]]): Promise<true> {
  const files: Record<string, string> = {};
  for (const [from, to] of args.flatMap((word) => {
    const found = /^(.+)=(\/usr\/share\/(?:applications|mime)\/.+)$/.exec(word);
    return found === null ? [] : [[found[1]!, found[2]!] as const];
  })) {
    files[to] = readFileSync(from, 'utf8');
  }
  files['after-install'] = readFileSync(args[args.indexOf('--after-install') + 1]!, 'utf8');
  deb = { args, files };
  return true;
}

// electron-builder itself packs the built program around the stand-in, and hands it to the packer of
// the deb: everything but the runtime and the packer's own work is what a package holds.
describe.skipIf(process.platform !== 'linux')('a package without its runtime (Linux only)', () => {
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'trotwell-pack-'));
    await builder.build({
      projectDir: ROOT,
      targets: builder.Platform.LINUX.createTarget('deb'),
      publish: 'never',
      config: {
        extends: 'electron-builder.yml',
        electronDist: pretendRuntime(),
        directories: { output: join(folder, 'dist') },
      },
      effectiveOptionComputed: keepDeb,
    });
    const [unpacked] = readdirSync(join(folder, 'dist')).filter((name) =>
      name.endsWith('unpacked'),
    );
    resources = join(folder, 'dist', unpacked!, 'resources');
  }, 180_000);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  test('has its fuses set in the program', () => {
    const program = readFileSync(join(resources, '..', 'trotwell'), 'latin1');
    const from = program.indexOf(MARK) + MARK.length + 2;
    expect(program.slice(from, from + SET.length)).toBe(SET);
  });

  test('holds the built program and what it imports, and no source or tests', () => {
    const files = asar.listPackage(join(resources, 'app.asar'), {});
    for (const name of [
      'main/main.js',
      'main/service.js',
      'main/printThread.js',
      'preload/preload.cjs',
    ]) {
      expect(files).toContain(`/out/${name}`);
    }
    for (const name of ['better-sqlite3', 'kysely', 'pdfmake', 'zod']) {
      expect(files).toContain(`/node_modules/${name}/package.json`);
    }
    expect(
      files.filter((name) =>
        /^\/(core|electron|renderer|templates|tests|out\/main\/loopback)\b/.test(name),
      ),
    ).toEqual([]);
    // Neither what the driver is compiled from nor the Node of the npm scripts, a hundred megabytes.
    const left = /^\/node_modules\/(better-sqlite3\/deps|node-(bin-|linux-|darwin-|win-)[^/]*\/.)/;
    expect(files.filter((name) => left.test(name))).toEqual([]);
  });

  test('has the native module and the fonts outside the archive', () => {
    const native = join(
      resources,
      'app.asar.unpacked',
      'node_modules',
      'better-sqlite3',
      'prebuilds',
    );
    expect(readdirSync(native)).toContain('linux-x64.node');
    expect(readdirSync(join(resources, 'fonts'))).toEqual(
      expect.arrayContaining([...FONT_FILE_NAMES]),
    );
  });

  test('is described, and has its icons, as far as electron-builder lays out a deb', () => {
    const after = (word: string): string | undefined => deb.args[deb.args.indexOf(word) + 1];
    expect([after('--name'), after('--url')]).toEqual(['trotwell', 'https://trotwell.example']);
    expect(after('--maintainer')).toMatch(/@trotwell\.example>$/);
    const icons = deb.args.filter((word) => word.includes('/icons/hicolor/'));
    for (const size of [16, 48, 256, 512]) {
      expect(icons.some((word) => word.endsWith(`/${size}x${size}/apps/trotwell.png`))).toBe(true);
    }
    // Made on the machine it is installed on: the sandbox where the system restricts it.
    expect(deb.files['after-install']).toMatch(/apparmor/i);
  });

  // freedesktop.org, Desktop Entry Specification 1.5: groups, keys, the categories of its menu (S).
  test('has a desktop entry that is one, opens backups, and is that of its window', () => {
    const [head, ...lines] =
      deb.files['/usr/share/applications/trotwell.desktop']!.trim().split('\n');
    expect(head).toBe('[Desktop Entry]');
    for (const line of lines) expect(line).toMatch(/^[A-Za-z0-9-]+(\[[\w@.]+\])?=./);
    const entry = Object.fromEntries(lines.map((line) => line.split(/=(.*)/).slice(0, 2)));
    expect(entry).toMatchObject({
      Type: 'Application',
      Name: 'Trotwell',
      Exec: '/opt/Trotwell/trotwell %U',
      Icon: 'trotwell',
      Terminal: 'false',
      StartupWMClass: 'trotwell',
      Categories: 'Office;',
      MimeType: 'application/vnd.trotwell.backup;',
    });
    expect(deb.files['/usr/share/mime/packages/trotwell.xml']).toMatch(
      /type="application\/vnd\.trotwell\.backup">\s*<glob pattern="\*\.trotwell"/,
    );
  });

  // freedesktop.org's own validator of desktop entries (S).
  test.skipIf(!hasTool('desktop-file-validate'))(
    'has a desktop entry its own validator has nothing against (skipped where it is missing)',
    () => {
      const file = join(folder, 'trotwell.desktop');
      writeFileSync(file, deb.files['/usr/share/applications/trotwell.desktop']!);
      const said = spawnSync('desktop-file-validate', [file], { encoding: 'utf8' });
      expect(`${said.stdout}${said.stderr}`).toBe('');
      expect(said.status).toBe(0);
    },
  );
});
