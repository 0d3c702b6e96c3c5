import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays } from '../../../core/day.ts';
import {
  adjustFood,
  estimateMaintenance,
  maintenanceEnergy,
  referralFloor,
  restingEnergy,
  weightTrend,
  type AdjustFoodInput,
  type FoodGoal,
} from '../../../core/nutrition.ts';
import { holds } from '../../support/laws.ts';

const START = '2026-03-01';
const RUNS = { seed: 1, numRuns: 400 };
/** A trend over `weights`, one every two weeks. */
const trendOf = (weights: readonly number[]) =>
  weightTrend(weights.map((weightKg, index) => ({ day: addDays(START, 14 * index), weightKg })));
const falling = (percentPerWeek: number, count: number, from = 30) =>
  trendOf(Array.from({ length: count }, (_, i) => from * (1 - (percentPerWeek * 2 * i) / 100)));

const MAINTENANCE = maintenanceEnergy({ weightKg: 30 });

const base: AdjustFoodInput = {
  day: '2026-06-01',
  goal: 'lose',
  weightKg: 30,
  initialWeightKg: 30,
  targetWeightKg: 25,
  bcs: 7,
  onPlan: true,
  currentKcal: 780,
  maintenance: MAINTENANCE,
};
const ask = (changes: Partial<AdjustFoodInput>) => adjustFood({ ...base, ...changes });
const codes = (list: readonly { readonly code: string }[]) => list.map(({ code }) => code);

describe('following a loss plan', () => {
  it('keeps the ration while the dog loses inside the corridor', () => {
    const proposal = ask({ trend: falling(1, 6) });
    expect(proposal).toMatchObject({ verdict: 'keep', kcalPerDay: 780, waitingFor: null });
    expect(proposal.reasons[0]!.text).toContain('90 % interval');
  });

  it('cuts by 10 % only once the whole interval is slower than 0.5 % a week', () => {
    const proposal = ask({ trend: falling(0, 6) });
    expect(proposal).toMatchObject({ verdict: 'change', kcalPerDay: expect.closeTo(702, 6) });
    expect(codes(proposal.reasons)).toEqual(['loses-slowly', 'step', 'recheck-diet']);
  });

  it('waits while only the point is outside, and says for how many weighings', () => {
    const proposal = ask({ trend: falling(0, 3) });
    expect(proposal).toMatchObject({ verdict: 'wait', kcalPerDay: 780 });
    expect(proposal.waitingFor).toMatch(/more weighings? two weeks apart\. Those so far say/);
    // The corridor of a loss (German 2011; S), signed as the rate beside it.
    expect(proposal.waitingFor).toContain('outside what is meant (−2.0 to −0.5 %)');
    expect(proposal.nextWeighInDay).toBe('2026-06-15');
  });

  it('feeds more once the whole interval is faster than 2 % a week', () => {
    const proposal = ask({ trend: falling(3.2, 5), weightKg: 26 });
    expect(proposal).toMatchObject({ verdict: 'change', kcalPerDay: expect.closeTo(858, 6) });
    expect(codes(proposal.reasons)).toEqual(['loses-fast', 'step']);
  });

  it('judges in percent of the initial weight', () => {
    const from = falling(0.7, 8, 20);
    const small = ask({ trend: from, initialWeightKg: 20, weightKg: 18, targetWeightKg: 16 });
    const large = ask({ trend: from, initialWeightKg: 40, weightKg: 18, targetWeightKg: 16 });
    expect(small.reasons[0]!.params['rate']).toBeCloseTo(-0.7, 1);
    expect(large.reasons[0]!.params['rate']).toBeCloseTo(-0.35, 1);
  });

  it.each([
    ['a trend', { currentKcal: 780 }],
    ['a rate', { trend: trendOf([30]) }],
  ])('waits without %s', (_, changes) => {
    const proposal = ask(changes);
    expect(proposal.verdict).toBe('wait');
    expect(proposal.waitingFor).toBe('a weighing on another day since the ration began');
  });

  it('waits for the diet where none is told', () => {
    expect(ask({ trend: falling(0, 6), currentKcal: 0 })).toMatchObject({
      verdict: 'wait',
      kcalPerDay: null,
      waitingFor: 'the diet',
    });
  });

  it('weighs monthly once the rate is set, every two weeks until then', () => {
    expect(ask({ trend: falling(1.2, 10) }).nextWeighInDay).toBe('2026-06-29');
    expect(ask({ trend: falling(1.2, 2) }).nextWeighInDay).toBe('2026-06-15');
  });

  it('never reacts to noise: a rate inside the corridor is left alone in 95 of 100 records', () => {
    // The interval's 5 % tails at the corridor's own edge are the worst case.
    let changed = 0;
    const trials = 400;
    fc.assert(
      fc.property(fc.array(fc.double({ min: -1, max: 1, noNaN: true }), fiveOf()), (errors) => {
        const weights = errors.map((e, i) => 30 * (1 - 0.01 * i) * (1 + e * 0.01));
        if (ask({ trend: trendOf(weights) }).verdict === 'change') changed += 1;
      }),
      { seed: 1, numRuns: trials },
    );
    expect(changed / trials).toBeLessThan(0.05);
  });
});

const fiveOf = () => ({ minLength: 5, maxLength: 5 });

describe('the size of a step', () => {
  const record = (need: number) => {
    const weighings = Array.from({ length: 9 }, (_, index) => ({
      day: addDays(START, 14 * index),
      weightKg: 30 + ((780 - need) * 14 * index) / 7920,
    }));
    return {
      trend: weightTrend(weighings),
      own: estimateMaintenance({
        prior: maintenanceEnergy({ weightKg: 30 }),
        weighings,
        intakes: [{ fromDay: START, kcalPerDay: 780 }],
      }),
    };
  };

  it('follows the dog’s own record, within 5–20 %', () => {
    // Needs 800: for 1 % a week of 30 kg it must get 800 − 339 = 461; the step stops at 20 %.
    const proposal = ask({ ...record(800), bcs: 8, targetWeightKg: 20 });
    expect(proposal.reasons[1]!.params['percent']).toBe(20);
    expect(proposal.reasons[1]!.text).toContain('own record');
  });

  it('is 10 % where the record does not tell more than the formula', () => {
    const { trend } = record(800);
    expect(ask({ trend, bcs: 8, targetWeightKg: 20 }).reasons[1]!.params['percent']).toBe(10);
  });
});

describe('the vet first', () => {
  it.each<[string, Partial<AdjustFoodInput>, string]>([
    ['a thin dog', { bcs: 2, goal: 'gain' }, 'too-thin'],
    ['a lean dog to lose', { bcs: 4 }, 'lean-to-lose'],
    ['a growing dog to lose', { growing: true }, 'growing'],
    ['an ill dog', { unwell: true, goal: 'hold' }, 'unwell'],
    ['a pregnant dog', { pregnantOrNursing: true, goal: 'hold' }, 'pregnant'],
    [
      'a growing dog whose adult weight is unknown',
      { growing: true, goal: 'gain' },
      'adult-weight-missing',
    ],
    ['a mistyped target', { bcs: 6, targetWeightKg: 13 }, 'target-below-range'],
    ['muscle lost', { muscle: 'moderate loss' }, 'muscle-loss'],
    ['loss without a plan', { goal: 'hold', trend: falling(2.5, 5) }, 'unexplained-loss'],
    ['slow loss without a plan', { goal: 'hold', trend: falling(0.5, 8) }, 'unexplained-loss'],
  ])('%s', (_, changes, code) => {
    const proposal = ask(changes);
    expect(proposal).toMatchObject({
      verdict: 'refer',
      kcalPerDay: null,
      ration: null,
      treatAllowanceKcal: null,
      figure: null,
    });
    expect(codes(proposal.reasons)).toEqual([code]);
    expect(proposal.referral).toMatch(/vet/);
  });

  it('rather than a ration below 0.8 × RER of the target', () => {
    const floor = referralFloor(25);
    expect(ask({ trend: falling(0, 6), currentKcal: floor * 1.05 })).toMatchObject({
      verdict: 'refer',
      kcalPerDay: null,
    });
    expect(ask({ trend: falling(0, 6), currentKcal: floor * 1.2 }).verdict).toBe('change');
  });

  it('also where the present ration already lies below', () => {
    const proposal = ask({ trend: falling(1, 6), currentKcal: 500 });
    expect(proposal.referral).toMatch(/present ration lies below 626 kcal/);
  });
});

describe('a target near the range for the score', () => {
  it('stands within one score point, as scores differ by that', () => {
    const near = { bcs: 5, weightKg: 38.5, initialWeightKg: 45, onPlan: false, currentKcal: 1400 };
    expect(ask({ ...near, targetWeightKg: 36 }).verdict).toBe('start');
    expect(ask({ ...near, targetWeightKg: 34 }).reasons[0]!.code).toBe('target-below-range');
  });
});

describe('more food than now, from below the floor', () => {
  const thin = { trend: falling(3.2, 5), weightKg: 26 };

  it('stands, with the vet as a warning', () => {
    const proposal = ask({ ...thin, currentKcal: 500 });
    expect(proposal).toMatchObject({ verdict: 'change', referral: null });
    expect(proposal.kcalPerDay).toBeCloseTo(550, 6);
    const warning = proposal.warnings.find(({ code }) => code === 'still-below-floor')!;
    expect(warning.text).toMatch(/Even with more food .* 626 kcal .* vet/);
  });

  it('is not proposed where the diet told is too small to be whole', () => {
    const proposal = ask({ ...thin, currentKcal: 100 });
    expect(proposal).toMatchObject({ verdict: 'refer', kcalPerDay: null });
    expect(proposal.referral).toMatch(/^The present ration lies below 626 kcal/);
  });
});

describe('a growing dog', () => {
  // NRC 2006 growth equation (S): 9 kg of an expected 30 kg need 1,449 kcal a day.
  const puppy = {
    goal: 'hold',
    growing: true,
    weightKg: 9,
    adultWeightKg: 30,
    targetWeightKg: 9,
    initialWeightKg: 9,
    bcs: 5,
    maintenance: undefined,
  } as const;

  it.each(['hold', 'gain'] as const)('starts at the energy of growth: %s', (goal) => {
    const proposal = ask({ ...puppy, goal, onPlan: false, currentKcal: 0 });
    expect(proposal).toMatchObject({ verdict: 'start', kcalPerDay: expect.closeTo(1449, 0) });
    expect(codes(proposal.reasons)).toEqual(['growth-food']);
    expect(proposal.warnings).toEqual([]);
  });

  it.each(['hold', 'gain'] as const)('is never fed less because it grows: %s', (goal) => {
    const trend = falling(-3, 6, 8);
    const proposal = ask({ ...puppy, goal, trend, currentKcal: 1400 });
    expect(proposal).toMatchObject({ verdict: 'keep', kcalPerDay: 1400 });
  });

  it('goes a tenth at a time towards the energy of growth from a ration outside its range', () => {
    const proposal = ask({ ...puppy, currentKcal: 500 });
    expect(proposal).toMatchObject({ verdict: 'change', kcalPerDay: expect.closeTo(550, 6) });
  });

  it('keeps more when thin, and less when heavy', () => {
    expect(ask({ ...puppy, bcs: 3, currentKcal: 1700 }).kcalPerDay).toBe(1700);
    expect(ask({ ...puppy, bcs: 7, currentKcal: 1200 }).kcalPerDay).toBe(1200);
    expect(ask({ ...puppy, bcs: 7, currentKcal: 1700 }).kcalPerDay).toBeCloseTo(1449, 0);
  });

  it('takes a growth estimate in place of the adult weight', () => {
    const { adultWeightKg: _, ...rest } = puppy;
    const maintenance = maintenanceEnergy({ weightKg: 9, lifeStage: 'puppy', adultWeightKg: 30 });
    const proposal = ask({ ...rest, maintenance, onPlan: false, currentKcal: 0 });
    expect(proposal.kcalPerDay).toBeCloseTo(1449, 0);
  });
});

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

  it.each<[FoodGoal, number, string | null]>([
    ['gain', 8, 'heavy-to-gain'],
    ['gain', 6, 'heavy-to-gain'],
    ['gain', 4, null],
    ['hold', 6, 'heavy-to-hold'],
    ['hold', 7, 'heavy-to-hold'],
    ['hold', 3, 'thin-to-hold'],
    ['hold', 5, null],
  ])('warns when the aim does not fit the score: %s at %i', (goal, bcs, code) => {
    const targetWeightKg = goal === 'gain' ? 31 : 30;
    const { warnings } = ask({ ...first, goal, bcs, targetWeightKg, currentKcal: 1200 });
    const found = codes(warnings).filter((entry) => /^(heavy|thin)-to-/.test(entry));
    expect(found).toEqual(code === null ? [] : [code]);
  });

  it('warns of a target to gain above the range for the score', () => {
    const gain = { ...first, goal: 'gain', bcs: 4 } as const;
    expect(codes(ask({ ...gain, targetWeightKg: 82 }).warnings)).toContain('target-above-range');
    expect(codes(ask({ ...gain, targetWeightKg: 32 }).warnings)).not.toContain(
      'target-above-range',
    );
  });

  it('warns of muscle already lost, and of treats beyond 10 %', () => {
    const foods = [
      { name: 'Dry food', kcalPer100g: 360, gramsPerDay: 300 },
      { name: 'Biscuit', kcalPer100g: 400, gramsPerDay: 60, treat: true },
    ];
    const proposal = ask({ ...first, muscle: 'mild loss', foods });
    expect(codes(proposal.warnings)).toEqual(
      expect.arrayContaining(['muscle-mild-loss', 'treats', 'nutrient-floor']),
    );
    expect(proposal.ration!.treatKcal).toBeCloseTo(proposal.treatAllowanceKcal!, 9);
  });

  it('does not call its own treats too many once they are weighed out in whole grams', () => {
    const dry = { name: 'Dry food', kcalPer100g: 360, gramsPerDay: 300 };
    for (let kcalPer100g = 300; kcalPer100g <= 500; kcalPer100g += 7) {
      const fed = (gramsPerDay: number) =>
        ask({ ...first, foods: [dry, { name: 'Biscuit', kcalPer100g, gramsPerDay, treat: true }] });
      const grams = Math.round((fed(60).treatAllowanceKcal! / kcalPer100g) * 100);
      expect(codes(fed(grams).warnings)).not.toContain('treats');
      expect(codes(fed(grams + 1).warnings)).toContain('treats');
    }
  });

  it('says when no grams can be given', () => {
    const foods = [{ name: 'Raw mince', kcalPer100g: 200, gramsPerDay: 700, fixedGrams: true }];
    const proposal = ask({ ...first, foods });
    expect(proposal.ration).toBeNull();
    expect(codes(proposal.warnings)).toContain('no-free-food');
  });
});

describe('holding weight', () => {
  const hold = { goal: 'hold', bcs: 5, targetWeightKg: 30, currentKcal: 1200 } as const;

  it('keeps the ration while the weight holds', () => {
    expect(ask({ ...hold, trend: falling(0, 8) })).toMatchObject({
      verdict: 'keep',
      kcalPerDay: 1200,
    });
  });

  it('feeds less once the drift upwards is certain', () => {
    expect(ask({ ...hold, trend: falling(-0.6, 8) })).toMatchObject({
      verdict: 'change',
      kcalPerDay: expect.closeTo(1080, 6),
    });
  });

  it('adds the running that the ration does not hold yet', () => {
    const running = { runningKcalPerDay: 60, runningInRationKcalPerDay: 20 };
    const proposal = ask({ ...hold, ...running, trend: falling(0, 8) });
    expect(proposal).toMatchObject({ verdict: 'change', kcalPerDay: 1240 });
    expect(codes(proposal.reasons)).toContain('running-food');
    const held = ask({ ...hold, runningKcalPerDay: 60, trend: falling(0, 8) });
    expect(held.verdict).toBe('keep');
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

describe('any proposal', () => {
  const asked = fc.record({
    goal: fc.constantFrom<FoodGoal>('lose', 'hold', 'gain'),
    weightKg: fc.integer({ min: 20, max: 700 }).map((tenths) => tenths / 10),
    targetShare: fc.integer({ min: 60, max: 130 }),
    bcs: fc.integer({ min: 1, max: 9 }),
    onPlan: fc.boolean(),
    currentKcal: fc.integer({ min: 0, max: 4000 }),
    running: fc.integer({ min: 0, max: 300 }),
    rates: fc.array(fc.double({ min: -0.04, max: 0.04, noNaN: true }), { maxLength: 6 }),
  });

  it('is a number above the floor, more than now, or a referral, with a reason and a next weigh-in', () => {
    holds(
      fc.property(asked, ({ targetShare, rates, running, ...dog }) => {
        const targetWeightKg = (dog.weightKg * targetShare) / 100;
        const proposal = adjustFood({
          ...dog,
          day: START,
          targetWeightKg,
          runningKcalPerDay: running,
          maintenance: maintenanceEnergy({ weightKg: dog.weightKg }),
          trend: trendOf(rates.map((rate) => dog.weightKg * (1 + rate))),
          foods: [{ name: 'Dry food', kcalPer100g: 360, gramsPerDay: 100 }],
        });
        expect(proposal.reasons.length).toBeGreaterThan(0);
        expect([addDays(START, 14), addDays(START, 28)]).toContain(proposal.nextWeighInDay);
        expect(proposal.waitingFor !== null).toBe(proposal.verdict === 'wait');
        expect(proposal.referral !== null).toBe(proposal.verdict === 'refer');
        if (proposal.kcalPerDay === null) {
          expect(['refer', 'wait']).toContain(proposal.verdict);
          return;
        }
        const floor = referralFloor(Math.min(targetWeightKg, dog.weightKg));
        const raised = codes(proposal.warnings).includes('still-below-floor');
        const least = raised ? Math.max(dog.currentKcal, 0.5 * floor) : floor;
        expect(proposal.kcalPerDay).toBeGreaterThanOrEqual(least - 1e-9);
        expect(Number.isFinite(proposal.kcalPerDay)).toBe(true);
        const grams = proposal.ration!.items[0]!.gramsPerDay;
        expect(grams * 3.6).toBeCloseTo(proposal.kcalPerDay, 6);
      }),
      RUNS,
    );
  });

  it('follows from its input alone', () => {
    const input = { trend: falling(0.2, 5) };
    expect(ask(input)).toEqual(ask(input));
  });

  it.each<[object, RegExp]>([
    [{ goal: 'bulk' }, /goal must be one of lose, hold, gain/],
    [{ weightKg: 0 }, /weightKg must be from 0.1 to 150 kg/],
    [{ targetWeightKg: Number.NaN }, /targetWeightKg/],
    [{ currentKcal: -5 }, /currentKcal must be from 0 to 20000 kcal\/day/],
    [{ bcs: 4.5 }, /bcs must be a whole number from 1 to 9/],
    [{ adultWeightKg: 0 }, /adultWeightKg must be from 0.5 to 150 kg/],
    [{ maintenance: {} }, /maintenance.mid must be from 0 to 20000 kcal\/day/],
    [{ day: '1 June' }, /day must be a calendar day/],
  ])('refuses %o, naming it', (changes, message) => {
    expect(() => ask(changes as Partial<AdjustFoodInput>)).toThrow(message);
    expect(() => ask(changes as Partial<AdjustFoodInput>)).toThrow(RangeError);
  });
});
