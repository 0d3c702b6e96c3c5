import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ladderOf, rungAt, type Ladder } from '../../../core/ramp/ladder.ts';
import { settingOf } from '../../../core/ramp/request.ts';
import type { SessionPlan } from '../../../core/ramp/sessions.ts';
import type { RampRequest } from '../../../core/ramp/types.ts';
import { START_LEVELS } from '../../../core/training.ts';
import { holds } from '../../support/laws.ts';

// The building weeks of an undisturbed plan, against the rules by hand (D; 10 % a session Frandsen 2025,
// S, runners) and as laws over many starts, goals and rules.

const request: RampRequest = {
  startDay: '2026-03-02',
  start: 'conditioned',
  sessionsPerWeek: 3,
  goal: { continuousMinutes: 30 },
};
const minutesOf = ({ repeats, runMin }: SessionPlan) => repeats * runMin;
const ladder = (changes: Partial<RampRequest> = {}, sessions = 3): Ladder =>
  ladderOf(settingOf({ ...request, ...changes }), sessions);
const runsFrom = ({ rungs }: Ladder, longest: number) =>
  rungs
    .filter((rung) => rung.stepIndex === 5 && rung.longest >= longest)
    .map(({ sessions }) => sessions.map(minutesOf));

describe('beyond 30 min without a break', () => {
  it('the longest run grows by a tenth, the others are three quarters of it, in whole minutes', () => {
    const goal = { continuousMinutes: 60 };
    const far = ladder({ goal });
    expect(far.reachesGoal).toBe(true);
    expect(runsFrom(far, 30)).toEqual([
      [30, 22, 22],
      [33, 24, 24],
      [36, 27, 27],
      [39, 29, 29],
      [42, 31, 31],
      [46, 34, 34],
      [50, 37, 37],
      [55, 41, 41],
      [60, 45, 45],
    ]);
    // The last run is the goal, not a minute more.
    expect(runsFrom(ladder({ goal: { continuousMinutes: 58 } }), 55)).toEqual([
      [55, 41, 41],
      [58, 43, 43],
    ]);
    expect(runsFrom(ladder({ goal: { continuousMinutes: 31.5 } }), 30)).toEqual([
      [30, 22, 22],
      [32, 24, 24],
    ]);
  });

  it('the week’s cap holds it back: 5 % of 74 min are 77, then 80 and 84', () => {
    const goal = { continuousMinutes: 34 };
    const slow = runsFrom(ladder({ goal, capPercent: 5 }), 31);
    for (const [longest, ...others] of slow) {
      expect(others.every((other) => other <= Math.floor(0.75 * longest!))).toBe(true);
    }
    const sums = slow.map((week) => week.reduce((a, b) => a + b, 0));
    for (const [index, sum] of sums.entries()) {
      if (index > 0) expect(sum).toBeLessThanOrEqual(sums[index - 1]! * 1.05 + 1e-9);
    }
    expect(slow.at(-1)![0]).toBe(34);
  });

  it('goes up to four hours', () => {
    const all = ladder({ goal: { continuousMinutes: 240 } });
    expect(all.reachesGoal).toBe(true);
    expect(all.rungs.at(-1)!.longest).toBe(240);
    expect(runsFrom(all, 240)).toHaveLength(1);
  });
});

describe('a ladder', () => {
  it('has a first and a last rung for places beyond it', () => {
    const of = ladder();
    expect(rungAt(of, -1)).toBe(of.rungs[0]);
    expect(rungAt(of, 999)).toBe(of.rungs.at(-1));
    expect(rungAt(of, 1)).toBe(of.rungs[1]);
  });

  it('of walks is as long each day, five minutes longer a week', () => {
    const of = ladder({ programme: 'walking' }, 5);
    expect(of.reachesGoal).toBe(true);
    expect(of.rungs.map(({ minutes, longest }) => [minutes, longest])).toEqual([
      [50, 10],
      [75, 15],
      [100, 20],
      [125, 25],
      [150, 30],
    ]);
    const near = ladder({ programme: 'walking', walkMinutesNow: 28 }, 4);
    expect(near.rungs.map(({ minutes }) => minutes)).toEqual([112, 120]);
  });

  it('ends where the rules leave no way, at the farthest week there is', () => {
    // A week of 18 min may rise by 0.9: less than a bout of a minute.
    const rules = { smallStepMinutes: 0 };
    const stuck = ladder({ capPercent: 5, rules });
    expect(stuck.reachesGoal).toBe(false);
    expect(stuck.rungs.every(({ minutes }) => minutes <= 18)).toBe(true);
    expect(stuck.rungs.length).toBeLessThan(156);
    const far = ladder({ capPercent: 5, rules, goal: { continuousMinutes: 60 } });
    expect(far.reachesGoal).toBe(false);
    expect(far.rungs).toEqual(stuck.rungs);
  });

  it('is not climbed faster on two days a week than on three', () => {
    for (const start of START_LEVELS) {
      const [two, three] = [2, 3].map((sessions) => ladder({ start }, sessions));
      expect(two!.rungs.length).toBeGreaterThanOrEqual(three!.rungs.length);
      for (const [index, { longest }] of two!.rungs.entries()) {
        const upTo = three!.rungs.slice(0, index + 1).map((rung) => rung.longest);
        expect(longest).toBeLessThanOrEqual(Math.max(...upTo));
      }
    }
  });
});

const asked = fc.record({
  start: fc.constantFrom(...START_LEVELS),
  sessions: fc.constantFrom(2, 3),
  minutes: fc.constantFrom(8, 15, 24, 30),
  capPercent: fc.constantFrom(8, 15, 20, 30),
  rules: fc.record({
    sessionsPerStep: fc.constantFrom(2, 3, 5),
    boutsPerSession: fc.constantFrom(1, 2, 3),
    leastSharePercent: fc.constantFrom(40, 60, 80),
  }),
});

describe('every ladder', () => {
  it('keeps the rules from one session to the next', () => {
    holds(
      fc.property(asked, ({ start, sessions, minutes, capPercent, rules }) => {
        const goal = { continuousMinutes: minutes };
        const setting = settingOf({ ...request, start, goal, capPercent, rules });
        const { rungs, reachesGoal } = ladderOf(setting, sessions);
        const { path } = setting;
        const placeOf = ({ kind, runMin, walkMin }: SessionPlan) =>
          kind === 'continuous'
            ? path.length
            : path.findIndex((step) => step.runMin === runMin && step.walkMin === walkMin);
        let [longest, peak, fullest, step, clean] = [0, 0, 0, 0, 0];
        for (const [index, rung] of rungs.entries()) {
          expect(rung.sessions).toHaveLength(sessions);
          const each = rung.sessions.map(minutesOf);
          const places = rung.sessions.map(placeOf);
          const sum = each.reduce((a, b) => a + b, 0);
          expect(rung).toMatchObject({ minutes: sum, longest: Math.max(...each) });
          expect(rung.stepIndex).toBe(places.at(-1));
          const small = peak < 20 ? Math.min(peak + 2, 20) : 0;
          const most = Math.max(peak * (1 + capPercent / 100), small);
          if (index > 0) expect(sum).toBeLessThanOrEqual(most + 1e-9);
          const alone = places.every((place) => place === path.length);
          if (!alone) {
            const share = Math.min(...each) / Math.max(...each);
            expect(share).toBeGreaterThanOrEqual(rules.leastSharePercent / 100 - 1e-9);
          }
          for (const [at, place] of places.entries()) {
            const cap = Math.max(longest * 1.1, longest + 2);
            if (index > 0) expect(each[at]).toBeLessThanOrEqual(cap + 1e-9);
            // One step at a time, each done as often as the rule asks for.
            expect([step, step + 1]).toContain(place);
            if (place > step) expect(clean).toBeGreaterThanOrEqual(rules.sessionsPerStep);
            if (place < path.length) {
              if (index > 0) {
                expect(rung.sessions[at]!.repeats).toBeGreaterThanOrEqual(rules.boutsPerSession);
              }
              expect(rung.sessions[at]!.repeats).toBeLessThanOrEqual(10);
              if (at > 0 && places[at - 1] === place) {
                expect(each[at]).toBeGreaterThanOrEqual(each[at - 1]!);
              }
            } else {
              expect(each[at]).toBeGreaterThanOrEqual(5);
              const first = index === 0 || rungs[index - 1]!.stepIndex < path.length;
              if (first) expect(each[at]).toBeLessThanOrEqual(Math.max(5, fullest));
              // The first runs without a break are alike.
              if (first && !alone && places[at - 1] === place) expect(each[at]).toBe(each[at - 1]);
            }
            clean = place > step ? 1 : clean + 1;
            step = place;
            longest = Math.max(longest, each[at]!);
            if (place < path.length) fullest = Math.max(fullest, each[at]!);
          }
          peak = Math.max(peak, sum);
        }
        const met = rungs.filter(
          ({ sessions: of, stepIndex }) =>
            stepIndex === path.length &&
            of.some((one) => placeOf(one) === path.length && minutesOf(one) >= minutes),
        );
        expect(met.length > 0).toBe(reachesGoal);
        // It ends with the first week that meets the goal.
        if (reachesGoal) expect(met).toEqual([rungs.at(-1)]);
      }),
      { seed: 21, numRuns: 60 },
    );
  });
});
