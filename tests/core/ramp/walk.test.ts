import { describe, expect, it } from 'vitest';
import { addDays, daysBetween } from '../../../core/day.ts';
import { walkRamp, type WalkedWeek } from '../../../core/ramp/walk.ts';
import { boutPath, buildRamp, editRamp, reviewRamp, type Ramp } from '../../../core/training.ts';
import { drawn } from '../../support/laws.ts';
import { followed, histories } from './histories.ts';
import { eventRequests, openRequests } from './requests.ts';

// A plan followed as it stands, edited or not, against the plan as it was drawn up: two ways to the
// same limits.

const open = () => drawn(openRequests, { seed: 5, numRuns: 40 }).map(buildRamp);
const withEvent = () => drawn(eventRequests, { seed: 6, numRuns: 40 }).map(buildRamp);

function each(ramps: readonly Ramp[], holds: (walked: WalkedWeek, ramp: Ramp) => void): void {
  for (const ramp of ramps) {
    for (const walked of walkRamp(ramp).weeks) {
      try {
        holds(walked, ramp);
      } catch (error) {
        const where = `week ${walked.week.number} of ${JSON.stringify(ramp.request)}`;
        throw new Error(`In ${where}`, { cause: error });
      }
    }
  }
}

describe.each([
  ['open', open],
  ['with an event', withEvent],
])('a plan as it was drawn up, %s', (_, ramps) => {
  it('is allowed the minutes of each of its weeks, and recovers in the same', () => {
    each(ramps(), ({ week, limit, recovery }) => {
      if (week.sessions.length === 0) {
        expect(limit).toBe(0);
        return;
      }
      expect(recovery).toBe(week.recovery);
      expect(limit).toBeGreaterThanOrEqual(week.runMinutes - 1e-6);
    });
  });

  it('is allowed no more than it was drawn with, once a whole week was run', () => {
    each(ramps(), ({ week, limit, slot, before }) => {
      if (week.sessions.length === 0 || before.previous === 0) return;
      if (slot.kind === 'bridge') expect(limit).toBeLessThan(week.capMinutes + 1);
      else expect(week.capMinutes).toBe(Math.max(week.runMinutes, Math.floor(limit + 1e-6)));
    });
  });
});

it('a reviewed plan is allowed the minutes of each of its weeks', () => {
  const reviewed = drawn(histories, { seed: 7, numRuns: 60 }).map(
    (input) => reviewRamp(input).ramp,
  );
  each(reviewed, ({ week, limit }) => {
    expect(limit).toBeGreaterThanOrEqual(week.runMinutes - 1e-6);
  });
});

describe('what stands before a week', () => {
  it('is the hardest that was run, and how often', () => {
    const runs = open().map(({ request: { daysOut: _, ...rest } }) => buildRamp(rest));
    for (const ramp of runs) {
      const path = boutPath(ramp.request.start);
      for (const { week, before } of walkRamp(ramp).weeks) {
        const past = ramp.weeks
          .filter(({ startDay, recovery }) => startDay < week.startDay && !recovery)
          .flatMap(({ sessions }) => sessions);
        const places = past.map(({ kind, runMin, walkMin }) =>
          kind === 'continuous'
            ? path.length
            : path.findIndex((step) => step.runMin === runMin && step.walkMin === walkMin),
        );
        const bouts = past.filter(({ kind }) => kind === 'bouts');
        const hardest = Math.max(0, ...places);
        expect(before).toMatchObject({
          stepIndex: hardest,
          sessionsOnStep: places.filter((place) => place === hardest).length,
          fullest: Math.max(0, ...bouts.map(({ runMinutes }) => runMinutes)),
          continuous: bouts.length < past.length,
        });
      }
    }
  });
});

describe('what stands before the first week of a later version', () => {
  const plan = buildRamp({
    startDay: '2026-01-05',
    start: 'conditioned',
    sessionsPerWeek: 3,
    goal: { continuousMinutes: 30 },
  });
  const first = (ramp: Ramp) => walkRamp(ramp).weeks[0]!.before;
  // Another number of weeks a stage draws the plan anew and changes nothing before its goal.
  const later = (count: number, more = 1) => {
    const results = followed(plan, count);
    const day = addDays(results.at(-1)!.day, more);
    return reviewRamp({ ramp: plan, results, day, rules: { stageWeeks: 4 } }).ramp;
  };

  it('is the week that was run last', () => {
    // The seventh week holds 7 and 8 bouts of two minutes, then 4 of three.
    const bouts = { stepIndex: 2, sessionsOnStep: 3, fullest: 16, continuous: false, last: 5 };
    expect(first(later(21))).toMatchObject(bouts);
    const runs = { stepIndex: 5, sessionsOnStep: 3, fullest: 24, continuous: true, last: 9 };
    expect(first(later(39))).toMatchObject(runs);
  });

  it('is nothing after so long a break that it begins anew, nor before the first run', () => {
    const nothing = { stepIndex: 0, sessionsOnStep: 0, fullest: 0, continuous: false, last: -1 };
    expect(first(later(39, 60))).toMatchObject({ ...nothing, peak: 0 });
    expect(first(plan)).toMatchObject({ ...nothing, peak: 0 });
  });

  it('is what a plan of an older release tells of', () => {
    const ramp = later(21);
    const { rung: _, lastRung: __, ...resume } = ramp.request.resume!;
    const older = { ...resume, stepIndex: 2, sessionsOnStep: 1, fullestMinutes: 20 };
    const before = first({ ...ramp, request: { ...ramp.request, resume: older } });
    expect(before).toMatchObject({
      stepIndex: 2,
      sessionsOnStep: 1,
      fullest: 20,
      continuous: false,
    });
    const { fullestMinutes: ___, ...oldest } = older;
    const request = { ...ramp.request, resume: { ...oldest, stepIndex: 5 } };
    // Where no fullest session is told, 42 min a week are three of 14: the rung below has 12.
    expect(first({ ...ramp, request })).toMatchObject({ fullest: 12, continuous: true });
  });
});

describe('a week that comes back', () => {
  const daysOut = Array.from({ length: 14 }, (_, index) => addDays('2026-02-16', index));
  const plan = buildRamp({
    startDay: '2026-01-05',
    start: 'conditioned',
    sessionsPerWeek: 3,
    goal: { continuousMinutes: 30 },
    daysOut,
  });
  const limits = (ramp: Ramp) => walkRamp(ramp).weeks.map(({ limit }) => limit);

  it('may rise by 25 % a week from what it held', () => {
    // 36 min in the sixth week, two weeks away: 27, then 33.75.
    expect(limits(plan).slice(8, 10)).toEqual([27, 33.75]);
  });

  it('is known in a plan of an older release by the days before it', () => {
    const weeks = plan.weeks.map(({ rung: _, returning: __, ...week }) => week);
    expect(limits({ ...plan, weeks }).slice(8, 10)).toEqual([27, 33.75]);
  });

  it('changed by hand counts as it was changed, and whole or not at all', () => {
    const edited = (minutes: number) =>
      limits(editRamp(plan, [{ kind: 'week', number: 9, runMinutes: minutes }]))[9];
    expect(edited(24)).toBe(30);
    const fewer = editRamp(plan, [{ kind: 'remove', day: plan.weeks[8]!.sessions[2]!.day }]);
    expect(limits(fewer)[9]).toBe(33.75);
  });
});

describe('the days before an event', () => {
  const START = '2026-01-05';
  const plan = (eventDay: string) =>
    buildRamp({
      startDay: START,
      start: 'conditioned',
      sessionsPerWeek: 3,
      goal: { continuousMinutes: 20 },
      eventDay,
    });

  it('are the last seven, and what is left between them and the last whole week', () => {
    for (let days = 50; days < 64; days += 1) {
      const eventDay = addDays(START, days);
      const easy = walkRamp(plan(eventDay)).weeks.filter(({ week }) => week.easyBeforeEvent);
      expect(easy.at(-1)!.slot.kind).toBe('event');
      expect(daysBetween(easy.at(-1)!.week.startDay, eventDay)).toBe(7);
      expect(easy.slice(0, -1).every(({ slot }) => slot.kind === 'bridge')).toBe(true);
      expect(easy).toHaveLength(days % 7 === 0 ? 1 : 2);
    }
  });

  it('hold their part of an easy week: one running day of three a third of it', () => {
    for (let days = 50; days < 64; days += 1) {
      const { weeks } = walkRamp(plan(addDays(START, days)));
      const [bridge, event] = [weeks.at(-2)!, weeks.at(-1)!];
      if (bridge.slot.kind !== 'bridge' || bridge.week.sessions.length === 0) continue;
      const part = Math.min(3, bridge.week.sessions.length) / 3;
      // Both are 70 % of the last whole week (D).
      expect(bridge.limit).toBeCloseTo(event.limit * part, 6);
    }
  });
});
