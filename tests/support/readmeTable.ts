import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const README = fileURLToPath(new URL('../../README.md', import.meta.url));

type Row = readonly string[];

/** A table in Markdown, its columns in line. */
export function markdownTable(head: Row, rows: readonly Row[]): string {
  const widths = head.map((_, column) =>
    Math.max(...[head, ...rows].map((row) => row[column]!.length)),
  );
  const line = (row: Row): string =>
    `| ${row.map((cell, column) => cell.padEnd(widths[column]!)).join(' | ')} |`;
  return [line(head), line(widths.map((width) => '-'.repeat(width))), ...rows.map(line)].join('\n');
}

const marks = (name: string): readonly [string, string] => [
  `<!-- ${name} -->`,
  `<!-- end of ${name} -->`,
];

/**
 * What the README says between the marks of `name`.
 * @throws when the README has no such place.
 */
export function readmePart(name: string, text = readFileSync(README, 'utf8')): string {
  const [from, to] = marks(name).map((mark) => text.indexOf(mark));
  if (from! < 0 || to! < from!) throw new Error(`The README has no place marked “${name}”.`);
  return text.slice(from! + marks(name)[0].length, to).trim();
}

/** Prints a command's words, and with `--readme` writes them into their place in the README. */
export function tell(name: string, words: string): void {
  console.log(`${words}\n`);
  if (!process.argv.includes('--readme')) return;
  const text = readFileSync(README, 'utf8');
  const [from, to] = marks(name);
  const old = text.slice(text.indexOf(from), text.indexOf(to) + to.length);
  readmePart(name, text);
  writeFileSync(
    README,
    text.replace(old, () => `${from}\n\n${words}\n\n${to}`),
  );
}
