import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const read = (name: string): string => readFileSync(join(ROOT, name), 'utf8');

interface PromiseRow {
  readonly says: string;
  /** The test files, folders of tests and commands that would fail if it were broken. */
  readonly witnesses: readonly string[];
}

/** The rows of the table under "What is promised". */
function promisesOf(page: string): PromiseRow[] {
  const table = page.split('## What is promised')[1]!.split('\n## ')[0]!;
  const rows = table.split('\n').filter((line) => line.startsWith('|'));
  return rows.slice(2).map((row) => {
    const [, says, , testedIn] = row.split('|').map((cell) => cell.trim());
    const witnesses = [...testedIn!.matchAll(/`([^`]+)`/g)].map(([, name]) => name!);
    return { says: says!, witnesses };
  });
}

/** The test files that a path names: itself, or all of a folder. */
function testsAt(path: string): string[] {
  const place = join(ROOT, path);
  if (!existsSync(place)) return [];
  if (!statSync(place).isDirectory()) return [path];
  return readdirSync(place, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.test.ts'))
    .map((name) => join(path, name));
}

const promises = promisesOf(read('SECURITY.md'));
const { scripts } = JSON.parse(read('package.json')) as { scripts: Record<string, string> };

describe('each promise of SECURITY.md', () => {
  test('is in the table', () => {
    expect(promises.length).toBeGreaterThanOrEqual(18);
  });

  test.each(promises.map((each) => [each.says, each] as const))('%s', (_says, { witnesses }) => {
    expect(witnesses.length).toBeGreaterThan(0);
    for (const witness of witnesses) {
      const script = /^npm run (\S+)$/.exec(witness)?.[1];
      if (script !== undefined) {
        expect(Object.keys(scripts)).toContain(script);
        continue;
      }
      const files = testsAt(witness);
      expect(files, witness).not.toEqual([]);
      for (const file of files) {
        expect(file).toMatch(/^tests\/.*\.test\.ts$/);
        expect(read(file), file).toMatch(/\b(test|it)(\.\w+(\(.*\))?)*\(/);
      }
    }
  });

  test('that gives a number of tries gives the number that is tried', () => {
    const said = /\((\d+) fitting inputs a call/.exec(read('SECURITY.md'))![1]!;
    const tried = /\['FUZZ_INPUTS'\] \?\? (\d+)/.exec(read('tests/contract/fuzz.test.ts'))![1]!;
    expect(tried).toBe(said);
  });
});

test.each(['README.md', 'DEVELOPERS.md', 'SECURITY.md'])(
  '%s names tests, tools and commands that exist',
  (page) => {
    const text = read(page);
    for (const [, script] of text.matchAll(/`npm run ([\w:-]+)/g)) {
      expect(Object.keys(scripts), page).toContain(script);
    }
    // `…`, N and * stand for what the reader puts in.
    const paths = [...text.matchAll(/`((?:tests|core|electron|renderer|templates)\/[^`\s]*)`/g)]
      .map(([, path]) => path!)
      .filter((path) => !/[…*]|0*N\b/.test(path));
    for (const path of paths) expect(existsSync(join(ROOT, path)), `${page}: ${path}`).toBe(true);
  },
);
