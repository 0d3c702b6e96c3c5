import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';

/** A line that can hold a decision: not blank, not only brackets, no import and no comment. */
const DECIDES = /[=<>?:&|+*/%!-]|\breturn\b/;
const NOT_CODE = /^\s*(\/\/|\/?\*|import\b|export \*|export type|\} from)/;

/** So many lines below one drawn belong to it, for a mutant may be a block or a condition over lines. */
const BELOW = 2;

/**
 * Ranges of lines to mutate, as Stryker takes them: the lines whose text comes first in an order that
 * the seed gives. An edit elsewhere moves none of them, so a sample stays what it was.
 */
export function sampleLines(files: readonly string[], count: number, seed: number): string[] {
  const lines = files.flatMap((file) =>
    readFileSync(file, 'utf8')
      .split('\n')
      .map((text, index) => ({ file, text, line: index + 1 }))
      .filter(({ text }) => DECIDES.test(text) && !NOT_CODE.test(text))
      .map((at) => ({
        ...at,
        order: createHash('sha256').update(`${seed} ${file} ${at.text.trim()}`).digest('hex'),
      })),
  );
  return lines
    .toSorted((a, b) => (a.order < b.order ? -1 : 1))
    .slice(0, count)
    .map(({ file, line }) => `${file}:${line}-${line + BELOW}`);
}
