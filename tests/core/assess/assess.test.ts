import { describe, expect, it } from 'vitest';
import { buildRamp, idealWeight, maintenanceEnergy } from '../../../core/index.ts';
import { assess } from '../../../core/assess/assess.ts';
import type { AssessedVisit, AssessInput } from '../../../core/assess/types.ts';
import { addDays } from '../../../core/day.ts';
import { request } from './dogOnPlan.ts';
import { grownDog, visit } from './visits.ts';

const START = '2026-01-05';
const after = (weeks: number) => addDays(START, 7 * weeks);
const of = (visits: readonly AssessedVisit[], changes: Partial<AssessInput> = {}) =>
  assess({ dog: grownDog, visits, foodDecisions: [], day: visits.at(-1)!.day, ...changes })!;
const decision = (decidedOn: string, kcalPerDay: number, runningKcalPerDay = 0) => ({
  decidedOn,
  kcalPerDay,
  known: { runningKcalPerDay },
});
const codes = (list: readonly { readonly code: string }[]) => list.map(({ code }) => code);
/** On a plan from 30 kg to 25 kg. */
const lose = { foodGoal: 'lose', bcs: 7, targetWeightKg: 25, kcal: 900 } as const;

describe('an assessment', () => {
  it('counts nothing of a later day', () => {
    const visits = [visit(START, 27, { kcal: 1100 }), visit(after(6), 30, { bcs: 8, kcal: 1400 })];
    const foodDecisions = [decision(START, 1100), decision(after(6), 1000)];
    const weighings = [{ day: after(5), weightKg: 33 }];
    const day = after(4);
    expect(of(visits, { foodDecisions, weighings, day })).toEqual(
      of(visits.slice(0, 1), { foodDecisions: foodDecisions.slice(0, 1), day }),
    );
    // A decision of the day itself counts.
    expect(of(visits, { foodDecisions }).intakeKcal).toBe(1000);
  });

  it('is none of a dog that was seen and never weighed', () => {
    const visits = [visit(START, null)];
    expect(assess({ dog: grownDog, visits, foodDecisions: [], day: START })).toBeNull();
  });

  it('tells the ideal weight by the last score; none without one', () => {
    const visits = [visit(START, 30, { bcs: 7 }), visit(after(2), 29, { bcs: null })];
    expect(of(visits).ideal?.mid).toBeCloseTo(idealWeight({ weightKg: 29, bcs: 7 }).mid, 9);
    expect(of([visit(START, 30, { bcs: null })]).ideal).toBeNull();
  });

  it('says that a target and an aim speak against each other only of one that was set', () => {
    expect(of([visit(START, 24, lose)]).aimProblem?.code).toBe('target-not-below');
    expect(of([visit(START, 30, lose)]).aimProblem).toBeNull();
    expect(of([visit(START, 24, { ...lose, targetWeightKg: null, bcs: 5 })]).aimProblem).toBeNull();
    // Reached: it was above before.
    const reached = [visit(START, 27, lose), visit(after(8), 24.9, lose)];
    expect(of(reached).aimProblem).toBeNull();
  });

  it('looks ahead from no body that grows', () => {
    const visits = [visit(START, 15, { kcal: 1500 })];
    expect(of(visits, { dog: { ...grownDog, birthDay: '2025-06-01' } }).body).toBeNull();
    expect(of(visits).body).not.toBeNull();
  });
});

describe('the need by the formula', () => {
  const need = (visits: readonly AssessedVisit[], changes: Partial<AssessInput> = {}) =>
    of(visits, changes).maintenance.mid;
  const formula = (weightKg: number, rest: Parameters<typeof maintenanceEnergy>[0] | object = {}) =>
    maintenanceEnergy({
      weightKg,
      lifeStage: 'adult',
      neuter: 'neutered',
      activity: 'low',
      ...rest,
    }).mid;

  it('is that of the ideal weight from a score of 6 on, else of the weight', () => {
    expect(need([visit(START, 27, { bcs: 5 })])).toBeCloseTo(formula(27), 9);
    expect(need([visit(START, 27, { bcs: null })])).toBeCloseTo(formula(27), 9);
    expect(need([visit(START, 27, { bcs: 6 })])).toBeCloseTo(formula(27 / 1.1), 9);
  });

  it('is less for an old dog, by the weight of a grown one', () => {
    // 8 kg live 12.7 years, 27 kg 11.9: the last quarter begins at 9.5 and 8.9 years (McMillan 2024; S).
    const born = (birthDay: string, adultWeightKg: number | null = 27) =>
      need([visit(START, 27)], { dog: { ...grownDog, birthDay, adultWeightKg } });
    const senior = formula(27, { lifeStage: 'senior' });
    expect(senior).toBeLessThan(formula(27));
    expect(born('2016-11-01')).toBeCloseTo(senior, 9);
    expect(born('2017-05-01')).toBeCloseTo(formula(27), 9);
    expect(born('2016-11-01', null)).toBeCloseTo(senior, 9);
    expect(born('2016-11-01', 8)).toBeCloseTo(formula(27), 9);
  });

  it('is for growth while a dog grows towards a known weight, its score aside', () => {
    const dog = { ...grownDog, birthDay: '2025-06-01', neuteredAtMonths: null };
    const grows = need([visit(START, 15, { bcs: 7 })], { dog });
    const growth = maintenanceEnergy({ weightKg: 15, lifeStage: 'puppy', adultWeightKg: 27 }).mid;
    expect(grows).toBeCloseTo(growth, 9);
    const unknown = of([visit(START, 15)], { dog: { ...dog, adultWeightKg: null } }).maintenance;
    expect(unknown.mid).toBeCloseTo(formula(15), 9);
    expect(unknown.figure.notes[0]).toMatch(/too low for this one/);
    expect(of([visit(START, 27)]).maintenance.figure.notes.join()).not.toMatch(/too low for this/);
  });

  it('is that of a slimmed dog from 10 % lost on a plan that has ended (D)', () => {
    const held = (kg: number, goal: 'hold' | 'lose' = 'hold') =>
      need([visit(START, 30, lose), visit(after(20), kg, { foodGoal: goal, bcs: 5 })]);
    const slimmed = (kg: number) => formula(kg, { afterWeightLoss: true });
    expect(held(27)).toBeCloseTo(slimmed(27), 9);
    expect(held(27.1)).toBeCloseTo(formula(27.1), 9);
    expect(held(27, 'lose')).toBeCloseTo(formula(27), 9);
    // Heavier before, but on no plan: not slimmed by one.
    expect(need([visit(START, 30), visit(after(20), 27)])).toBeCloseTo(formula(27), 9);
  });
});

describe('what the food is decided by', () => {
  it('is counted from the first weighing with the aim, and anew after 90 days without one', () => {
    const at = (weeks: number, days = 0) => {
      const visits = [visit(START, 32, lose), visit(addDays(after(weeks), days), 31, lose)];
      return of(visits, { foodDecisions: [] }).food;
    };
    expect(codes(at(12, 6).reasons)).not.toContain('plan-anew');
    const anew = at(13).reasons.find(({ code }) => code === 'plan-anew');
    expect(anew?.params).toEqual({ days: 91 });
  });

  it('sends no dog to lose to the corridor of an earlier aim', () => {
    const visits = [visit(START, 34), visit(after(4), 32, lose), visit(after(8), 30, lose)];
    expect(of(visits).corridor[0]).toMatchObject({ day: after(4) });
    expect(of(visits.slice(0, 1)).corridor).toEqual([]);
    // Weighed first at a later visit of the same aim, or a long gap after which the plan begins anew.
    const unweighed = [visit(after(4), null, lose), visit(after(5), 32, lose)];
    expect(of(unweighed).corridor[0]).toMatchObject({ day: after(5) });
    const gap = [visit(START, 34, lose), visit(after(20), 32, lose), visit(after(22), 31.6, lose)];
    expect(of(gap).corridor[0]).toMatchObject({ day: after(20) });
  });

  it('is the record since the ration or the aim began, whichever is later, of half a year', () => {
    const weights = [0, 2, 4, 6, 8].map((week) => visit(after(week), 30 - week / 10, lose));
    const points = (foodDecisions: ReturnType<typeof decision>[], visits = weights) =>
      of(visits, { foodDecisions }).trendOnRation.points.length;
    expect(points([])).toBe(5);
    expect(points([decision(after(4), 900)])).toBe(3);
    // The same ration decided again, within 2 %, begins nothing.
    expect(points([decision(START, 900), decision(after(6), 890)])).toBe(5);
    expect(points([decision(START, 900), decision(after(6), 880)])).toBe(2);
    expect(points([decision(addDays(START, -7), 900)])).toBe(5);
    const held = weights.map((each, index) =>
      index < 2 ? { ...each, foodGoal: 'hold' as const } : each,
    );
    expect(points([decision(START, 900)], held)).toBe(3);
    const years = [0, 20, 40, 46].map((week) => visit(after(week), 27));
    expect(points([], years)).toBe(2);
  });

  it('is weighed every two weeks for five months after neutering (S)', () => {
    // Born on 1 May 2020: 68 months old.
    const steady = [0, 4, 8, 12].map((week) =>
      visit(after(week), 27, { kcal: 1100, targetWeightKg: 27 }),
    );
    const days = (neuteredAtMonths: number | null) => {
      const foodDecisions = [decision(START, 1100)];
      const dog = { ...grownDog, neuteredAtMonths };
      return of(steady, { foodDecisions, dog }).food.nextWeighInDay;
    };
    const age = of(steady).ageMonths;
    expect(days(null)).toBe(after(16));
    expect(days(age - 6)).toBe(after(16));
    expect(days(age - 5)).toBe(after(14));
    expect(days(age)).toBe(after(14));
    expect(days(age + 1)).toBe(after(16));
  });

  it('is the vet’s where over a tenth is gone in 28 days, and not where it took longer', () => {
    const lost = (days: number, kg: number) => {
      const fed = { ...lose, kcal: 700 };
      const middle = addDays(START, days / 2);
      const visits = [
        visit(START, 30, fed),
        visit(middle, (30 + kg) / 2, fed),
        visit(addDays(START, days), kg, fed),
      ];
      return codes(of(visits, { foodDecisions: [decision(START, 700)] }).food.reasons);
    };
    expect(lost(28, 26.9)).toContain('loses-far-too-fast');
    expect(lost(28, 27.3)).not.toContain('loses-far-too-fast');
    expect(lost(32, 26.9)).not.toContain('loses-far-too-fast');
  });

  it.each(['pregnancy', 'lactation'])('is the vet’s for a bitch with %s', (sign) => {
    expect(codes(of([visit(START, 27, { signs: [sign], kcal: 1100 })]).food.reasons)).toEqual([
      'pregnant',
    ]);
  });

  it('is the vet’s where muscle was lost when it was last looked at', () => {
    const visits = [
      visit(START, 27, { muscle: 'moderate loss' }),
      visit(after(2), 27, { muscle: null, kcal: 1100 }),
    ];
    expect(codes(of(visits).food.reasons)).toEqual(['muscle-loss']);
  });

  it('names no medicine where the field holds blanks', () => {
    const { warnings } = of([visit(START, 27, { medicine: '  ', kcal: 1100 })]).food;
    expect(codes(warnings)).not.toContain('food-on-medicine');
  });
});

describe('the running that the food is for', () => {
  const ramp = buildRamp({
    ...request,
    startDay: START,
    paceMinPerKm: 7,
    goal: { continuousMinutes: 30 },
  });
  const plan = { ramp, climbM: null };
  const planned = (day: string) =>
    of([visit(START, 27, { kcal: 1100, targetWeightKg: 27 })], { plan, day }).running!.current!
      .kcalPerDay;
  const fed = (week: number, kcal: number, foodDecisions: ReturnType<typeof decision>[]) =>
    of(
      [
        visit(START, 27, { kcal: 1100, targetWeightKg: 27 }),
        visit(after(week), 27, { kcal, targetWeightKg: 27 }),
      ],
      { plan, foodDecisions },
    );
  /** What the proposal adds for running. */
  const added = (week: number, kcal: number, foodDecisions: ReturnType<typeof decision>[]) =>
    Number(
      fed(week, kcal, foodDecisions).food.reasons.find(({ code }) => code === 'running-food')
        ?.params['kcal'] ?? 0,
    );

  it('is what the ration does not hold yet: the present week less what was counted', () => {
    const now = planned(after(12));
    expect(now).toBeGreaterThan(20);
    expect(added(12, 1100, [decision(START, 1100)])).toBe(Math.round(now));
    expect(added(12, 1100, [decision(START, 1100, 10)])).toBe(Math.round(now - 10));
    expect(added(12, 1100, [decision(START, 1100, now)])).toBe(0);
    expect(added(12, 1100, [decision(START, 1100, now + 10)])).toBe(-10);
  });

  it('counts what the owner added towards it already, and no more than it asks for', () => {
    const now = planned(after(12));
    const part = 15;
    expect(added(12, 1100 + part, [decision(START, 1100)])).toBe(Math.round(now - part));
    expect(added(12, 1100 + now + 40, [decision(START, 1100)])).toBe(0);
    // Fed less than decided: none of the running is in it, and not less than none.
    expect(added(12, 1060, [decision(START, 1100)])).toBe(Math.round(now));
  });

  it('is none once the plan is over: nothing is taken away', () => {
    const end = ramp.weeks.length + 2;
    expect(added(end, 1100, [decision(START, 1100, 30)])).toBe(0);
  });
});
