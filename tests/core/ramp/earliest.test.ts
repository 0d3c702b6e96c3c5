import { describe, expect, it } from 'vitest';
import { addDays } from '../../../core/day.ts';
import { buildRamp, type StartLevel } from '../../../core/training.ts';

// The search in core follows only the fullest weeks. Here every filling of every week is tried, on
// cases small enough for that, with the rules written down once more.

interface State {
  readonly step: number;
  readonly sessions: number;
  readonly peak: number;
  /** The fullest session of bouts: the first run without a break is no longer. */
  readonly fullest: number;
}

const PATHS: Readonly<Record<StartLevel, readonly number[]>> = {
  conditioned: [1, 2, 3, 4, 4],
  unconditioned: [1, 1, 2, 3, 4, 4],
  'post-injury': [0.5, 1, 1, 1, 2, 3, 4, 4],
};
const FIRST: Readonly<Record<StartLevel, number>> = {
  conditioned: 6,
  unconditioned: 4,
  'post-injury': 4,
};
const SHARES: Readonly<Record<number, number>> = { 2: 1.5, 3: 2.25 };
const EPS = 1e-9;

const capOver = (peak: number, percent: number): number =>
  Math.max(peak * (1 + percent / 100), peak < 20 ? Math.min(peak + 2, 20) : 0);

/** Every state a building week can lead to; null when one of them meets the goal. */
function fillings(
  state: State,
  path: readonly number[],
  count: number,
  cap: number,
  goal: number,
): State[] | null {
  const next: State[] = [];
  const continuousFrom = path.length;
  const mayAdvance = state.sessions >= 2;
  for (const step of mayAdvance ? [state.step, state.step + 1] : [state.step]) {
    if (step > continuousFrom) continue;
    if (step === continuousFrom) {
      const held = cap / SHARES[count]!;
      const most = state.step === continuousFrom ? held : Math.min(held, state.fullest);
      if (most >= goal - EPS) return null;
      // The fullest, and some that are not.
      for (const part of [1, 0.97, 0.8]) {
        const minutes = most * part * SHARES[count]!;
        next.push({ ...state, step, sessions: 2, peak: Math.max(state.peak, minutes) });
      }
      continue;
    }
    const bout = path[step]!;
    const most = Math.min(10 * count, Math.floor(cap / bout + EPS));
    const least = step === state.step ? count : 2 * count;
    for (let bouts = least; bouts <= most; bouts += 1) {
      const peak = Math.max(state.peak, bouts * bout);
      const fullest = Math.max(state.fullest, Math.ceil(bouts / count) * bout);
      next.push({ step, sessions: 2, peak, fullest });
    }
  }
  return next;
}

/** The first week in which the goal can be met, by trying everything. */
function bruteForce(start: StartLevel, count: number, goal: number, percent: number): number {
  const path = PATHS[start];
  const first = FIRST[start] * count * path[0]!;
  let states: State[] = [{ step: 0, sessions: count, peak: first, fullest: first / count }];
  for (let week = 2; week <= 40; week += 1) {
    if (week % 4 === 0) continue;
    const seen = new Map<string, State>();
    for (const state of states) {
      const next = fillings(state, path, count, capOver(state.peak, percent), goal);
      if (next === null) return week;
      for (const entry of next) {
        const { step, peak, fullest } = entry;
        seen.set(`${step}/${peak.toFixed(6)}/${fullest}`, entry);
      }
    }
    states = [...seen.values()];
  }
  throw new Error('The case is too large to try everything.');
}

describe('the earliest day', () => {
  const startDay = '2026-03-02';
  const cases: [StartLevel, number, number, number][] = [];
  for (const start of ['conditioned', 'unconditioned', 'post-injury'] as const) {
    for (const count of [2, 3]) {
      for (const goal of [5, 9.5, 13]) {
        for (const percent of [12, 20, 30]) cases.push([start, count, goal, percent]);
      }
    }
  }

  it.each(cases)('%s, %i a week, %d min, %i %%: none is earlier', (start, count, goal, percent) => {
    const ramp = buildRamp({
      startDay,
      start,
      sessionsPerWeek: count,
      goal: { continuousMinutes: goal },
      capPercent: percent,
    });
    const week = bruteForce(start, count, goal, percent);
    expect(ramp.earliestGoalDay).toBe(addDays(startDay, (week - 1) * 7));
  });
});
