import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays } from '../../../core/day.ts';
import {
  adjustFood,
  maintenanceEnergy,
  referralFloor,
  weightTrend,
  type AdjustFoodInput,
} from '../../../core/nutrition.ts';
import type { WeightState } from '../../../core/weight/weightState.ts';
import { evenly, holds } from '../../support/laws.ts';

const DAY = '2026-06-01';
/** kcal a day that a loss of 1 % of 30 kg a week is worth: 7,920 kcal/kg (Hand Table 27-15; S, our arithmetic). */
const PERCENT = (7920 * 30) / 700;
const NEED = 1400;
const weighed = (...weights: readonly number[]) =>
  weightTrend(
    weights.map((weightKg, index) => ({ day: addDays('2026-04-20', 14 * index), weightKg })),
  );
const LONG = weighed(30, 30, 30, 30);

const state = (kg: number, rest: Partial<WeightState> = {}): WeightState => ({
  kg,
  kgSd: 0.2,
  need: NEED,
  needSd: 20,
  kgNeed: 0,
  surprisePercent: 0,
  lowestKg: kg,
  ...rest,
});
const base: AdjustFoodInput = {
  day: DAY,
  goal: 'lose',
  weightKg: 30,
  initialWeightKg: 30,
  targetWeightKg: 20,
  bcs: 8,
  onPlan: true,
  daysOnRation: 30,
  trend: LONG,
  maintenance: maintenanceEnergy({ weightKg: 30 }),
};
/** A dog of 30 kg that loses `rate` % a week by its record. */
const losing = (rate: number, changes: Partial<AdjustFoodInput> = {}) =>
  adjustFood({ ...base, state: state(30), currentKcal: NEED - rate * PERCENT, ...changes });
const codes = (list: readonly { readonly code: string }[]) => list.map(({ code }) => code);
const percentOf = (proposal: ReturnType<typeof adjustFood>, code: string) =>
  proposal.reasons.find((reason) => reason.code === code)?.params['percent'];

describe('a loss steered by the dog’s own record', () => {
  // 1.2 % a week is steered to, 0.7 to 1.7 % left alone (D).
  it.each([
    [-0.3, ['gains-on-loss', 'step', 'expected-rate', 'recheck-diet'], 'change'],
    [-0.04, ['loses-slowly', 'step', 'expected-rate', 'recheck-diet'], 'change'],
    [0.3, ['loses-slowly', 'step', 'expected-rate', 'recheck-diet'], 'change'],
    [1.2, ['inside'], 'keep'],
    [2.4, ['loses-fast', 'step', 'expected-rate'], 'change'],
  ] as const)('of %f %% a week tells %j: %s', (rate, told, verdict) => {
    const proposal = losing(rate);
    expect(codes(proposal.reasons)).toEqual(told);
    expect(proposal).toMatchObject({ verdict, referral: null, waitingFor: null });
    expect(proposal.reasons[0]!.params['rate']).toBeCloseTo(-rate, 2);
  });

  it('changes exactly where it tells a step, by the percent it tells and to the rate it tells', () => {
    const drawn = fc.record({
      rate: evenly(-2, 3.5),
      need: evenly(900, 3000),
      kg: evenly(21, 30),
    });
    holds(
      fc.property(drawn, ({ rate, need, kg }) => {
        const currentKcal = need - rate * PERCENT;
        fc.pre(currentKcal > 100);
        const proposal = losing(rate, { currentKcal, weightKg: kg, state: state(kg, { need }) });
        fc.pre(proposal.kcalPerDay !== null);
        const change = proposal.kcalPerDay! / currentKcal - 1;
        expect(proposal.verdict).toBe(change === 0 ? 'keep' : 'change');
        const told = codes(proposal.reasons);
        for (const code of ['step', 'expected-rate'])
          expect(told.includes(code)).toBe(change !== 0);
        expect(told.includes('recheck-diet')).toBe(change < 0);
        expect(proposal.forecast!.kcalPerDay).toBe(proposal.kcalPerDay);
        if (change === 0) return;
        expect(percentOf(proposal, 'step')).toBeCloseTo(100 * Math.abs(change), 0);
        expect(proposal.reasons.find(({ code }) => code === 'step')!.text).toMatch(
          change < 0 ? /^Less food/ : /^More food/,
        );
        expect(percentOf(proposal, 'expected-rate')).toBeCloseTo(
          proposal.forecast!.percentPerWeek,
          1,
        );
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  it('never feeds less for losing faster', () => {
    holds(
      fc.property(evenly(-1, 3.4), evenly(0.01, 1), (rate, more) => {
        const at = (need: number) =>
          losing(0, { currentKcal: 1000, state: state(30, { need }) }).kcalPerDay;
        const [slow, fast] = [at(1000 + rate * PERCENT), at(1000 + (rate + more) * PERCENT)];
        expect(fast!).toBeGreaterThanOrEqual(slow!);
      }),
      { seed: 1, numRuns: 100 },
    );
  });

  it('tells of water only with more food in the first two weeks', () => {
    const short = { trend: weighed(30, 29) };
    expect(codes(losing(2.4, short).reasons)).toContain('early-water');
    expect(codes(losing(0.3, short).reasons)).not.toContain('early-water');
    expect(codes(losing(2.4).reasons)).not.toContain('early-water');
  });

  it('is weighed monthly only while the whole interval keeps to 0.5–2 % (S)', () => {
    const next = (rate: number, needSd = 20) =>
      losing(rate, { state: state(30, { needSd }) }).nextWeighInDay;
    expect(next(1.2)).toBe(addDays(DAY, 28));
    // 1.645 standard deviations reach out of it on either side (C): 0.7 % and 0.8 % a week.
    expect(next(1, (0.55 * PERCENT) / 1.645)).toBe(addDays(DAY, 14));
    expect(next(1.5, (0.55 * PERCENT) / 1.645)).toBe(addDays(DAY, 14));
    expect(next(1.25, (0.7 * PERCENT) / 1.645)).toBe(addDays(DAY, 28));
    expect(next(0.3)).toBe(addDays(DAY, 14));
  });

  it('asks the vet where the dog surely loses 3 % a week, or lost over 10 % in four weeks (D)', () => {
    const sd = (percent: number) => ({ state: state(30, { needSd: (percent * PERCENT) / 1.645 }) });
    expect(codes(losing(3.3, sd(0.2)).reasons)).toContain('loses-far-too-fast');
    expect(losing(3.3, sd(0.2)).referral).toMatch(/ask the vet/);
    expect(losing(3.3, sd(0.4)).referral).toBeNull();
    expect(losing(1.2, { lostPercentIn4Weeks: 10 }).referral).toBeNull();
    const lost = losing(1.2, { lostPercentIn4Weeks: 10.1 });
    expect(codes(lost.reasons)).toEqual(['inside', 'loses-far-too-fast']);
    expect(lost.referral).toMatch(/ask the vet/);
  });
});

describe('what is not steered', () => {
  it('is a weighing that lies over 4 % off: it is weighed again, and nothing is changed', () => {
    for (const surprisePercent of [4.1, -4.1]) {
      const proposal = losing(0.3, { state: state(30, { surprisePercent }) });
      expect(proposal).toMatchObject({ verdict: 'wait', kcalPerDay: NEED - 0.3 * PERCENT });
      expect(proposal.waitingFor).toContain(`until ${addDays(DAY, 7)}: the last one lies 4.1 %`);
    }
    expect(losing(0.3, { state: state(30, { surprisePercent: 4 }) }).verdict).toBe('change');
  });

  it('is a ration of under twelve days that would change: it waits for its two weeks', () => {
    const early = losing(0.3, { daysOnRation: 11 });
    expect(early).toMatchObject({ verdict: 'wait', kcalPerDay: NEED - 0.3 * PERCENT });
    expect(early.waitingFor).toContain(`a weighing on ${addDays(DAY, 3)}`);
    expect(early.forecast!.percentPerWeek).toBeCloseTo(-0.3, 6);
    expect(losing(0.3, { daysOnRation: 12 }).verdict).toBe('change');
    expect(losing(1.2, { daysOnRation: 1 }).verdict).toBe('keep');
    const { daysOnRation: _, ...unknown } = base;
    const fed = { state: state(30), currentKcal: NEED - 0.3 * PERCENT };
    expect(adjustFood({ ...unknown, ...fed }).verdict).toBe('change');
  });

  it.each<[string, Partial<AdjustFoodInput>]>([
    ['no rate', { trend: weighed(30) }],
    ['no diet', { currentKcal: 0 }],
    ['an aim to gain', { goal: 'gain', targetWeightKg: 33, bcs: 4 }],
    ['no plan', { onPlan: false }],
  ])('is a record with %s', (_, changes) => {
    expect(losing(0.3, changes).forecast).toBeUndefined();
    expect(losing(0.3).forecast).toBeDefined();
  });
});

describe('the least that is proposed', () => {
  const floor = referralFloor(20);
  const at = (rate: number, changes: Partial<AdjustFoodInput> = {}) =>
    losing(0, {
      currentKcal: floor,
      state: state(30, { need: floor + rate * PERCENT }),
      ...changes,
    });

  it('sends a dog that still does not lose 0.5 % on it to the vet, in its first four weeks (D)', () => {
    const proposal = at(0.3, { daysOnRation: 27 });
    expect(codes(proposal.reasons)).toEqual(['below-floor']);
    expect(proposal).toMatchObject({ verdict: 'refer', kcalPerDay: null });
    const { daysOnRation: _, ...unknown } = base;
    const fed = { state: state(30, { need: floor + 0.3 * PERCENT }), currentKcal: floor };
    expect(adjustFood({ ...unknown, ...fed }).verdict).toBe('refer');
  });

  it('stays as a note after that, or where the dog loses', () => {
    for (const proposal of [at(0.3, { daysOnRation: 28 }), at(0.6, { daysOnRation: 27 })]) {
      expect(proposal).toMatchObject({ verdict: 'keep', kcalPerDay: floor, referral: null });
      expect(codes(proposal.warnings)).toContain('at-floor');
    }
    expect(codes(at(1.2).warnings)).not.toContain('at-floor');
  });
});

describe('a target that is reached', () => {
  const reached = (kg: number, lowestKg = kg, changes: Partial<AdjustFoodInput> = {}) =>
    losing(1, { weightKg: kg, currentKcal: NEED, state: state(kg, { lowestKg }), ...changes });
  const isHeld = (proposal: ReturnType<typeof adjustFood>) =>
    proposal.figure!.formula.includes('over 70 days');

  it('is held from 2 % above it, until the dog is a tenth above it again (D)', () => {
    expect(isHeld(reached(20.39))).toBe(true);
    expect(isHeld(reached(20.41))).toBe(false);
    expect(isHeld(reached(21.99, 20.3))).toBe(true);
    expect(isHeld(reached(21.99, 20.5))).toBe(false);
    expect(isHeld(reached(22.01, 20.3))).toBe(false);
  });

  it('says so on a plan to lose, unless less is fed', () => {
    expect(reached(20).reasons[0]!.code).toBe('target-reached');
    expect(reached(19).reasons[0]!.code).toBe('target-reached');
    expect(reached(21.9, 20).reasons[0]!.code).toBe('too-high');
  });
});

describe('a weight that is held', () => {
  const hold = (kg: number, currentKcal: number, changes: Partial<AdjustFoodInput> = {}) =>
    adjustFood({
      ...base,
      goal: 'hold',
      bcs: 5,
      weightKg: kg,
      targetWeightKg: 25,
      state: state(kg, { need: 1000 }),
      trend: weighed(25, 25, 25, 25),
      currentKcal,
      ...changes,
    });
  /** kcal a day for 1 % of 25 kg a week. */
  const worth = (7920 * 25) / 700;

  it.each([
    [25, 1000, 'inside', 'keep'],
    [25 * 1.05, 700, 'kept-falling', 'keep'],
    [25 * 1.02, 1000 + 0.5 * worth, 'kept-near', 'keep'],
    [24.5, 1000 - 0.41 * worth, 'too-low', 'change'],
    [26, 1150, 'too-high', 'change'],
  ] as const)('at %f kg on %f kcal: %s', (kg, kcal, code, verdict) => {
    const proposal = hold(kg, kcal);
    expect(proposal.verdict).toBe(verdict);
    expect(codes(proposal.reasons)).toEqual(verdict === 'keep' ? [code] : [code, 'expected-rate']);
    expect(proposal.kcalPerDay === kcal).toBe(verdict === 'keep');
  });

  it('is steady under 0.4 % a week, and then weighed monthly', () => {
    // 0.25 kg over the target need 28 kcal a day less over ten weeks, so that neither is worth a change.
    const at = (percent: number) => hold(25.24, 1000 + percent * worth);
    expect(at(0.39 - 0.2).nextWeighInDay).toBe(addDays(DAY, 28));
    const rising = hold(25.24, 1000 + 0.39 * worth);
    expect(rising.reasons[0]!.code).toBe('inside');
    expect(rising.nextWeighInDay).toBe(addDays(DAY, 28));
    const faster = hold(25.24, 1000 + 0.41 * worth);
    expect(faster.reasons[0]!.code).toMatch(/^kept/);
    expect(faster.nextWeighInDay).toBe(addDays(DAY, 14));
  });

  it('tells where the weight is, in percent of the target from half a percent on', () => {
    const text = (kg: number) => hold(kg, 1000).reasons[0]!.text;
    expect(text(25.11)).toMatch(/^The weight is at the target/);
    expect(text(25.13)).toMatch(/^The weight is 0\.5 % above the target/);
    expect(text(24.8)).toMatch(/^The weight is 0\.8 % under the target/);
  });

  it('names the bound behind a ration that stays, and the ration', () => {
    expect(hold(25 * 1.02, 1000 + 0.5 * worth).reasons[0]!.params).toMatchObject({ percent: 3 });
    expect(hold(25, 1000 - 0.25 * worth).reasons[0]!.params).toMatchObject({ percent: 8 });
    const changed = hold(26, 1150);
    expect(changed.reasons[0]!.params).not.toHaveProperty('percent');
    expect(changed.reasons[0]!.params['kcal']).toBe(Math.round(changed.kcalPerDay!));
    const percent = 100 * (1 - changed.kcalPerDay! / 1150);
    expect(changed.reasons[0]!.text).toContain(`Less food by ${Math.round(10 * percent) / 10} %`);
    expect(hold(24.2, 1000).reasons[0]!.text).toContain('More food by 9.1 %');
  });

  it('adds the running that is planned anew, and says so', () => {
    const running = { runningKcalPerDay: 60, runningInRationKcalPerDay: 20 };
    const proposal = hold(25, 1020, running);
    expect(proposal).toMatchObject({ verdict: 'change', kcalPerDay: 1060 });
    expect(codes(proposal.reasons)).toContain('running-food');
  });
});
