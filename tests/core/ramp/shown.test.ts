import { describe, expect, it } from 'vitest';
import { addDays } from '../../../core/day.ts';
import { collisionsOf } from '../../../core/ramp/collisions.ts';
import { courseOf } from '../../../core/ramp/limits.ts';
import { goalDayOf, withinReachOf } from '../../../core/ramp/outcome.ts';
import { settingOf } from '../../../core/ramp/request.ts';
import {
  enduranceFrom,
  longestBefore,
  onlyWalks,
  outingMinutes,
  rampRuleValues,
  sessionsAWeek,
  shownWeekMinutes,
  stepBackWeek,
  walkBaseGoal,
  weekCap,
  weekSeries,
  type RampRequest,
  type RampWeek,
} from '../../../core/training.ts';
import { build, DAY, request } from './requests.ts';

// What pages and paper show of a plan, against its weeks by hand: 18, 21, 25, 18 (easy), 30, 36, 42, …

const ramp = build();
const walks = build({ programme: 'walking' });
const withRuns = (week: RampWeek, runMinutes: readonly number[]): RampWeek => ({
  ...week,
  runMinutes: runMinutes.reduce((a, b) => a + b, 0),
  sessions: runMinutes.map((minutes, at) => ({ ...week.sessions[at]!, runMinutes: minutes })),
});

describe('the series of a plan', () => {
  it('is its weeks with what was done of them', () => {
    const done = new Map([[addDays(DAY, 7), 12]]);
    expect(weekSeries(ramp.weeks, done).slice(0, 4)).toEqual([
      { at: 1, number: 1, startDay: DAY, planned: 18, cap: 18, done: null, kind: 'building' },
      {
        at: 2,
        number: 2,
        startDay: addDays(DAY, 7),
        planned: 21,
        cap: 21,
        done: 12,
        kind: 'building',
      },
      {
        at: 3,
        number: 3,
        startDay: addDays(DAY, 14),
        planned: 25,
        cap: 25,
        done: null,
        kind: 'building',
      },
      {
        at: 4,
        number: 4,
        startDay: addDays(DAY, 21),
        planned: 18,
        cap: 18,
        done: null,
        kind: 'easy',
      },
    ]);
    const later = weekSeries(ramp.weeks.slice(3));
    expect(later.slice(0, 2).map(({ at, number }) => [at, number])).toEqual([
      [1, 4],
      [2, 5],
    ]);
    const event = build({ eventDay: addDays(DAY, 56) });
    expect(weekSeries(event.weeks).at(-1)!.kind).toBe('easy before the event');
  });

  it('of walks has no cap', () => {
    expect(weekSeries(walks.weeks).every(({ cap }) => cap === null)).toBe(true);
    expect(onlyWalks([...walks.weeks, ramp.weeks[0]!])).toBe(false);
    const mixed = { sessions: [walks.weeks[0]!.sessions[0]!, ramp.weeks[0]!.sessions[0]!] };
    expect(onlyWalks([mixed])).toBe(false);
  });

  it('shows half minutes, rounded down session by session', () => {
    const week = withRuns(ramp.weeks[0]!, [6.3, 6.6, 6.9]);
    expect(shownWeekMinutes(week)).toBe(6 + 6.5 + 6.5);
    expect(weekSeries([week])[0]!.planned).toBe(19);
  });
});

describe('an outing', () => {
  it('is its bouts and walks between ten minutes before and ten after', () => {
    const [session] = ramp.weeks[0]!.sessions;
    // 6 × (1 + 2) between 10 and 10.
    expect(outingMinutes(session!)).toBe(38);
    expect(outingMinutes(walks.weeks[0]!.sessions[0]!)).toBe(10);
  });

  it('comes as often a week as asked for, a walk as its rule says', () => {
    expect(sessionsAWeek(build({ sessionsPerWeek: 2 }))).toBe(2);
    expect(sessionsAWeek(walks)).toBe(5);
    expect(sessionsAWeek(build({ programme: 'walking', rules: { walkDays: 4 } }))).toBe(4);
  });
});

describe('the week that a step back leads to', () => {
  it('is the building week before the one of the day, or before the last one', () => {
    const numbers = ramp.weeks.map((_, index) => stepBackWeek(ramp.weeks, index));
    // Easy weeks, the 4th and 8th, step back from the week before them.
    expect(numbers.slice(0, 9)).toEqual([null, 1, 2, 2, 3, 5, 6, 6, 7]);
  });

  it('asks for no more than the present one, in minutes or in one session', () => {
    const [first, second, third] = ramp.weeks as [RampWeek, RampWeek, RampWeek];
    const step = (weeks: RampWeek[]) => stepBackWeek(weeks, weeks.length - 1);
    expect(step([first, withRuns(second, [8, 8, 9]), third])).toBe(2);
    expect(step([first, withRuns(second, [8, 9, 9]), third])).toBe(1);
    expect(step([first, withRuns(second, [5, 6, 10]), third])).toBe(1);
    const { rung: _, ...older } = second;
    expect(step([first, older, third])).toBe(1);
    expect(step([first, second, { ...older, number: 3 }])).toBe(1);
    expect(step([older])).toBeNull();
  });
});

describe('the goal', () => {
  const day = (week: number, session: number) => ramp.weeks[week]!.sessions[session]!.day;

  it('is met by a run without a break, not by bouts or the walks between', () => {
    const bouts = withRuns(ramp.weeks[4]!, [10, 40, 10]);
    expect(goalDayOf([bouts], 30)).toBeNull();
    const weeks = ramp.weeks.map((week) => week);
    expect(goalDayOf(weeks, 30)).toBe(day(16, 0));
    expect(goalDayOf(weeks, 28)).toBe(day(14, 0));
    expect(goalDayOf(weeks, 28.5)).toBe(day(16, 0));
    // Of walks it takes two of full length in one week.
    expect(goalDayOf(walks.weeks, 30)).toBe(walks.weeks[4]!.sessions[1]!.day);
    const one = withRuns(walks.weeks[4]!, [30, 29, 29, 29, 29]);
    expect(goalDayOf([one], 30)).toBeNull();
    expect(walkBaseGoal({ walkBaseMinutes: 40 })).toEqual({ continuousMinutes: 40 });
  });

  it('within reach is the longest run, and the fullest session', () => {
    const early = ramp.weeks.slice(0, 6);
    expect(withinReachOf(early, null)).toEqual({
      continuousMinutes: 0,
      distanceKm: null,
      sessionMinutes: 12,
      sessionKm: null,
    });
    expect(withinReachOf(ramp.weeks.slice(0, 11), 5)).toEqual({
      continuousMinutes: 22,
      distanceKm: 4.4,
      sessionMinutes: 22,
      sessionKm: 4.4,
    });
  });

  it('trains endurance from three times 20 min a week on', () => {
    // Zink & Van Dyke (S): 20 min of trot three times a week.
    const week = ramp.weeks[12]!;
    const from = (runs: readonly number[]) =>
      enduranceFrom({ ...ramp, weeks: [withRuns(week, runs)] });
    expect(from([20, 20, 20])).toBe(week.startDay);
    expect(from([20, 20, 19])).toBeNull();
    expect(enduranceFrom({ ...ramp, weeks: [withRuns(ramp.weeks[4]!, [20, 20, 20])] })).toBeNull();
  });
});

describe('rules that exclude each other', () => {
  const rules = { smallStepMinutes: 0, boutsPostInjury: 2, boutsPerSession: 2 };
  const stuck = settingOf({ ...request, start: 'post-injury', capPercent: 5, rules });

  it('are named with the room that is left', () => {
    const course = courseOf(stuck);
    const peak = Math.max(...course.ladder.rungs.map(({ minutes }) => minutes));
    const [collision, ...others] = collisionsOf(course, null);
    expect(others).toEqual([]);
    expect(collision!.rules[0]).toBe('capPostInjury');
    // 5 % of 3 min a week.
    expect(peak).toBe(3);
    expect(collision!.text).toContain('From 3 run-minutes a week the caps leave room for 0.15 min');
    expect(collision!.text).toContain('too little for a longer week of 0.5 min bouts');
    // Runs without a break may be as many as they will: it is a minute that has no room.
    const rung = { ...course.ladder.rungs[0]!, stepIndex: stuck.path.length, minutes: 12 };
    const ladder = { reachesGoal: false, rungs: [rung, { ...rung, minutes: 10 }] };
    const [runs] = collisionsOf({ ...course, ladder }, null);
    expect(runs!.text).toContain('From 12 run-minutes a week the caps leave room for 0.6 min');
    expect(runs!.text).toContain('too little for a minute more in each run');
  });

  it('are none where the goal is reached', () => {
    const course = courseOf(stuck);
    expect(collisionsOf(course, DAY)).toEqual([]);
    const ladder = { ...course.ladder, reachesGoal: true };
    expect(collisionsOf({ ...course, ladder }, null)).toEqual([]);
  });
});

describe('the cap of a week and of a session', () => {
  const rules = rampRuleValues();

  it('lets short weeks rise by two minutes, up to 20', () => {
    expect(weekCap(19, 5, rules)).toBe(20);
    expect(weekCap(20, 5, rules)).toBe(21);
    expect(weekCap(21, 5, rules)).toBeCloseTo(22.05, 9);
  });

  it('looks back on the runs before the day, not on those of it or after', () => {
    const runs = [10, 20, 30].map((minutes, at) => ({
      day: addDays(DAY, at),
      minutes,
      response: 'clean' as const,
    }));
    expect(longestBefore(runs, addDays(DAY, 2), rules)).toBe(20);
    expect(longestBefore(runs, DAY, rules)).toBe(0);
  });
});

describe('a request', () => {
  it.each<[string, Partial<RampRequest>]>([
    ['ownerMinutes', { ownerMinutes: 601 }],
    ['walkMinutesNow', { programme: 'walking', walkMinutesNow: 0.5 }],
    ['paceMinPerKm', { paceMinPerKm: 1.9 }],
    ['paceMinPerKm', { goal: { distanceKm: 5, paceMinPerKm: 21 } }],
    ['laterStages', { laterStages: ['sprint' as never] }],
    ['programme', { programme: 'swimming' as never }],
    ['notBeforeDay', { notBeforeDay: '2026-13-01' }],
    ['eventDay', { eventDay: '2026-13-01' }],
    ['goal', { goal: null as never }],
  ])('is refused by name: %s', (name, changes) => {
    expect(() => settingOf({ ...request, ...changes })).toThrow(RangeError);
    expect(() => settingOf({ ...request, ...changes })).toThrow(name);
  });

  it('takes the ends of its ranges', () => {
    const goal = { distanceKm: 0.5, paceMinPerKm: 2 };
    expect(settingOf({ ...request, goal })).toMatchObject({ goal: 1, pace: 2 });
    const walking = { programme: 'walking', sessionsPerWeek: 0, walkMinutesNow: 12.7 } as const;
    expect(settingOf({ ...request, ...walking })).toMatchObject({ walkMinutesNow: 12, path: [] });
    expect(settingOf({ ...request, paceMinPerKm: 20 }).pace).toBe(20);
    const near = { eventDay: addDays(DAY, 7) };
    expect(settingOf({ ...request, ...near }).startDay).toBe(DAY);
    expect(settingOf({ ...request, notBeforeDay: DAY }).startDay).toBe(DAY);
  });
});
