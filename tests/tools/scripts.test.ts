import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { readmePart } from '../support/readmeTable.ts';
import { SOURCE_RUN_FLAGS } from '../support/runtimeFlags.ts';

// What is not run rots: every script of package.json is run in CI, here at its smallest or elsewhere.

const ROOT = resolve(import.meta.dirname, '../..');
const { scripts } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as {
  scripts: Record<string, string>;
};
const folder = mkdtempSync(join(tmpdir(), 'trotwell-scripts-'));
afterAll(() => rmSync(folder, { recursive: true }));

const BY_THE_RUN_ITSELF = ['test', 'build', 'demo', 'check', 'tracks'];
const BY_CHECK = ['format:check', 'lint', 'typecheck', 'arrows', 'licences'];
/** Each with the tests that run its file or its parts. */
const BY_OTHER_TESTS: Readonly<Record<string, string>> = {
  start: 'tests/start/',
  audit: 'tests/tools/dependencies.test.ts',
  attack: 'tests/attack/',
  package: 'tests/packaging/pack.test.ts',
  format: 'its own check, in format:check',
};

interface Small {
  readonly words: readonly string[];
  readonly says: (printed: string) => void;
}

/** The head of a printed table and of the README's, in words. */
const heads = (text: string): string[][] =>
  text
    .split('\n')
    .filter((line, index, all) => /^\| -/.test(all[index + 1] ?? '') && line.startsWith('|'))
    .map((line) => line.split('|').map((cell) => cell.trim()));

const tablesOf = (...parts: readonly string[]) => parts.flatMap((part) => heads(readmePart(part)));

const SMALLEST: Readonly<Record<string, Small>> = {
  loop: {
    words: ['--dogs', '2', '--lives', '3'],
    says: (printed) => expect(heads(printed)).toEqual(tablesOf('loop, ramp', 'loop, food')),
  },
  calibration: {
    words: ['--dogs', '20'],
    says: (printed) => expect(heads(printed)).toEqual(tablesOf('calibration')),
  },
  mutants: {
    // Other lines each time: too few to be held to a share, and more take minutes.
    words: `--seed ${Date.now()} --core 2 --service 0 --workers 1 --least 0`.split(' '),
    says: (printed) => {
      expect(printed).toMatch(/\| all \| \d+ of \d+ \|/);
      console.log(printed);
    },
  },
  bench: {
    words: ['--dogs', '120', '--no-scaling', '--hurry'],
    says: (printed) => {
      expect(heads(printed)).toEqual(tablesOf('bench'));
      // Bytes and files do not depend on the machine.
      expect(firstPaint(printed)).toBeLessThan(1.1 * firstPaint(readmePart('bench')));
      expect(firstPaint(printed)).toBeGreaterThan(0.9 * firstPaint(readmePart('bench')));
    },
  },
  icons: {
    words: [join(folder, 'icons')],
    says: () =>
      expect(readdirSync(join(folder, 'icons'))).toEqual(
        readdirSync(join(ROOT, 'electron', 'icons')),
      ),
  },
  'handouts:pictures': {
    words: [join(folder, 'pictures'), '20', 'heat-card'],
    says: (printed) => {
      expect(printed).toMatch(/heat-card\.A4\.pdf: 1 page/);
      expect(readdirSync(join(folder, 'pictures')).some((name) => name.endsWith('.png'))).toBe(
        true,
      );
    },
  },
  screenshots: {
    words: [join(folder, 'shots'), 'bin'],
    says: (printed) => expect(printed).toMatch(/bin, \d+ states/),
  },
};

const firstPaint = (text: string): number =>
  Number(/Scripts and styles up to the first list, gzip[^\n]*?(\d+) kB/.exec(text)?.[1]);

test('every script is run somewhere, and the README names none that is not there', () => {
  const run = [BY_THE_RUN_ITSELF, BY_CHECK, Object.keys(BY_OTHER_TESTS), Object.keys(SMALLEST)];
  expect(run.flat().sort()).toEqual(Object.keys(scripts).sort());
  const readme = readFileSync(join(ROOT, 'README.md'), 'utf8');
  const named = [...readme.matchAll(/npm run ([a-z:]+)/g)].map(([, name]) => name!);
  expect(named.filter((name) => !(name in scripts))).toEqual([]);
});

test.each(Object.entries(SMALLEST))(
  '%s runs at its smallest',
  (name, { words, says }) => {
    const [, file] = /^node (\S+)$/.exec(scripts[name]!)!;
    const printed = execFileSync(process.execPath, [...SOURCE_RUN_FLAGS, file!, ...words], {
      cwd: ROOT,
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'pipe'],
      timeout: 570_000,
    });
    says(printed);
  },
  600_000,
);
