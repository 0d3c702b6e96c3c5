import { describe, expect, it } from 'vitest';
import { buildRamp, type Ramp, type RampGoal } from '../../../core/training.ts';

const build = (goal: RampGoal, changes: object = {}): Ramp =>
  buildRamp({
    startDay: '2026-03-02',
    start: 'conditioned',
    sessionsPerWeek: 3,
    goal,
    ...changes,
  });
const reason = (ramp: Ramp, code: string) => ramp.reasons.find((entry) => entry.code === code);

describe('a goal', () => {
  it('in kilometres holds no more minutes than one in minutes', () => {
    expect(() => build({ distanceKm: 12, paceMinPerKm: 20 })).not.toThrow();
    const tooLong = () => build({ distanceKm: 12.1, paceMinPerKm: 20 });
    expect(tooLong).toThrow(RangeError);
    expect(tooLong).toThrow(/distanceKm × paceMinPerKm.*240 min/);
    expect(() => build({ distanceKm: 0.2, paceMinPerKm: 2 })).toThrow(/distanceKm/);
  });

  it('over 90 min carries a word of caution, our own', () => {
    expect(reason(build({ continuousMinutes: 90 }), 'long-goal')).toBeUndefined();
    const long = build({ distanceKm: 16, paceMinPerKm: 6 });
    expect(reason(long, 'long-goal')).toMatchObject({
      params: { minutes: 96 },
      evidence: 'D',
      mark: 'D',
      sources: ['ownDecision'],
    });
  });
});

describe('the weekly rise', () => {
  it.each(['conditioned', 'unconditioned', 'post-injury'] as const)(
    'says how weak its evidence is, and that the number is ours: %s',
    (start) => {
      const cap = reason(build({ continuousMinutes: 30 }, { start }), 'weekly-cap');
      expect(cap).toMatchObject({ evidence: 'D', mark: 'D' });
      expect(cap!.text).toMatch(/Weak: /);
      expect(cap!.sources[0]).toBe('frandsen2025');
    },
  );

  it('is the practice’s own once changed', () => {
    const cap = reason(build({ continuousMinutes: 30 }, { capPercent: 12 }), 'weekly-cap');
    expect(cap).toMatchObject({ evidence: 'D', mark: 'D', sources: ['practiceSetting'] });
    expect(cap!.text).toContain('as published 20 %');
  });
});
