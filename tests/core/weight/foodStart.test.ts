import { describe, expect, it } from 'vitest';
import { maintenanceEnergy, restingEnergy } from '../../../core/nutrition.ts';
import { ask, codes, falling, MAINTENANCE } from './asked.ts';

describe('the start of a plan', () => {
  const first = { onPlan: false, currentKcal: 1400 };

  it('to lose is resting energy of the target, with running not fed on top', () => {
    const proposal = ask({ ...first, runningKcalPerDay: 50 });
    expect(proposal.kcalPerDay).toBeCloseTo(restingEnergy(25), 9);
    expect(codes(proposal.reasons)).toEqual(['loss-start', 'running-on-loss']);
    expect(codes(proposal.warnings)).toContain('nutrient-floor');
  });

  it('to hold is the formula, or the dog’s own record, with running on top', () => {
    const proposal = ask({ ...first, goal: 'hold', runningKcalPerDay: 50 });
    expect(proposal.kcalPerDay).toBeCloseTo(MAINTENANCE.mid + 50, 9);
    expect(codes(proposal.reasons)).toEqual(['hold-start', 'running-food']);
  });

  it('to gain is 1.5 × resting energy, and 10 % above the present ration at least', () => {
    const gain = { ...first, goal: 'gain', bcs: 4, targetWeightKg: 32 } as const;
    expect(ask({ ...gain, currentKcal: 1200 }).kcalPerDay).toBeCloseTo(1.5 * restingEnergy(32), 9);
    const eater = ask({ ...gain, currentKcal: 1700 });
    expect(eater.kcalPerDay).toBeCloseTo(1870, 9);
    expect(codes(eater.warnings)).toContain('gain-high');
  });

  it('to gain is at most 25 % above what the dog eats (D)', () => {
    const gain = { ...first, goal: 'gain', bcs: 4, targetWeightKg: 32 } as const;
    for (const currentKcal of [900, 1000, 1100]) {
      expect(ask({ ...gain, currentKcal }).kcalPerDay).toBeCloseTo(1.25 * currentKcal, 9);
    }
  });

  it('to gain is never less than 10 % above maintenance', () => {
    const maintenance = maintenanceEnergy({ weightKg: 30, activity: 'working' });
    const gain = { ...first, goal: 'gain', bcs: 4, targetWeightKg: 32, maintenance } as const;
    const proposal = ask({ ...gain, currentKcal: 2000 });
    expect(proposal.kcalPerDay).toBeCloseTo(1.1 * maintenance.mid, 9);
    expect(proposal.reasons[0]).toMatchObject({ evidence: 'D', mark: 'M' });
    expect(ask({ ...gain, maintenance: undefined, currentKcal: 0 }).reasons[0]).toMatchObject({
      evidence: 'C',
      mark: 'C',
    });
  });

  it('takes the formula for the weight where no maintenance energy is given', () => {
    const proposal = ask({ ...first, goal: 'hold', bcs: 6, maintenance: undefined });
    expect(proposal.kcalPerDay).toBeCloseTo(maintenanceEnergy({ weightKg: 30 }).mid, 9);
  });

  it('to lose tells what dogs at home typically lost', () => {
    // SciELO 2005 (S): 0.75 % a week.
    const { figure } = ask(first);
    expect(figure!.notes.join(' ')).toContain('0.75 % a week');
    expect(figure!.sources).toContain('scielo2005');
    expect(ask({ ...first, goal: 'hold' }).figure!.sources).not.toContain('scielo2005');
  });

  it('warns of the nutrient floor with any aim', () => {
    const small = { mid: 950, low: 900, high: 1000 };
    const maintenance = { ...maintenanceEnergy({ weightKg: 30 }), ...small };
    const hold = { ...first, goal: 'hold', targetWeightKg: 30, maintenance } as const;
    // Linder et al. 2012 (S): 79 kcal per kg^0.75, 1,013 kcal a day at 30 kg.
    expect(codes(ask({ ...hold, currentKcal: 0 }).warnings)).toContain('nutrient-floor');
    const diet = ask({ ...hold, currentKcal: 0, weightLossDiet: true });
    expect(codes(diet.warnings)).not.toContain('nutrient-floor');
  });
});

describe('the first ration to hold weight', () => {
  const start = { goal: 'hold', bcs: 5, targetWeightKg: 30, onPlan: false } as const;
  const { mid, low, high } = MAINTENANCE;

  it('is the present one in ideal condition while it lies inside the estimate’s range', () => {
    const proposal = ask({ ...start, currentKcal: 1000 });
    expect(proposal).toMatchObject({ verdict: 'start', kcalPerDay: 1000 });
    expect(codes(proposal.reasons)).toEqual(['hold-present']);
  });

  it('adds the running that the present one does not hold', () => {
    const running = { runningKcalPerDay: 60, runningInRationKcalPerDay: 0 };
    const proposal = ask({ ...start, ...running, currentKcal: 1000 });
    expect(proposal.kcalPerDay).toBe(1060);
    expect(codes(proposal.reasons)).toEqual(['hold-present', 'running-food']);
  });

  it('is the present one of a heavier dog only when its weight is stable', () => {
    const heavy = { ...start, bcs: 6, currentKcal: 1000 };
    expect(ask({ ...heavy, trend: falling(0, 8) }).kcalPerDay).toBe(1000);
    // From 6 no dog that is to hold its weight gets more than it eats.
    expect(ask(heavy).kcalPerDay).toBe(1000);
    expect(ask({ ...heavy, currentKcal: mid * 1.05 }).kcalPerDay).toBeCloseTo(mid, 9);
    expect(ask({ ...start, currentKcal: 1000, trend: falling(-0.9, 8) }).kcalPerDay).toBeCloseTo(
      mid,
      9,
    );
  });

  it.each([
    ['up', low * 0.95, 1.1],
    ['down', high * 1.2, 0.9],
  ])('moves by 10 %% at most from outside the range: %s', (_, currentKcal, factor) => {
    const proposal = ask({ ...start, currentKcal, trend: falling(0, 8) });
    expect(proposal.kcalPerDay).toBeCloseTo(factor * currentKcal, 6);
    expect(codes(proposal.reasons)).toEqual(['diet-outside-range']);
    expect(proposal.reasons[0]!.text).toContain('recheck the diet history');
  });

  it('stays as it is where the running it holds stays', () => {
    const same = { runningKcalPerDay: 60, runningInRationKcalPerDay: 60 };
    expect(ask({ ...start, ...same, currentKcal: 1000 }).kcalPerDay).toBe(1000);
    expect(ask({ ...start, runningKcalPerDay: 60, currentKcal: 1000 }).kcalPerDay).toBe(1000);
  });

  it('says whether it holds running', () => {
    const formula = (changes: object) => ask({ ...start, ...changes }).figure!.formula;
    const held = { runningKcalPerDay: 60, runningInRationKcalPerDay: 0 };
    expect(formula({ currentKcal: 1000 })).toBe('present ration');
    expect(formula({ currentKcal: 1000, ...held })).toBe('present ration + running');
    expect(formula({ currentKcal: 0 })).toBe('maintenance energy by formula');
    expect(formula({ currentKcal: 0, ...held })).toBe('maintenance energy by formula + running');
  });

  it('is the formula where no diet was told', () => {
    const proposal = ask({ ...start, currentKcal: 0 });
    expect(proposal.kcalPerDay).toBeCloseTo(mid, 9);
    expect(codes(proposal.reasons)).toEqual(['hold-start']);
  });

  it('suits at 4 as at 5, whatever the score where the weight is stable', () => {
    expect(ask({ ...start, bcs: 4, currentKcal: 1000 }).kcalPerDay).toBe(1000);
    const heavy = { ...start, bcs: 6, currentKcal: mid * 1.05 };
    expect(ask({ ...heavy, trend: falling(0, 8) }).kcalPerDay).toBe(mid * 1.05);
    // A lean dog that gains is fed by the formula, below or above what it eats.
    for (const currentKcal of [mid * 0.95, mid * 1.05]) {
      const gains = ask({ ...start, bcs: 4, currentKcal, trend: falling(-0.9, 8) });
      expect(gains.kcalPerDay).toBeCloseTo(mid, 9);
    }
  });

  it('does not take food from a thin dog', () => {
    expect(ask({ ...start, bcs: 3, currentKcal: 1500 }).kcalPerDay).toBe(1500);
    expect(ask({ ...start, bcs: 3, currentKcal: high * 1.1 }).kcalPerDay).toBeCloseTo(high * 1.1);
  });

  it('goes up by a step from the ration of a plan to lose', () => {
    const proposal = ask({ ...start, currentKcal: 700, rationFromLossPlan: true });
    expect(proposal.kcalPerDay).toBeCloseTo(770, 6);
    expect(codes(proposal.reasons)).toEqual(['target-reached']);
  });
});

describe('the target reached', () => {
  it('holds the planned running', () => {
    const slimmed = maintenanceEnergy({ weightKg: 25, afterWeightLoss: true }).mid;
    const running = { runningKcalPerDay: 40, weightKg: 25, trend: falling(1, 6) };
    const proposal = ask({ ...running, currentKcal: slimmed });
    expect(proposal).toMatchObject({ verdict: 'change', kcalPerDay: expect.closeTo(slimmed + 40) });
    expect(proposal.reasons[0]!.text).toContain('the planned running in it');
  });

  it('goes up by steps towards what slimmed dogs needed', () => {
    const slimmed = maintenanceEnergy({ weightKg: 25, afterWeightLoss: true }).mid;
    const at = (currentKcal: number) => ask({ weightKg: 25, currentKcal, trend: falling(1, 6) });
    expect(at(650)).toMatchObject({ verdict: 'change', kcalPerDay: expect.closeTo(715, 6) });
    expect(at(slimmed - 20).kcalPerDay).toBeCloseTo(slimmed, 6);
    expect(at(slimmed + 20)).toMatchObject({ verdict: 'keep', kcalPerDay: slimmed + 20 });
  });
});

describe('the first ration to gain, and to hold, with running', () => {
  it('holds the running on top, and says so', () => {
    const gain = { onPlan: false, goal: 'gain', bcs: 4, targetWeightKg: 32 } as const;
    const without = ask({ ...gain, currentKcal: 1200 });
    const runs = ask({ ...gain, currentKcal: 1200, runningKcalPerDay: 50 });
    expect(runs.kcalPerDay).toBeCloseTo(without.kcalPerDay! + 50, 9);
    expect(codes(without.reasons)).toEqual(['gain-start']);
    expect(codes(runs.reasons)).toEqual(['gain-start', 'running-food']);
  });

  it('takes what the ration holds off before it is judged by the range', () => {
    const hold = { onPlan: false, goal: 'hold', bcs: 5, targetWeightKg: 30 } as const;
    const at = (currentKcal: number, held: number) =>
      codes(
        ask({ ...hold, currentKcal, runningKcalPerDay: 100, runningInRationKcalPerDay: held })
          .reasons,
      )[0];
    expect(at(MAINTENANCE.high + 99, 100)).toBe('hold-present');
    expect(at(MAINTENANCE.high + 1, 0)).toBe('diet-outside-range');
    expect(at(MAINTENANCE.low + 99, 100)).toBe('diet-outside-range');
    expect(at(MAINTENANCE.low + 1, 0)).toBe('hold-present');
  });

  it('moves from outside the range no further than the need and the running', () => {
    const hold = { onPlan: false, goal: 'hold', bcs: 5, targetWeightKg: 30 } as const;
    const { mid } = MAINTENANCE;
    const narrow = { ...MAINTENANCE, low: mid - 10, high: mid + 10 };
    const at = (currentKcal: number) =>
      ask({ ...hold, currentKcal, maintenance: narrow }).kcalPerDay;
    expect(at(mid - 20)).toBeCloseTo(mid, 9);
    expect(at(mid + 20)).toBeCloseTo(mid, 9);
    const runs = (currentKcal: number) =>
      ask({ ...hold, currentKcal, maintenance: narrow, runningKcalPerDay: 100 }).kcalPerDay;
    expect(runs(mid + 80)).toBeCloseTo(mid + 100, 9);
    expect(runs(mid + 120)).toBeCloseTo(mid + 100, 9);
    // A heavy dog gets no more than it eats, a thin one no less.
    const heavy = ask({ ...hold, bcs: 6, currentKcal: mid - 20, maintenance: narrow });
    expect(heavy.kcalPerDay).toBe(mid - 20);
  });
});
