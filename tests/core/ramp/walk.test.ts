import { describe, expect, it } from 'vitest';
import { addDays, daysBetween } from '../../../core/day.ts';
import { walkRamp, type WalkedWeek } from '../../../core/ramp/walk.ts';
import { boutPath, buildRamp, reviewRamp, type Ramp } from '../../../core/training.ts';
import { drawn } from '../../support/laws.ts';
import { histories } from './histories.ts';
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

  it('is allowed no more than it was drawn with, where no days are out', () => {
    const undisturbed = ramps().map(({ request: { daysOut: _, ...rest } }) => buildRamp(rest));
    each(undisturbed, ({ week, limit, slot }) => {
      if (week.sessions.length === 0) return;
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
