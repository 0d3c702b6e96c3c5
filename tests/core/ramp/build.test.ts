import { describe, expect, it } from 'vitest';
import { addDays } from '../../../core/day.ts';
import {
  buildRamp,
  checkRamp,
  daysToEvent,
  enduranceFrom,
  START_LEVELS,
  type RampRequest,
} from '../../../core/training.ts';

const request: RampRequest = {
  startDay: '2026-03-02',
  start: 'conditioned',
  sessionsPerWeek: 3,
  goal: { continuousMinutes: 30 },
};
const build = (changes: Partial<RampRequest> = {}) => buildRamp({ ...request, ...changes });

describe('buildRamp', () => {
  it('gives every session what the owner has to know', () => {
    const { sessions } = build({ paceMinPerKm: 6 }).weeks[0]!;
    expect(sessions[0]).toEqual({
      day: '2026-03-02',
      kind: 'bouts',
      repeats: 6,
      runMin: 1,
      walkMin: 2,
      runMinutes: 6,
      effort: 'medium',
      surface: 'soft-trail',
      focus: null,
      warmUpMin: 10,
      coolDownMin: 10,
      distanceKm: 1,
    });
  });

  it('runs on soft flat ground after injury', () => {
    expect(build({ start: 'post-injury' }).weeks[0]!.sessions[0]!.surface).toBe('soft-flat');
  });

  it('takes a distance at a pace as the minutes it needs', () => {
    const byDistance = build({ goal: { distanceKm: 5, paceMinPerKm: 6 } });
    expect(byDistance.goalReachedOn).toBe(build().goalReachedOn);
    expect(byDistance.weeks.at(-1)!.sessions[0]!.distanceKm).toBeCloseTo(5, 9);
  });

  it('says what is within reach of an event that comes too early, and when it could be', () => {
    const ramp = build({ goal: { distanceKm: 10, paceMinPerKm: 6 }, eventDay: '2026-06-13' });
    expect(ramp.goalReachedOn).toBeNull();
    expect(ramp.withinReach!.continuousMinutes).toBeGreaterThan(10);
    expect(ramp.withinReach!.distanceKm).toBeCloseTo(ramp.withinReach!.continuousMinutes / 6, 9);
    expect(ramp.reasons[0]!.code).toBe('goal-out-of-reach');
    const later = build({
      goal: { distanceKm: 10, paceMinPerKm: 6 },
      eventDay: ramp.earliestEventDay!,
    });
    expect(later.goalReachedOn).toBe(ramp.earliestGoalDay);
    const dayBefore = addDays(ramp.earliestEventDay!, -1);
    const early = build({ goal: { distanceKm: 10, paceMinPerKm: 6 }, eventDay: dayBefore });
    expect(early.goalReachedOn).toBeNull();
  });

  it('waits for the age gate', () => {
    const ramp = build({ notBeforeDay: '2026-06-10' });
    expect(ramp.weeks[0]!.sessions[0]!.day).toBe('2026-06-10');
    expect(ramp.reasons.map(({ code }) => code)).toContain('not-before');
  });

  it('takes a quarter off after two weeks away, and nothing after one', () => {
    const out = (from: number, days: number) =>
      Array.from({ length: days }, (_, index) => addDays('2026-03-02', from + index));
    const week = build({ daysOut: out(14, 7) });
    expect(week.weeks[2]!.sessions).toEqual([]);
    const fortnight = build({ daysOut: out(14, 14) });
    const before = fortnight.weeks[1]!.runMinutes;
    expect(week.weeks[3]!.runMinutes).toBeLessThanOrEqual(before);
    expect(fortnight.weeks[4]!.runMinutes).toBeLessThanOrEqual(Math.max(18, 0.75 * before));
    expect(fortnight.reasons.map(({ code }) => code)).toContain('break-less');
  });

  it('begins anew after more than four weeks away', () => {
    const daysOut = Array.from({ length: 35 }, (_, index) => addDays('2026-03-02', 28 + index));
    const ramp = build({ daysOut });
    expect(ramp.weeks[9]!.runMinutes).toBe(18);
    expect(ramp.reasons.map(({ code }) => code)).toContain('break-restart');
  });

  it('adds later stages one at a time, with no more minutes', () => {
    const ramp = build({ laterStages: ['pull', 'hills'] });
    const later = ramp.weeks.filter(({ stage }) => stage !== 'time');
    expect(ramp.stages.map(({ id }) => id)).toEqual(['time', 'pull', 'hills']);
    expect(later.filter(({ stage, recovery }) => stage === 'pull' && !recovery)).toHaveLength(3);
    for (const week of later) {
      expect(week.runMinutes).toBeLessThanOrEqual(74);
      const changed = week.sessions.filter(({ focus }) => focus !== null);
      expect(changed.map(({ focus }) => focus)).toEqual([week.stage]);
      expect(changed[0]!.effort).toBe('long');
    }
  });

  it('names a rule the practice changed', () => {
    const ramp = build({ rules: { recoveryPercent: 60, mostBouts: 8 } });
    const recovery = ramp.reasons.find(({ code }) => code === 'recovery-weeks')!;
    expect(recovery.text).toContain('as published 70');
    expect(recovery.sources).toEqual(['practiceSetting']);
    expect(ramp.reasons.find(({ code }) => code === 'rule-changed')!.params).toEqual({
      rule: 'mostBouts',
      value: 8,
      published: 10,
    });
    expect(ramp.rules.recoveryPercent).toBe(60);
  });

  // The longest that the rule may ask for: an easy week has not room for as many such runs as others.
  it.each(START_LEVELS)('leaves no week without a run, however long a run must be: %s', (start) => {
    for (const sessionsPerWeek of [2, 3, 4]) {
      const ramp = build({ start, sessionsPerWeek, rules: { leastContinuousMinutes: 15 } });
      expect(ramp.weeks.filter(({ sessions }) => sessions.length === 0)).toEqual([]);
      expect(checkRamp(ramp)).toEqual([]);
    }
  });

  it('names the rules that collide when the load cannot grow', () => {
    const rules = { smallStepMinutes: 0, boutsPostInjury: 2, boutsPerSession: 2 };
    const ramp = build({ start: 'post-injury', capPercent: 5, rules });
    expect(ramp.goalReachedOn).toBeNull();
    expect(ramp.earliestGoalDay).toBeNull();
    expect(ramp.collisions[0]!.rules).toContain('capPostInjury');
    expect(build().collisions).toEqual([]);
  });

  it('adds no later stage to a goal that is never reached, and leaves its end open', () => {
    const rules = { smallStepMinutes: 0, boutsPostInjury: 2, boutsPerSession: 2 };
    const ramp = build({ start: 'post-injury', capPercent: 5, rules, laterStages: ['pull'] });
    expect(ramp.stages).toMatchObject([{ id: 'time', fromDay: '2026-03-02', untilDay: null }]);
    expect(ramp.weeks.every(({ stage }) => stage === 'time')).toBe(true);
    const { stages, weeks } = build();
    expect(stages).toMatchObject([{ id: 'time', untilDay: addDays(weeks.at(-1)!.startDay, 6) }]);
    expect(build({ eventDay: '2026-03-20' }).stages).toMatchObject([{ untilDay: null }]);
  });

  it('names a distance only of runs at a known pace', () => {
    expect(build().weeks[0]!.sessions[0]!.distanceKm).toBeNull();
    const walks = build({ programme: 'walking', paceMinPerKm: 6 });
    expect(walks.weeks[0]!.sessions[0]!.distanceKm).toBeNull();
    expect(walks.weeks[0]).toMatchObject({ capMinutes: 50, runMinutes: 50 });
    expect(walks.weeks[1]).toMatchObject({ capMinutes: 75, runMinutes: 75 });
  });

  it('says which weeks come back after a break, and of no other', () => {
    const daysOut = Array.from({ length: 14 }, (_, index) => addDays('2026-03-02', 42 + index));
    const returning = ({ weeks }: ReturnType<typeof build>) =>
      weeks.filter((week) => week.returning !== undefined).map(({ number }) => number);
    expect(returning(build())).toEqual([]);
    expect(returning(build({ daysOut }))).toEqual([9, 10]);
    expect(returning(build({ eventDay: '2026-05-06' }))).toEqual([]);
    const injured = build({ start: 'post-injury' }).weeks.at(-1)!.sessions[0]!;
    expect(injured).toMatchObject({ kind: 'continuous', surface: 'soft-trail' });
    const hills = build({ laterStages: ['hills'], rules: { hillMinutes: 2 } }).weeks.at(-1)!;
    expect(hills.sessions[0]!.dose).toEqual({ times: 4, seconds: 120 });
  });

  it('counts the days to an event', () => {
    expect(daysToEvent(build(), '2026-03-09')).toBeNull();
    expect(daysToEvent(build({ eventDay: '2026-06-01' }), '2026-05-25')).toBe(7);
  });

  it('says when a plan has fewer running days than asked for', () => {
    const ramp = build({ weekdays: [0, 3, 4] });
    expect(ramp.weeks.every(({ sessions }) => sessions.length <= 2)).toBe(true);
    expect(ramp.reasons.map(({ code }) => code)).toContain('fewer-days');
  });

  it('names when endurance is trained, for a goal that goes so far', () => {
    expect(enduranceFrom(build({ goal: { continuousMinutes: 24 } }))).toBeNull();
    const far = build({ goal: { continuousMinutes: 40 } });
    const week = far.weeks.find(({ startDay }) => startDay === enduranceFrom(far))!;
    expect(week.sessions.map(({ runMinutes }) => runMinutes)).toEqual([28, 21, 21]);
  });
});

describe('a bad request is refused by name', () => {
  const refused: [string, Partial<RampRequest>][] = [
    ['sessionsPerWeek', { sessionsPerWeek: 5 }],
    ['sessionsPerWeek', { sessionsPerWeek: 1 }],
    ['sessionsPerWeek', { sessionsPerWeek: 2.5 }],
    ['capPercent', { capPercent: 31 }],
    ['capPercent', { capPercent: Number.NaN }],
    ['continuousMinutes', { goal: { continuousMinutes: -1 } }],
    ['distanceKm', { goal: { distanceKm: 0, paceMinPerKm: 6 } }],
    ['paceMinPerKm', { goal: { distanceKm: 5, paceMinPerKm: 60 } }],
    ['startDay', { startDay: '2026-02-30' }],
    ['eventDay', { eventDay: '2026-03-05' }],
    ['weekdays', { weekdays: [5, 6] }],
    ['weekdays', { weekdays: [2] }],
    ['daysOut', { daysOut: ['tomorrow'] }],
    ['start', { start: 'fit' as never }],
    ['goal', { goal: undefined as never }],
    ['laterStages', { laterStages: ['pull'], eventDay: '2026-09-01' }],
    ['mostBouts', { rules: { mostBouts: 500 } }],
  ];
  it.each(refused)('%s', (argument, changes) => {
    expect(() => build(changes)).toThrow(RangeError);
    expect(() => build(changes)).toThrow(argument);
  });
});
