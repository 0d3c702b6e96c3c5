import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays } from '../../../core/day.ts';
import { RAMP_RULES } from '../../../core/rules/ramp.ts';
import { buildRamp, type Ramp, type RampRequest } from '../../../core/training.ts';
import { holds } from '../../support/laws.ts';
import { openRequests } from './requests.ts';

const DAY = '2026-03-02';
const request: RampRequest = {
  startDay: DAY,
  start: 'conditioned',
  sessionsPerWeek: 3,
  goal: { continuousMinutes: 20 },
};
const build = (changes: Partial<RampRequest> = {}) => buildRamp({ ...request, ...changes });
const walk = (changes: Partial<RampRequest> = {}) =>
  build({ programme: 'walking', goal: { continuousMinutes: 30 }, ...changes });
const codes = ({ reasons }: Ramp) => reasons.map(({ code }) => code);
const find = (ramp: Ramp, code: string) => ramp.reasons.find((reason) => reason.code === code);
const away = (from: number, days: number) =>
  Array.from({ length: days }, (_, index) => addDays(DAY, from + index));

describe('the reasons of a plan', () => {
  it('are those of its load where nothing else was asked for', () => {
    expect(codes(build())).toEqual(['session-cap', 'weekly-cap', 'recovery-weeks']);
    expect(codes(walk())).toEqual(['walking-programme']);
    expect(find(build(), 'session-cap')!.params).toEqual({ percent: 10, step: 2, days: 30 });
    expect(find(build({ capPercent: 12 }), 'weekly-cap')!.params).toEqual({ capPercent: 12 });
    expect(find(build(), 'recovery-weeks')!.params).toEqual({ every: 4, percent: 70 });
  });

  it('say of a published rise how sure it is, and not of the practice’s own', () => {
    const { note, value } = RAMP_RULES.capConditioned;
    expect(find(build(), 'weekly-cap')!.text).toContain(note);
    expect(find(build({ capPercent: value - 1 }), 'weekly-cap')!.text).not.toContain(note);
  });

  it('name each goal that is out of reach, and the day it could be reached', () => {
    holds(
      fc.property(openRequests, fc.integer({ min: 10, max: 200 }), (open, days) => {
        const { notBeforeDay: _, ...asked } = open;
        const ramp = buildRamp({ ...asked, eventDay: addDays(asked.startDay, days) });
        const reason = find(ramp, 'goal-out-of-reach');
        expect(reason === undefined).toBe(ramp.goalReachedOn !== null);
        if (reason === undefined) return;
        expect(reason).toBe(ramp.reasons[0]);
        expect(reason.params).toEqual({
          eventDay: ramp.request.eventDay,
          earliestEventDay: ramp.earliestEventDay ?? '',
        });
        expect(reason.text.includes('cannot be reached by')).toBe(ramp.earliestEventDay !== null);
      }),
      { seed: 1, numRuns: 6 },
    );
  });

  it('tell that running begins later only where it does', () => {
    expect(find(build({ notBeforeDay: addDays(DAY, 9) }), 'not-before')!.params).toEqual({
      day: addDays(DAY, 9),
    });
    expect(codes(build({ notBeforeDay: addDays(DAY, -9) }))).not.toContain('not-before');
  });

  it('tell of a long goal from over 90 min on (D), by the practice’s own limit', () => {
    const long = (continuousMinutes: number, rules = {}) =>
      find(build({ goal: { continuousMinutes }, rules }), 'long-goal');
    expect(long(90)).toBeUndefined();
    expect(long(91)!.params).toEqual({ minutes: 91 });
    expect(long(61, { goalLongMinutes: 60 })!.text).toContain('over 60 min (set by the practice');
  });
});

describe('the running of the owner', () => {
  const told = (ownerMinutes: number | undefined, start: RampRequest['start'] = 'conditioned') => {
    const asked = ownerMinutes === undefined ? { start } : { start, ownerMinutes };
    return find(build(asked), 'owner-start')?.params ?? null;
  };

  // Under 10 min without a break an owner starts as an unconditioned dog does (D).
  it('is told where it is known, and whether it lowers the start', () => {
    expect(told(undefined)).toBeNull();
    expect(told(9)).toEqual({ minutes: 9, lower: 1 });
    expect(told(10)).toEqual({ minutes: 10, lower: 0 });
    expect(told(20)).toEqual({ minutes: 20, lower: 0 });
    expect(told(9, 'unconditioned')).toEqual({ minutes: 9, lower: 0 });
    expect(told(9, 'post-injury')).toEqual({ minutes: 9, lower: 0 });
    expect(told(0, 'conditioned')).toEqual({ minutes: 0, lower: 1 });
  });

  it('lowers the plan exactly where it says so, to that of an unconditioned dog', () => {
    const weeks = (changes: Partial<RampRequest>) =>
      build(changes).weeks.map(({ runMinutes, sessions }) => [runMinutes, sessions]);
    const lowered = build({ ownerMinutes: 9 });
    expect(find(lowered, 'owner-start')!.text).toContain('the plan starts lower');
    expect(weeks({ ownerMinutes: 9 })[0]).toEqual(weeks({ start: 'unconditioned' })[0]);
    expect(lowered.weeks[0]!.paceSetBy).toBe('owner');
    for (const minutes of [10, 20]) {
      const same = build({ ownerMinutes: minutes });
      expect(find(same, 'owner-start')!.text).toContain('the dog sets the start');
      expect(weeks({ ownerMinutes: minutes })).toEqual(weeks({}));
    }
  });

  it('sets the pace of a week with the dog where both start alike, and none that has reached the goal', () => {
    const setBy = (start: RampRequest['start'], ownerMinutes: number) =>
      build({ start, ownerMinutes }).weeks[0]!.paceSetBy;
    expect(setBy('unconditioned', 9)).toBe('both');
    expect(setBy('conditioned', 15)).toBe('both');
    expect(setBy('unconditioned', 15)).toBe('dog');
    expect(setBy('post-injury', 5)).toBe('dog');
    expect(setBy('conditioned', 20)).toBe('dog');
    expect(build().weeks[0]).not.toHaveProperty('paceSetBy');
  });
});

describe('the days of a plan', () => {
  it('hold four runs every other week at most', () => {
    expect(codes(build({ sessionsPerWeek: 4 }))).toContain('four-a-week');
    expect(codes(build({ sessionsPerWeek: 3 }))).not.toContain('four-a-week');
    expect(codes(build({ sessionsPerWeek: 4 }))).not.toContain('fewer-days');
  });

  it('name how many there are, and how many were asked for', () => {
    const fewer = find(build({ weekdays: [0, 3, 4] }), 'fewer-days')!;
    expect(fewer.params).toEqual({ sessions: 2, asked: 3 });
    expect(codes(build({ weekdays: [0, 2, 4] }))).not.toContain('fewer-days');
  });
});

describe('time away', () => {
  it('is told with its week and days, and by how much the load falls', () => {
    const fortnight = find(build({ daysOut: away(14, 14) }), 'break-less')!;
    // Missed time of 8–14 days: a quarter less, of 15–28 days half (D).
    expect(fortnight.params).toEqual({ week: 5, days: 14, percent: 25 });
    expect(fortnight.text).toContain('without running: 25 % less');
    const longer = find(build({ daysOut: away(14, 21) }), 'break-less')!;
    expect(longer.params).toEqual({ week: 6, days: 21, percent: 50 });
    const rules = { breakShortPercent: 30 };
    const changed = find(build({ daysOut: away(14, 14), rules }), 'break-less')!;
    expect(changed.params['percent']).toBe(30);
    expect(changed.text).toContain('set by the practice');
  });

  it('of a week is none, and of over 28 days begins anew', () => {
    const week = codes(build({ daysOut: away(14, 7) })).filter((code) => code.startsWith('break'));
    expect(week).toEqual([]);
    const anew = find(build({ daysOut: away(28, 35) }), 'break-restart')!;
    expect(anew.params).toEqual({ week: 10, days: 35 });
    expect(anew.text).toContain('the walk base has to be passed again');
    const walks = walk({ daysOut: away(14, 35) });
    expect(codes(walks)).toContain('break-anew');
    expect(codes(walks)).not.toContain('break-restart');
    expect(find(walks, 'break-anew')!.text).toContain('without brisk walks');
  });
});

describe('the rules the practice changed', () => {
  const changed = (rules: Ramp['request']['rules'], rest: Partial<RampRequest> = {}) =>
    build({ rules: rules!, ...rest })
      .reasons.filter(({ code }) => code === 'rule-changed')
      .map(({ params }) => params['rule']);

  it('are named where they bite, and not twice', () => {
    expect(changed({})).toEqual([]);
    expect(changed({ mostBouts: 8 })).toEqual(['mostBouts']);
    expect(changed({ boutsConditioned: 5 })).toEqual(['boutsConditioned']);
    // Those of another start, and those with a reason of their own.
    expect(changed({ boutsUnconditioned: 5, capConditioned: 12, capPostInjury: 6 })).toEqual([]);
    expect(changed({ recoveryPercent: 60, recoveryEvery: 3, sessionRisePercent: 8 })).toEqual([]);
    expect(changed({ sessionStepMinutes: 1, sessionWindowDays: 20 })).toEqual([]);
    expect(changed({ boutsUnconditioned: 5 }, { start: 'unconditioned' })).toEqual([
      'boutsUnconditioned',
    ]);
  });

  it('change the reasons of the load: their number, and that the practice set it', () => {
    const session = find(build({ rules: { sessionRisePercent: 8 } }), 'session-cap')!;
    expect(session.params['percent']).toBe(8);
    expect(session.text).toContain('as published 10');
    const easy = find(build({ rules: { recoveryEvery: 3 } }), 'recovery-weeks')!;
    expect(easy.params).toEqual({ every: 3, percent: 70 });
    expect(easy.text).toContain('as published 4');
    expect(easy.sources).toEqual(['practiceSetting']);
    expect(find(build(), 'recovery-weeks')!.sources).not.toContain('practiceSetting');
  });

  it('tell of walks how long they are, and how they grow', () => {
    expect(find(walk(), 'walking-programme')!.params).toMatchObject({ to: 30 });
    const known = find(walk({ walkMinutesNow: 15 }), 'walking-programme')!;
    expect(known.params['from']).toBe(15);
    expect(find(walk({ walkMinutesNow: 45 }), 'walking-programme')!.params['from']).toBe(30);
    const step = find(walk({ rules: { walkStepMinutes: 3 } }), 'walking-programme')!;
    expect(step.params['step']).toBe(3);
    expect(step.text).toContain('set by the practice');
  });
});
