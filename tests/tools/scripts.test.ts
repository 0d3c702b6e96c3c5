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

type Cells = readonly string[];
interface Table {
  readonly head: Cells;
  readonly rows: readonly Cells[];
}

/** The tables of a printout or of a part of the README. */
const tablesIn = (text: string): Table[] =>
  text.split(/\n\s*\n/).flatMap((part) => {
    const lines = part.split('\n').filter((line) => line.startsWith('|'));
    const [head, rule, ...rows] = lines.map((line) => line.split('|').map((cell) => cell.trim()));
    return rule?.[1]?.startsWith('-') === true ? [{ head: head!, rows }] : [];
  });
const saidOf = (...parts: Cells): Table[] => parts.flatMap((part) => tablesIn(readmePart(part)));
const heads = (tables: readonly Table[]): Cells[] => tables.map(({ head }) => head);

/**
 * What a command prints of few dogs, beside what the README says of many: each number within 10 %, or
 * within `points`, which so few may be off by chance. The seeds are fixed, so what moves a number
 * further is a change of the code. A column of `most` grows with the number of dogs.
 */
function holdTo(
  said: readonly Table[],
  printed: readonly Table[],
  points: number,
  most = '',
): void {
  expect(heads(printed)).toEqual(heads(said));
  const off: string[] = [];
  printed.forEach(({ head, rows }, table) => {
    expect(rows).toHaveLength(said[table]!.rows.length);
    rows.forEach((cells, row) =>
      cells.forEach((cell, column) => {
        const readme = said[table]!.rows[row]![column]!;
        const [now, then] = [parseFloat(cell), parseFloat(readme)];
        const same = Number.isNaN(now)
          ? cell === readme
          : Math.abs(now - then) <= Math.max(points, 0.1 * then);
        if (!same && head[column] !== most) {
          off.push(`${cells.join(' ')}, ${head[column]}: ${cell}, in the README ${readme}`);
        }
      }),
    );
  });
  expect(off).toEqual([]);
}

const SMALLEST: Readonly<Record<string, Small>> = {
  loop: {
    words: ['--dogs', '60', '--lives', '60'],
    says: (printed) =>
      holdTo(saidOf('loop, ramp', 'loop, food'), tablesIn(printed), 8, 'longest stall, weeks'),
  },
  calibration: {
    words: ['--dogs', '400'],
    says: (printed) => holdTo(saidOf('calibration'), tablesIn(printed), 4),
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
      const said = saidOf('bench');
      expect(heads(tablesIn(printed))).toEqual(heads(said));
      // Bytes and files do not depend on the machine.
      const firstPaint = ({ rows }: Table): Table => ({
        head: [],
        rows: rows.filter(([, what]) => what!.startsWith('Scripts and styles up to')),
      });
      holdTo(said.map(firstPaint), tablesIn(printed).map(firstPaint), 0);
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
