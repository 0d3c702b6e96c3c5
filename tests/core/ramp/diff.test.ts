import { describe, expect, it } from 'vitest';
import { addDays } from '../../../core/day.ts';
import {
  buildRamp,
  diffRamps,
  editRamp,
  type Ramp,
  type RampEdit,
} from '../../../core/training.ts';
import { build, DAY, request } from './requests.ts';

// Mondays, Wednesdays and Fridays: 6, 6 and 6 bouts of a minute, then 6, 7 and 8.
const ramp = build();
const on = (offset: number) => addDays(DAY, offset);
const move = (from: number, to: number): RampEdit => ({
  kind: 'change',
  day: on(from),
  to: { day: on(to) },
});
const sessions = (...edits: RampEdit[]) => diffRamps(ramp, editRamp(ramp, edits)).sessions;
const kinds = (...edits: RampEdit[]) => sessions(...edits).map(({ kind, day }) => [kind, day]);

describe('the sessions of two versions', () => {
  it('that were changed say how, in words and minutes', () => {
    const to = { kind: 'continuous', runMin: 5 } as const;
    expect(sessions({ kind: 'change', day: on(2), to })).toEqual([
      {
        day: on(2),
        kind: 'changed',
        before: '6 × (1 min run, 2 min walk)',
        after: '5 min without a break',
        minutesBefore: 6,
        minutesAfter: 5,
      },
    ]);
  });

  it('that were removed or added have one side only', () => {
    expect(sessions({ kind: 'remove', day: on(0) })).toEqual([
      {
        day: on(0),
        kind: 'removed',
        before: '6 × (1 min run, 2 min walk)',
        after: null,
        minutesBefore: 6,
        minutesAfter: 0,
      },
    ]);
    const session = { kind: 'bouts', repeats: 2, runMin: 1.25, walkMin: 2, day: on(13) } as const;
    expect(sessions({ kind: 'add', session })).toEqual([
      {
        day: on(13),
        kind: 'added',
        before: null,
        after: '2 × (1.3 min run, 2 min walk)',
        minutesBefore: 0,
        minutesAfter: 2.5,
      },
    ]);
  });

  it('are moved up to six days, either way, and removed and added beyond', () => {
    expect(sessions(move(0, 6))).toMatchObject([
      { kind: 'moved', day: on(6), fromDay: on(0), minutesBefore: 6, minutesAfter: 6 },
    ]);
    expect(kinds(move(9, 3))).toEqual([['moved', on(3)]]);
    expect(kinds(move(0, 8))).toEqual([
      ['removed', on(0)],
      ['added', on(8)],
    ]);
  });

  it('are moved only as they were', () => {
    const changed: RampEdit = {
      kind: 'change',
      day: on(0),
      to: { day: on(3), repeats: 5 },
    };
    expect(kinds(changed)).toEqual([
      ['removed', on(0)],
      ['added', on(3)],
    ]);
    // Of two that are gone each new one takes its like.
    const two = sessions(move(2, 3), move(9, 10));
    expect(two.map(({ day, fromDay }) => [day, fromDay])).toEqual([
      [on(3), on(2)],
      [on(10), on(9)],
    ]);
  });

  it('come in the order of their days, from the first compared one on', () => {
    expect(kinds(move(11, 12), move(2, 3), { kind: 'remove', day: on(9) })).toEqual([
      ['moved', on(3)],
      ['removed', on(9)],
      ['moved', on(12)],
    ]);
    const fewer = editRamp(
      ramp,
      [0, 2, 4].map((offset) => ({ kind: 'remove', day: on(offset) })),
    );
    const from = (day: string) =>
      diffRamps(ramp, fewer, day).sessions.map((session) => session.day);
    expect(from(on(0))).toEqual([on(0), on(2), on(4)]);
    expect(from(on(2))).toEqual([on(2), on(4)]);
    expect(from(on(5))).toEqual([]);
  });
});

describe('the weeks of two versions', () => {
  it('run from the first day compared to the last session of either', () => {
    const fewer = editRamp(ramp, [{ kind: 'remove', day: on(7) }]);
    const weeks = (a: Ramp, b: Ramp, day?: string) => diffRamps(a, b, day).weeks;
    expect(weeks(ramp, fewer)).toHaveLength(ramp.weeks.length);
    expect(weeks(ramp, fewer).slice(0, 3)).toEqual([
      { startDay: on(0), before: 18, after: 18 },
      { startDay: on(7), before: 21, after: 15 },
      { startDay: on(14), before: 25, after: 25 },
    ]);
    // From the Wednesday the Monday after belongs to the first seven days.
    expect(weeks(ramp, fewer, on(2))[0]).toEqual({ startDay: on(2), before: 18, after: 12 });
    const none = { ...ramp, weeks: [] };
    expect(weeks(none, none)).toEqual([]);
    expect(weeks(ramp, none)).toHaveLength(ramp.weeks.length);
    expect(weeks(none, ramp)[1]).toEqual({ startDay: on(7), before: 0, after: 21 });
  });
});

describe('what two versions are drawn from', () => {
  it('is set side by side: the goal day, the rise and the rules that differ', () => {
    const after = buildRamp({ ...request, capPercent: 10, rules: { mostBouts: 8, stageWeeks: 2 } });
    const diff = diffRamps(ramp, after);
    expect(diff.fromDay).toBe(DAY);
    expect(diff.capPercent).toEqual({ before: 20, after: 10 });
    expect(diff.goalReachedOn).toEqual({
      before: ramp.goalReachedOn,
      after: after.goalReachedOn,
    });
    expect(diff.goalReachedOn.before).not.toBe(diff.goalReachedOn.after);
    expect(diff.rules).toEqual([
      { id: 'mostBouts', before: 10, after: 8 },
      { id: 'stageWeeks', before: 3, after: 2 },
    ]);
    const { mostBouts: _, ...older } = ramp.rules;
    const old = { ...ramp, rules: older as Ramp['rules'] };
    expect(diffRamps(old, after).rules.map(({ id }) => id)).toEqual(['stageWeeks']);
  });
});
