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

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const BUILDER = join(ROOT, 'node_modules', 'electron-builder', 'cli.js');
const asar = createRequire(createRequire(import.meta.url).resolve('electron-builder'))(
  '@electron/asar',
) as { listPackage(file: string, options: object): string[] };

// Where Electron's fuses lie in its program: this mark, version 1, the number of fuses, one digit
// each (docs/tutorial/fuses.md) (S).
const MARK = 'dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX';
const FUSES = 9;
/** Off, or on; in the order of Electron's fuses: run as Node, cookie encryption, NODE_OPTIONS, inspect
 * arguments, archive integrity, only from the archive, snapshot of its own, file privileges, and the
 * last one left as Electron ships it. */
const SET = '01001100';

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

// electron-builder itself packs the built program around the stand-in: everything but the runtime and
// the installers is what a package holds.
describe.skipIf(process.platform !== 'linux')('a package without its runtime (Linux only)', () => {
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'trotwell-pack-'));
    const run = spawnSync(
      process.execPath,
      [
        BUILDER,
        '--linux',
        '--dir',
        '--publish',
        'never',
        `-c.electronDist=${pretendRuntime()}`,
        `-c.directories.output=${join(folder, 'dist')}`,
      ],
      { cwd: ROOT, encoding: 'utf8', timeout: 170_000 },
    );
    if (run.status !== 0) throw new Error(`${run.stdout}\n${run.stderr}`);
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
    for (const name of ['better-sqlite3', 'kysely', 'pdfmake', 'temporal-polyfill', 'zod']) {
      expect(files).toContain(`/node_modules/${name}/package.json`);
    }
    expect(
      files.filter((name) => /^\/(core|electron|renderer|templates|tests)\b/.test(name)),
    ).toEqual([]);
    expect(files.filter((name) => name.startsWith('/node_modules/better-sqlite3/deps'))).toEqual(
      [],
    );
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
});
