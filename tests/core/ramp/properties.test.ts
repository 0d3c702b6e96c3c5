import { describe, expect, it } from 'vitest';
import { addDays, daysBetween, weekday } from '../../../core/day.ts';
import {
  boutPath,
  buildRamp,
  checkRamp,
  goalMinutes,
  type Ramp,
  type RampSession,
  type RampWeek,
} from '../../../core/training.ts';
import { drawn } from '../../support/laws.ts';
import { eventRequests, openRequests } from './requests.ts';

const EPSILON = 1e-6;

// Drawn once and looked at from every side; the same each time.
const open = drawn(openRequests, { seed: 1, numRuns: 250 }).map(buildRamp);
const withEvent = drawn(eventRequests, { seed: 2, numRuns: 250 }).map(buildRamp);
const undisturbed = open.map(({ request: { daysOut: _, ...rest } }) => buildRamp(rest));
const both = [...open, ...withEvent];

const sessionsOf = (ramp: Ramp): RampSession[] => ramp.weeks.flatMap(({ sessions }) => sessions);
const longestOf = ({ sessions }: RampWeek): number =>
  Math.max(0, ...sessions.map(({ runMinutes }) => runMinutes));

/** Run-minutes of the first whole week: 6, 4 or 4 half bouts of a minute, over two or three days (D). */
const startOf = ({ request: { start, sessionsPerWeek } }: Ramp): number =>
  ({ conditioned: 6, unconditioned: 4, 'post-injury': 2 })[start] * Math.min(3, sessionsPerWeek);

function always(ramps: readonly Ramp[], holds: (ramp: Ramp) => void): void {
  for (const ramp of ramps) {
    try {
      holds(ramp);
    } catch (error) {
      throw new Error(`For ${JSON.stringify(ramp.request)}`, { cause: error });
    }
  }
}

describe('every generated ramp', () => {
  it('has no session over 10 % or 2 min more than the longest of the 30 days before', () => {
    always(both, (ramp) => {
      const sessions = sessionsOf(ramp);
      const first = sessions[0]?.runMinutes ?? 0;
      for (const { day, runMinutes } of sessions) {
        const before = sessions.filter(
          (other) => other.day < day && daysBetween(other.day, day) <= 30,
        );
        const longest = Math.max(0, ...before.map((other) => other.runMinutes));
        const most = Math.max(first, longest * 1.1, longest + 2);
        expect(runMinutes).toBeLessThanOrEqual(most + EPSILON);
      }
    });
  });

  it('holds each week under its cap over the highest whole week, breaks or none', () => {
    always(both, (ramp) => {
      const { weeks, capPercent } = ramp;
      let highest = 0;
      for (const { runMinutes, capMinutes } of weeks) {
        const small = highest < 20 ? Math.min(highest + 2, 20) : 0;
        const most = Math.max(highest * (1 + capPercent / 100), small, startOf(ramp));
        if (highest > 0) expect(runMinutes).toBeLessThanOrEqual(most + EPSILON);
        expect(runMinutes).toBeLessThanOrEqual(capMinutes + EPSILON);
        highest = Math.max(highest, runMinutes);
      }
    });
  });

  it('is in whole minutes, half ones only in bouts of half a minute, and adds up', () => {
    always(both, ({ weeks }) => {
      for (const week of weeks) {
        expect(week.runMinutes).toBe(
          week.sessions.reduce((total, { runMinutes }) => total + runMinutes, 0),
        );
        for (const { repeats, runMin, runMinutes } of week.sessions) {
          expect(repeats * runMin).toBe(runMinutes);
          expect(runMinutes).toBeGreaterThan(0);
          expect(Number.isInteger(runMin) || runMin === 0.5).toBe(true);
        }
      }
    });
  });

  it('never runs on two days in a row, and on four days of a week at most', () => {
    always(both, (ramp) => {
      const days = sessionsOf(ramp).map(({ day }) => day);
      for (const [index, day] of days.entries()) {
        if (index > 0) expect(daysBetween(days[index - 1]!, day)).toBeGreaterThanOrEqual(2);
      }
      for (const { sessions } of ramp.weeks) {
        expect(sessions.length).toBeLessThanOrEqual(Math.min(4, ramp.request.sessionsPerWeek));
      }
    });
  });

  it('runs only when the owner can, and never before the first day allowed', () => {
    always(both, (ramp) => {
      const { weekdays, daysOut = [], notBeforeDay, startDay } = ramp.request;
      const out = new Set(daysOut);
      const openDays = new Set(weekdays ?? [0, 1, 2, 3, 4, 5, 6]);
      const wrong = sessionsOf(ramp).filter(
        ({ day }) =>
          day < startDay ||
          (notBeforeDay !== undefined && day < notBeforeDay) ||
          out.has(day) ||
          !openDays.has(weekday(day)),
      );
      expect(wrong).toEqual([]);
    });
  });

  it('is never under the start level in a whole week', () => {
    always(open, ({ weeks }) => {
      const first = weeks.find(({ sessions }) => sessions.length > 0)!;
      for (const { sessions, runMinutes } of weeks) {
        if (sessions.length < first.sessions.length) continue;
        // Bouts of a later step may be a minute or two short of it.
        expect(runMinutes).toBeGreaterThanOrEqual(first.runMinutes - 2);
      }
    });
  });

  it('has a recovery week every fourth, 70 % of the highest, where no days are out', () => {
    always(undisturbed, ({ weeks }) => {
      let peak = 0;
      let before = 0;
      for (const week of weeks) {
        const due = week.number % 4 === 0 && before > 0.75 * peak;
        expect(week.recovery).toBe(due);
        const most = Math.max(0.7 * peak, weeks[0]!.runMinutes);
        if (due) {
          expect(week.runMinutes).toBeLessThanOrEqual(most + EPSILON);
          expect(week.runMinutes).toBeGreaterThan(0.8 * most - 2);
        }
        peak = Math.max(peak, week.runMinutes);
        before = week.runMinutes;
      }
    });
  });

  it('takes the bout path in order, two sessions a step at least', () => {
    always(undisturbed, (ramp) => {
      const path = boutPath(ramp.request.start);
      const place = ({ kind, runMin, walkMin }: RampSession): number =>
        kind === 'continuous'
          ? path.length
          : path.findIndex((step) => step.runMin === runMin && step.walkMin === walkMin);
      let [step, sessions] = [0, 0];
      for (const week of ramp.weeks) {
        if (week.recovery) continue;
        for (const session of week.sessions) {
          const at = place(session);
          if (at > step) {
            expect(at).toBe(step + 1);
            expect(sessions).toBeGreaterThanOrEqual(2);
            [step, sessions] = [at, 0];
          }
          expect(at).toBe(step);
          sessions += 1;
        }
      }
    });
  });

  it('runs at first no longer without a break than a session of bouts came to, never under 5 min', () => {
    always(undisturbed, (ramp) => {
      const sessions = sessionsOf(ramp);
      const first = sessions.find(({ kind }) => kind === 'continuous');
      const bouts = sessions.filter(({ kind, day }) => kind === 'bouts' && day < first!.day);
      const fullest = Math.max(...bouts.map(({ runMinutes }) => runMinutes));
      expect(first!.runMinutes).toBeLessThanOrEqual(Math.max(5, fullest));
      for (const { kind, runMinutes } of sessions) {
        if (kind === 'continuous') expect(runMinutes).toBeGreaterThanOrEqual(5);
      }
    });
  });

  it('runs alike up to 20 min without a break, then 100/75/75', () => {
    always(undisturbed, ({ weeks, capPercent, request }) => {
      if (request.sessionsPerWeek === 4) return;
      for (const week of weeks) {
        if (!week.sessions.every(({ kind }) => kind === 'continuous')) continue;
        const longest = longestOf(week);
        const share = longest > 20 ? Math.floor(0.75 * longest) : longest;
        // Under the lowest caps a week cannot rise by a minute in each run.
        const short = capPercent < 10 ? 1 : 0;
        for (const { runMinutes } of week.sessions.slice(1)) {
          expect(runMinutes).toBeGreaterThanOrEqual(share - short - Number(week.easyBeforeEvent));
          expect(runMinutes).toBeLessThanOrEqual(share);
        }
      }
    });
  });

  it('passes its own live check without a breach', () => {
    always(both, (ramp) => {
      expect(checkRamp(ramp)).toEqual([]);
    });
  });

  it('passes it where the sessions’ own cap cuts the week that comes back', () => {
    const away = { from: '2027-03-21', days: 18 };
    const ramp = buildRamp({
      startDay: '2026-12-02',
      start: 'unconditioned',
      sessionsPerWeek: 2,
      goal: { distanceKm: 10, paceMinPerKm: 8 },
      daysOut: Array.from({ length: away.days }, (_, days) => addDays(away.from, days)),
      weekdays: [0, 1, 2, 3, 4, 5],
    });
    expect(checkRamp(ramp)).toEqual([]);
  });

  it('is the same each time, and plain JSON', () => {
    always(both.slice(0, 60), (ramp) => {
      const again = buildRamp(ramp.request);
      expect(again).toEqual(ramp);
      expect(JSON.parse(JSON.stringify(ramp))).toEqual(ramp);
    });
  });
});

describe('the goal', () => {
  it('is met in every plan without an event', () => {
    always(open, ({ goalReachedOn, collisions }) => {
      expect(goalReachedOn).not.toBeNull();
      expect(collisions).toEqual([]);
    });
  });

  it('is met on the day that is named, and on no earlier one', () => {
    always(both, (ramp) => {
      const goal = goalMinutes(ramp.request.goal);
      const met = sessionsOf(ramp).filter(
        ({ kind, runMinutes }) => kind === 'continuous' && runMinutes >= goal - EPSILON,
      );
      expect(ramp.goalReachedOn).toBe(met[0]?.day ?? null);
    });
  });

  it('with an event is met where, and only where, an easy week still fits in', () => {
    always(withEvent, (ramp) => {
      const { eventDay } = ramp.request;
      const reachable = ramp.earliestEventDay !== null && ramp.earliestEventDay <= eventDay!;
      expect(ramp.goalReachedOn !== null).toBe(reachable);
      if (reachable) expect(ramp.goalReachedOn).toBe(ramp.earliestGoalDay);
    });
  });

  it('has the last seven days before an event easy, and the eve free', () => {
    always(withEvent, (ramp) => {
      const { eventDay } = ramp.request;
      const last = sessionsOf(ramp).filter(({ day }) => day >= addDays(eventDay!, -7));
      const sum = last.reduce((total, { runMinutes }) => total + runMinutes, 0);
      const highest = Math.max(...ramp.weeks.map(({ runMinutes }) => runMinutes));
      const most = Math.max(0.7 * highest, startOf(ramp));
      if (ramp.weeks.length > 2) expect(sum).toBeLessThanOrEqual(most + EPSILON);
      for (const { day } of sessionsOf(ramp))
        expect(daysBetween(day, eventDay!)).toBeGreaterThan(1);
    });
  });
});
