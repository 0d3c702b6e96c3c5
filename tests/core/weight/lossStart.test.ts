import { describe, expect, it } from 'vitest';
import { referralFloor, restingEnergy } from '../../../core/nutrition.ts';
import { ask, codes, falling, MAINTENANCE, record } from './asked.ts';

describe('the first ration of a plan to lose', () => {
  const start = { onPlan: false, bcs: 8, targetWeightKg: 20 } as const;
  const rer = restingEnergy(20);

  it('asks the vet where the dog eats no more already, unless it loses on it', () => {
    const at = (currentKcal: number, changes = {}) => ask({ ...start, currentKcal, ...changes });
    expect(codes(at(rer).reasons)).toEqual(['already-low']);
    expect(at(rer)).toMatchObject({ verdict: 'refer', kcalPerDay: null });
    expect(at(rer + 1).verdict).toBe('start');
    expect(at(0).verdict).toBe('start');
    expect(at(rer, { trend: falling(1, 6) }).verdict).toBe('start');
    expect(at(rer, { trend: falling(0, 6) }).verdict).toBe('refer');
  });

  it('names no running where none is planned', () => {
    expect(codes(ask({ ...start, currentKcal: 1400 }).reasons)).toEqual(['loss-start']);
    expect(codes(ask({ ...start, currentKcal: 1400, runningKcalPerDay: 0.4 }).reasons)).toEqual([
      'loss-start',
    ]);
  });

  it('stands beside what is published', () => {
    // 20^0.75 is 9.46: German 2015 61 (44–74), Wakshlag 2012 53.6 and 42.2 kcal/kg^0.75 (S).
    const { references } = ask({ ...start, currentKcal: 1400 });
    const rounded = references.map(({ kcalPerDay, low, high }) =>
      [low, kcalPerDay, high].map((value) => value && Math.round(value)),
    );
    expect(rounded).toEqual([
      [416, 577, 700],
      [undefined, 507, undefined],
      [undefined, 399, undefined],
      [undefined, Math.round(0.6 * MAINTENANCE.mid), undefined],
    ]);
    expect(ask({ ...start, goal: 'hold' }).references).toEqual([]);
  });
});

describe('the first ration of a plan to lose, by the dog’s own record', () => {
  const at = (need: number, currentKcal: number, changes = {}) => {
    const { own } = record(need, need);
    return ask({ onPlan: false, bcs: 8, targetWeightKg: 20, own, currentKcal, ...changes });
  };
  /** kcal a day of 1 % of 30 kg a week (Hand Table 27-15; S, our arithmetic). */
  const PERCENT = (7920 * 30) / 700;

  it('loses about 1.2 % a week, running counted (D)', () => {
    const proposal = at(1300, 1300);
    const own = record(1300, 1300).own.mid;
    expect(proposal.kcalPerDay).toBeCloseTo(own - 1.2 * PERCENT, 6);
    expect(proposal.reasons[0]).toMatchObject({ code: 'expected-rate', params: { percent: -1.2 } });
    expect(proposal.reasons[0]!.text).toContain('lose about 1.2 % a week');
    const runs = at(1300, 1300, { runningKcalPerDay: 60 });
    expect(runs.kcalPerDay).toBeCloseTo(proposal.kcalPerDay! + 60, 6);
  });

  it('is no more than the dog eats, unless that loses over 2 % a week', () => {
    const own = record(1300, 1300).own.mid;
    const less = own - 1.6 * PERCENT;
    expect(at(1300, less)).toMatchObject({ kcalPerDay: less, verdict: 'start' });
    expect(at(1300, less).reasons[0]!.params['percent']).toBeCloseTo(-1.6, 1);
    expect(at(1300, own - 2.1 * PERCENT).kcalPerDay).toBeCloseTo(own - 1.2 * PERCENT, 6);
    expect(at(1300, 0).kcalPerDay).toBeCloseTo(own - 1.2 * PERCENT, 6);
  });

  it('is never under the least that is proposed', () => {
    expect(at(800, 800).kcalPerDay).toBeCloseTo(referralFloor(20), 6);
  });
});
