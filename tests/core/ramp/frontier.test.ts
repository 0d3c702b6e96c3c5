import { describe, expect, it } from 'vitest';
import { Frontier, type Sessions, type Week } from '../../../core/ramp/frontier.ts';

// Of the weeks that a plan could hold next only those are followed that another one does not cover.

const parent: Week = {
  steps: [0, 0, 0],
  counts: [6, 6, 6],
  step: 0,
  clean: 3,
  minutes: 18,
  longest: 6,
  least: 6,
  peak: 18,
  fullest: 6,
  total: 18,
  parent: null,
};
const week = (minutes: readonly number[], changes: Partial<Sessions> = {}): Sessions => ({
  steps: minutes.map(() => 0),
  counts: minutes,
  minutes,
  clean: 6,
  bouts: Math.max(...minutes),
  ...changes,
});
const kept = (
  weeks: readonly Sessions[],
  bound?: Pick<Week, 'longest' | 'step'>,
  from = parent,
) => {
  const frontier = new Frontier(4, bound);
  for (const one of weeks) frontier.add(from, one);
  return frontier.weeks().map(({ counts }) => counts);
};

describe('a week', () => {
  it('is added up, with what came before it', () => {
    const frontier = new Frontier(4);
    frontier.add(parent, week([6, 7, 8], { steps: [0, 0, 1], clean: 1, bouts: 7 }));
    expect(frontier.weeks()).toEqual([
      {
        steps: [0, 0, 1],
        counts: [6, 7, 8],
        step: 1,
        clean: 1,
        minutes: 21,
        longest: 8,
        least: 6,
        peak: 21,
        fullest: 7,
        total: 39,
        parent,
      },
    ]);
    const high = { ...parent, peak: 30, fullest: 10 };
    frontier.add(high, week([6, 6, 6], { steps: [2, 2, 2] }));
    expect(frontier.weeks()[1]).toMatchObject({ peak: 30, fullest: 10 });
  });

  it('stays as it was, though the search goes on with the same lists', () => {
    const counts = [6, 6, 6];
    const frontier = new Frontier(4);
    frontier.add(parent, week(counts));
    counts[0] = 9;
    expect(frontier.weeks()[0]!.counts).toEqual([6, 6, 6]);
  });
});

describe('of two weeks on one step', () => {
  it('the one with more in all that counts is followed, whichever came first', () => {
    const [less, more] = [week([6, 6, 6]), week([7, 7, 7])];
    expect(kept([less, more])).toEqual([[7, 7, 7]]);
    expect(kept([more, less])).toEqual([[7, 7, 7]]);
  });

  it('both are where each has more of something', () => {
    const weeks = (changes: Partial<Sessions>) => kept([week([6, 6, 6], changes), week([7, 7, 7])]);
    // More clean sessions count up to those that the step asks for: four.
    expect(kept([week([6, 6, 6], { clean: 3 }), week([7, 7, 7], { clean: 2 })])).toHaveLength(2);
    expect(kept([week([6, 6, 6], { clean: 6 }), week([7, 7, 7], { clean: 4 })])).toHaveLength(1);
    expect(kept([week([6, 6, 6], { clean: 6 }), week([7, 7, 7], { clean: 3 })])).toHaveLength(2);
    // A fuller session of bouts, a longer session, a higher week.
    expect(weeks({ bouts: 9 })).toHaveLength(2);
    expect(kept([week([5, 5, 8]), week([7, 7, 7])])).toHaveLength(2);
    expect(kept([week([8, 5, 5]), week([7, 7, 8], { bouts: 8 })])).toHaveLength(1);
    // On another step they do not compare.
    expect(weeks({ steps: [1, 1, 1] })).toHaveLength(2);
  });

  it('as good as each other the one with more minutes on the way, then the one more alike', () => {
    const longer: Week = { ...parent, total: 40 };
    const frontier = new Frontier(4);
    frontier.add(parent, week([6, 7, 8]));
    frontier.add(longer, week([6, 7, 8]));
    expect(frontier.weeks()).toMatchObject([{ total: 61 }]);
    frontier.add(parent, week([6, 7, 8]));
    expect(frontier.weeks()).toMatchObject([{ total: 61 }]);
    expect(kept([week([5, 8, 8]), week([6, 7, 8])])).toEqual([[6, 7, 8]]);
    expect(kept([week([6, 7, 8]), week([5, 8, 8])])).toEqual([[6, 7, 8]]);
  });
});

describe('a bound', () => {
  it('keeps out what is longer or farther than three days a week allow', () => {
    const bound = { longest: 7, step: 1 };
    const steps = (step: number) => ({ steps: [0, 0, step] });
    expect(kept([week([6, 6, 7])], bound)).toHaveLength(1);
    expect(kept([week([6, 6, 8])], bound)).toEqual([]);
    expect(kept([week([6, 6, 7], steps(1))], bound)).toHaveLength(1);
    expect(kept([week([6, 6, 7], steps(2))], bound)).toEqual([]);
  });
});
