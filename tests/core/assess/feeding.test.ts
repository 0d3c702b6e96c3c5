import { describe, expect, it } from 'vitest';
import { assess } from '../../../core/assess/assess.ts';
import { isGrowing } from '../../../core/assess/growing.ts';
import type { AssessedDecision, AssessedVisit, AssessInput } from '../../../core/assess/types.ts';
import { addDays } from '../../../core/day.ts';
import { grownDog, visit } from './visits.ts';

const START = '2026-01-05';
const after = (weeks: number) => addDays(START, 7 * weeks);

function foodOf(visits: readonly AssessedVisit[], changes: Partial<AssessInput> = {}) {
  const day = visits.at(-1)!.day;
  return assess({ dog: grownDog, visits, foodDecisions: [], day, ...changes })!;
}

const decision = (decidedOn: string, kcalPerDay: number): AssessedDecision => ({
  decidedOn,
  kcalPerDay,
  known: { runningKcalPerDay: 0 },
});

describe('a growing dog', () => {
  // Seven months old at the visits.
  const puppy = { ...grownDog, birthDay: '2025-06-01', adultWeightKg: 30, neuteredAtMonths: null };
  const weeks = [0, 2, 4, 6, 8, 10];
  const growth = weeks.map((week, i) => visit(after(week), 15 + i, { kcal: 1500 }));

  it.each(['hold', 'gain'] as const)('is not fed less because it grows: %s', (foodGoal) => {
    const visits = growth.map((entry) => ({ ...entry, foodGoal }));
    const foodDecisions = [decision(START, 1500)];
    const { food } = foodOf(visits, { dog: puppy, foodDecisions });
    expect(food.verdict).toBe('keep');
    expect(food.kcalPerDay).toBe(1500);
  });

  it('gets no ration before its expected adult weight is known', () => {
    const { food, maintenance } = foodOf(growth, { dog: { ...puppy, adultWeightKg: null } });
    expect(food).toMatchObject({ verdict: 'refer', kcalPerDay: null });
    expect(food.referral).toContain('enter the expected adult weight');
    expect(maintenance.figure.notes[0]).toContain('enter the expected adult weight');
  });

  it('gets no ration to lose, however heavy it is', () => {
    const obese = visit(START, 33, { bcs: 9, foodGoal: 'lose', targetWeightKg: 27, kcal: 1500 });
    const { food } = foodOf([obese], { dog: puppy });
    expect(food).toMatchObject({ verdict: 'refer', kcalPerDay: null });
    expect(food.reasons[0]!.code).toBe('growing');
  });

  it.each([
    [11, 10, 12, true],
    [11, 30, 40, true],
    [12, 10, 5, false],
    [12, 19.9, 30, false],
    [12, 20, 30, true],
    [17, 40, 60, true],
    [18, 40, 20, false],
    [14, null, 25, true],
    [14, null, 8, false],
  ])('at %i months, %s kg expected, %i kg now: %s', (ageMonths, adultWeightKg, weightKg, grows) => {
    expect(isGrowing({ ageMonths, adultWeightKg, weightKg })).toBe(grows);
  });
});

describe('signs of illness', () => {
  it.each([
    'fever',
    'pale-gums',
    'distended-abdomen',
    'collapse',
    'new-murmur',
    'cough',
    'exercise-intolerance',
  ])('stop the food until the vet has seen the dog: %s', (sign) => {
    const { food } = foodOf([visit(START, 27, { signs: [sign], kcal: 1100 })]);
    expect(food).toMatchObject({ verdict: 'refer', kcalPerDay: null });
    expect(food.reasons.map(({ code }) => code)).toEqual(['unwell']);
  });

  it('of the legs do not, and those of an earlier visit do not', () => {
    const lame = visit(after(2), 27, { signs: ['joint-effusion'], kcal: 1100 });
    const ill = visit(START, 27, { signs: ['fever'], kcal: 1100 });
    expect(foodOf([ill, lame]).food.verdict).not.toBe('refer');
  });
});

describe('what the owner tells of eating and drinking', () => {
  it.each([
    { appetite: 'less than usual' },
    { thirst: 'more than usual' },
    { stool: 'loose' },
  ] as const)('sends the dog to the vet before its food is changed: %o', (told) => {
    const { food } = foodOf([visit(START, 27, { ...told, kcal: 1100 })]);
    expect(food).toMatchObject({ verdict: 'refer', kcalPerDay: null });
    expect(food.reasons[0]!.code).toBe('unlike-itself');
  });

  it('leaves the food alone where it is as usual, and names medicine', () => {
    const usual = { appetite: 'normal', thirst: 'normal', stool: 'soft' } as const;
    const { food } = foodOf([
      visit(START, 27, { ...usual, medicine: 'Joint tablets', kcal: 1100 }),
    ]);
    expect(food.kcalPerDay).not.toBeNull();
    expect(food.warnings.map(({ code }) => code)).toContain('food-on-medicine');
    const without = foodOf([visit(START, 27, { ...usual, kcal: 1100 })]).food;
    expect(without.warnings.map(({ code }) => code)).not.toContain('food-on-medicine');
  });
});

describe('the end of a plan to lose', () => {
  const weights = [30, 29.4, 28.8, 28.2, 27.6, 27];
  const losing = weights.map((weightKg, index) =>
    visit(after(2 * index), weightKg, {
      foodGoal: 'lose',
      targetWeightKg: 27,
      bcs: index === 0 ? 6 : 5,
      kcal: 830,
    }),
  );
  const held = { foodGoal: 'hold', targetWeightKg: 27, kcal: 830 } as const;
  const foodDecisions = [decision(START, 830)];

  it('is not a loss without a plan', () => {
    const visits = [...losing.slice(0, -1), visit(after(10), 27, held)];
    const { food, trend, trendOnRation } = foodOf(visits, { foodDecisions });
    expect(trend.high!).toBeLessThan(-0.5);
    expect(trendOnRation.points).toHaveLength(1);
    expect(food.verdict).toBe('change');
    // The ration of the loss plan goes up by a step, towards what slimmed dogs need.
    expect(food.kcalPerDay).toBeGreaterThan(800);
    expect(food.kcalPerDay).toBeLessThanOrEqual(830 * 1.1 + 1e-9);
    expect(food.reasons[0]!.code).toBe('target-reached');
  });

  it('lets a loss after it be told', () => {
    const more = [27, 26.4, 25.8, 25.2].map((kg, i) => visit(after(10 + 2 * i), kg, held));
    const { food } = foodOf([...losing.slice(0, -1), ...more], { foodDecisions });
    expect(food.reasons[0]!.code).toBe('unexplained-loss');
  });

  it('starts the next plan to lose afresh, whatever was decided before', () => {
    const before = [0, 2, 4, 6].map((week) => visit(after(week), 30, { bcs: 7, kcal: 1250 }));
    const now = visit(after(8), 30, { bcs: 7, kcal: 1250, foodGoal: 'lose', targetWeightKg: 27 });
    const { food } = foodOf([...before, now], { foodDecisions: [decision(START, 1250)] });
    expect(food.verdict).toBe('start');
    // By its own record: the weight stood still on 1,250 kcal, and 1.2 % of 30 kg a week is 407 kcal.
    expect(food.reasons[0]!.code).toBe('expected-rate');
    expect(Math.abs(food.kcalPerDay! - (1250 - 407))).toBeLessThan(60);
  });
});

describe('a plan to lose, by the dog’s own record', () => {
  /** Fed 830 kcal towards 27 kg, weighed every two weeks. */
  const fed = (...weights: readonly number[]) =>
    foodOf(
      weights.map((kg, index) =>
        visit(after(2 * index), kg, { foodGoal: 'lose', targetWeightKg: 27, bcs: 7, kcal: 830 }),
      ),
      { foodDecisions: [decision(START, 830)] },
    ).food;

  it('says so first where the dog gains on it', () => {
    const { reasons, verdict } = fed(32, 32.2, 32.4, 32.6);
    expect(verdict).toBe('change');
    expect(reasons[0]!.code).toBe('gains-on-loss');
    expect(reasons[0]!.text).toMatch(/^The dog gains weight on a plan to lose\./);
  });

  it('tells a loss that is too slow from one that is too fast', () => {
    expect(fed(34, 33.95, 33.9, 33.85).reasons[0]!.code).toBe('loses-slowly');
    expect(fed(36, 34.6, 33.1, 31.7).reasons[0]!.code).toBe('loses-fast');
  });

  it('slows near the target: a rate that is right far from it carries past it close by', () => {
    const far = fed(33.6, 32.7, 31.8, 30.9);
    expect(far).toMatchObject({ verdict: 'keep', kcalPerDay: 830 });
    const near = fed(30.5, 29.6, 28.7, 27.8);
    expect(near.reasons[0]!.code).toBe('near-target');
    expect(near.kcalPerDay!).toBeGreaterThan(830 * 1.05);
    // Expected to arrive in about four weeks, not to stand still above the target.
    const loss = near.forecast!.percentPerWeek;
    expect(loss).toBeLessThanOrEqual(-0.7 + 1e-9);
    expect(27.8 + (4 * loss * 30.5) / 100).toBeGreaterThan(27 * 0.98);
  });
});

describe('a loss without a plan', () => {
  it('is judged within half a year', () => {
    // 3 kg lost in two years, none of it lately.
    const old = [0, 26, 52].map((week, i) => visit(after(week), 30 - 1.5 * i, { kcal: 1100 }));
    const late = [96, 98, 100, 102].map((week) => visit(after(week), 27, { kcal: 1100 }));
    const { food, drift, trend } = foodOf([...old, ...late]);
    expect(trend.change!.high).toBeLessThan(-5);
    expect(drift).toBeNull();
    expect(food.verdict).not.toBe('refer');
  });

  it('goes to the vet', () => {
    const visits = [0, 4, 8, 12, 16].map((week) =>
      visit(after(week), 28 - week / 8, { kcal: 1100 }),
    );
    const { food, drift } = foodOf(visits);
    expect(food.reasons[0]!.code).toBe('unexplained-loss');
    expect(drift!.code).toBe('drift-vet');
  });
});
