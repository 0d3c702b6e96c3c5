import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, daysBetween, weekday } from '../../../core/day.ts';
import {
  boutPath,
  buildRamp,
  checkRamp,
  goalMinutes,
  type Ramp,
  type RampSession,
} from '../../../core/training.ts';
import { eventRequests, openRequests } from './requests.ts';

const EPSILON = 1e-6;

// Drawn once and looked at from every side; the same each time.
const open = fc.sample(openRequests, { seed: 1, numRuns: 1500 }).map(buildRamp);
const withEvent = fc.sample(eventRequests, { seed: 2, numRuns: 1500 }).map(buildRamp);
const undisturbed = open.map(({ request: { daysOut: _, ...rest } }) => buildRamp(rest));
const both = [...open, ...withEvent];

const sessionsOf = (ramp: Ramp): RampSession[] => ramp.weeks.flatMap(({ sessions }) => sessions);

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
  it('holds each week under its cap over the highest earlier week', () => {
    always(both, ({ weeks, capPercent }) => {
      let highest = weeks[0]?.runMinutes ?? 0;
      for (const week of weeks.slice(1)) {
        const small = highest < 20 ? Math.min(highest + 2, 20) : 0;
        const most = Math.max(highest * (1 + capPercent / 100), small);
        if (highest > 0) expect(week.runMinutes).toBeLessThanOrEqual(most + EPSILON);
        expect(week.runMinutes).toBeLessThanOrEqual(week.capMinutes + EPSILON);
        highest = Math.max(highest, week.runMinutes);
      }
    });
  });

  it('adds up: sessions to weeks, bouts to sessions', () => {
    always(both, ({ weeks }) => {
      for (const week of weeks) {
        const sum = week.sessions.reduce((total, { runMinutes }) => total + runMinutes, 0);
        expect(week.runMinutes).toBeCloseTo(sum, 9);
        for (const { repeats, runMin, runMinutes } of week.sessions) {
          expect(repeats * runMin).toBeCloseTo(runMinutes, 9);
          expect(runMinutes).toBeGreaterThan(0);
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
      const open = new Set(weekdays ?? [0, 1, 2, 3, 4, 5, 6]);
      const wrong = sessionsOf(ramp).filter(
        ({ day }) =>
          day < startDay ||
          (notBeforeDay !== undefined && day < notBeforeDay) ||
          out.has(day) ||
          !open.has(weekday(day)),
      );
      expect(wrong).toEqual([]);
    });
  });

  it('has a recovery week every fourth, near 70 % of the week before and never over', () => {
    always(both, ({ weeks }) => {
      let before = 0;
      for (const week of weeks) {
        expect(week.recovery).toBe(week.number % 4 === 0);
        const easy = week.easyBeforeEvent;
        if (week.recovery && !easy && before > 0 && week.sessions.length > 0) {
          const least = 0.5 * week.sessions.length;
          expect(week.runMinutes).toBeLessThanOrEqual(Math.max(0.7 * before, least) + EPSILON);
        }
        if (week.sessions.length > 0) before = week.runMinutes;
      }
    });
  });

  it('comes within a minute and a half of 70 % where no days are out', () => {
    always(undisturbed, ({ weeks }) => {
      weeks.forEach((week, index) => {
        if (!week.recovery || week.sessions.length < 2) return;
        const meant = 0.7 * weeks[index - 1]!.runMinutes;
        expect(week.runMinutes).toBeGreaterThan(meant - 1.5 - EPSILON);
      });
    });
  });

  it('takes the bout path in order, two sessions a step at least', () => {
    always(both, (ramp) => {
      const path = boutPath(ramp.request.start);
      let sessions = 0;
      let step = 0;
      for (const week of ramp.weeks) {
        if (week.sessions.length === 0) continue;
        const anew = week.stepIndex < step;
        if (anew) expect(week.stepIndex).toBe(0);
        if (week.stepIndex > step) {
          expect(week.stepIndex).toBe(step + 1);
          expect(sessions).toBeGreaterThanOrEqual(2);
        }
        if (week.stepIndex !== step) sessions = 0;
        step = week.stepIndex;
        if (!week.recovery) sessions += week.sessions.length;
        for (const session of week.sessions) {
          const bout = path[step];
          expect(session.kind).toBe(bout === undefined ? 'continuous' : 'bouts');
          if (bout === undefined) continue;
          expect(session.walkMin).toBe(bout.walkMin);
          expect(session.runMin).toBeLessThanOrEqual(bout.runMin);
          expect(session.runMin * 2).toBe(Math.round(session.runMin * 2));
        }
      }
    });
  });

  it('runs no longer at first without a break than a session of bouts came to', () => {
    always(both, ({ weeks }) => {
      let fullest = 0;
      let step = 0;
      for (const week of weeks) {
        if (week.sessions.length === 0) continue;
        // After a long break the plan begins anew.
        if (week.stepIndex < step) fullest = 0;
        step = week.stepIndex;
        const longest = Math.max(...week.sessions.map(({ runMinutes }) => runMinutes));
        if (week.sessions[0]!.kind === 'bouts') {
          fullest = Math.max(fullest, longest);
        } else if (fullest > 0) {
          expect(longest).toBeLessThanOrEqual(fullest + EPSILON);
          fullest = 0;
        }
      }
    });
  });

  it('runs hard and easy once continuous', () => {
    always(both, ({ weeks }) => {
      for (const { sessions } of weeks) {
        if (sessions[0]?.kind !== 'continuous') continue;
        const longest = sessions[0].runMinutes;
        const shares = sessions.map(({ runMinutes }) => runMinutes / longest);
        [1, 0.5, 0.75, 0.5].slice(0, shares.length).forEach((share, index) => {
          expect(shares[index]).toBeCloseTo(share, 9);
        });
      }
    });
  });

  it('passes its own live check without a breach', () => {
    always(both, (ramp) => {
      expect(checkRamp(ramp)).toEqual([]);
    });
  });

  it('is the same each time, and plain JSON', () => {
    always(both.slice(0, 300), (ramp) => {
      const again = buildRamp(ramp.request);
      expect(again).toEqual(ramp);
      expect(JSON.parse(JSON.stringify(ramp))).toEqual(ramp);
    });
  });
});

describe('the goal', () => {
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
      const build = ramp.weeks.filter(({ easyBeforeEvent }) => !easyBeforeEvent);
      const before = build.findLast(({ sessions }) => sessions.length > 0)?.runMinutes ?? Infinity;
      const most = Math.max(0.7 * before, 0.5 * last.length);
      if (ramp.weeks.length > 2) expect(sum).toBeLessThanOrEqual(most + EPSILON);
      for (const { day } of sessionsOf(ramp))
        expect(daysBetween(day, eventDay!)).toBeGreaterThan(1);
    });
  });
});
