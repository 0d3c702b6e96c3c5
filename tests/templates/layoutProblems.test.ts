import { describe, expect, it } from 'vitest';
import { layoutProblems } from './support/layoutProblems.ts';
import type { TextBox } from './support/readPdf.ts';

const box = (text: string, left: number, top: number): TextBox => ({
  text,
  left,
  top,
  right: left + 40,
  bottom: top + 10,
});
const page = (...boxes: TextBox[]) => [{ width: 595, height: 842, boxes }];

describe('the check of a page', () => {
  it('is silent about words in their places', () => {
    expect(
      layoutProblems(page(box('one', 60, 60), box('two', 101, 60), box('three', 60, 70))),
    ).toEqual([]);
  });

  it('reports a word that leaves the margins', () => {
    expect(layoutProblems(page(box('wide', 520, 60), box('low', 60, 836)))).toEqual([
      'page 1: "wide" leaves the margins',
      'page 1: "low" leaves the margins',
    ]);
  });

  it('reports words that lie over each other', () => {
    expect(layoutProblems(page(box('one', 60, 60), box('two', 90, 64)))).toEqual([
      'page 1: "one" lies over "two"',
    ]);
  });
});
