import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addDays,
  buildRamp,
  firstDayOf,
  plannedSessions,
  plannedWeeks,
  weekAt,
  type PlanVersion,
  type RampSession,
  type RampWeek,
} from '../../../core/index.ts';
import { holds } from '../../support/laws.ts';
import { openRequests } from '../ramp/requests.ts';

const DAY = '2026-03-02';
const ramp = buildRamp({
  startDay: DAY,
  start: 'unconditioned',
  sessionsPerWeek: 3,
  goal: { continuousMinutes: 20 },
});
const RUNS = { seed: 1, numRuns: 25 };

describe('the week a day falls into', () => {
  it('holds the sessions of that week and of no other', () => {
    holds(
      fc.property(openRequests, (request) => {
        const { weeks } = buildRamp(request);
        for (const week of weeks) {
          for (const { day } of week.sessions) {
            expect(weekAt({ weeks }, day)?.number).toBe(week.number);
          }
        }
      }),
      { seed: 1, numRuns: 10 },
    );
  });

  it('begins with its first day, and the rest days after its sessions belong to it', () => {
    const [first, second] = ramp.weeks;
    expect(weekAt(ramp, addDays(first!.startDay, -1))).toBeNull();
    expect(weekAt(ramp, first!.startDay)).toBe(first);
    expect(weekAt(ramp, addDays(second!.startDay, -1))).toBe(first);
    expect(weekAt(ramp, second!.startDay)).toBe(second);
  });

  it('ends with the last outing of the plan', () => {
    const last = ramp.weeks.at(-1)!;
    const end = last.sessions.at(-1)!.day;
    expect(weekAt(ramp, end)).toBe(last);
    expect(weekAt(ramp, addDays(end, 1))).toBeNull();
    // Days out can leave the last week without an outing: its first day ends the plan.
    const weeks = [...ramp.weeks.slice(0, -1), { ...last, sessions: [] }];
    expect(weekAt({ weeks }, last.startDay)?.number).toBe(last.number);
    expect(weekAt({ weeks }, addDays(last.startDay, 1))).toBeNull();
    expect(weekAt({ weeks: [] }, end)).toBeNull();
  });
});

/** A plan drawn up anew from some later days on; a stop has no weeks, and speaks from its own day. */
const versions = fc
  .array(fc.record({ after: fc.integer({ min: 0, max: 40 }), stopped: fc.boolean() }), {
    minLength: 1,
    maxLength: 4,
  })
  .map((changes): PlanVersion[] =>
    changes.map(({ after, stopped }, index) => {
      const madeOn = addDays(DAY, after);
      const { weeks } = index > 0 && stopped ? { weeks: [] } : shifted(ramp, after);
      return { version: index + 1, madeOn, ramp: { weeks } };
    }),
  );

const shifted = ({ weeks }: { weeks: readonly RampWeek[] }, days: number) => ({
  weeks: weeks.map((week) => ({
    ...week,
    startDay: addDays(week.startDay, days),
    sessions: week.sessions.map((each) => ({ ...each, day: addDays(each.day, days) })),
  })),
});

describe('the weeks as they stood', () => {
  it('hold each session of a version that no later version speaks for, once, and nothing else', () => {
    holds(
      fc.property(versions, (plans) => {
        const stood = (session: RampSession, version: number) =>
          plans.every((other) => other.version <= version || session.day < firstDayOf(other));
        const expected = plans.flatMap(({ version, ramp: { weeks } }) =>
          weeks.flatMap(({ sessions }) => sessions.filter((each) => stood(each, version))),
        );
        const days = (list: readonly RampSession[]) => list.map(({ day }) => day);
        expect(days(plannedSessions(plans))).toEqual(days(expected).sort());
        expect(plannedSessions([...plans].reverse())).toEqual(plannedSessions(plans));
      }),
      RUNS,
    );
  });

  it('add up: a week that was broken off counts what was left of it', () => {
    holds(
      fc.property(versions, (plans) => {
        for (const { sessions, runMinutes } of plannedWeeks(plans)) {
          expect(sessions.length).toBeGreaterThan(0);
          expect(runMinutes).toBeCloseTo(
            sessions.reduce((sum, session) => sum + session.runMinutes, 0),
            9,
          );
        }
      }),
      RUNS,
    );
  });

  it('stand in the order of their days, whatever the order of the versions', () => {
    const version = (number: number, days: number): PlanVersion => ({
      version: number,
      madeOn: addDays(DAY, days),
      ramp: shifted(ramp, days),
    });
    const starts = (plans: readonly PlanVersion[]) =>
      plannedWeeks(plans).map(({ startDay }) => startDay);
    const two = [version(1, 0), version(2, 14)];
    expect(starts(two).slice(0, 3)).toEqual([DAY, addDays(DAY, 7), addDays(DAY, 14)]);
    expect(starts(two)).toEqual([...starts(two)].sort());
    // The second was to begin later than the third that took its place: nothing of it stands.
    const overtaken = [version(1, 0), version(2, 28), version(3, 14)];
    expect(starts(overtaken)).toEqual(starts([version(1, 0), version(3, 14)]));
    // One version leaves its weeks as they are.
    expect(plannedWeeks([{ version: 1, madeOn: DAY, ramp }])).toEqual(ramp.weeks);
  });

  it('end on the day running was stopped, not a day later', () => {
    const [first, second] = plannedSessions([{ version: 1, madeOn: DAY, ramp }]);
    const stop = { version: 2, madeOn: second!.day, ramp: { weeks: [] } };
    const left = plannedWeeks([{ version: 1, madeOn: DAY, ramp }, stop]);
    expect(left.map(({ sessions }) => sessions)).toEqual([[first]]);
    expect(left[0]!.runMinutes).toBe(first!.runMinutes);
  });
});
