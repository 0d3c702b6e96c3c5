import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assess, weightCourse } from '../../../core/index.ts';
import type { AssessedVisit, AssessInput } from '../../../core/assess/types.ts';
import { addDays } from '../../../core/day.ts';
import type { Weighing } from '../../../core/weight/weighing.ts';
import { grownDog, visit } from './visits.ts';
import { holds } from '../../support/laws.ts';

const START = '2026-01-05';
const after = (weeks: number) => addDays(START, 7 * weeks);

function assessed(
  visits: readonly AssessedVisit[],
  weighings: readonly Weighing[],
  changes: Partial<AssessInput> = {},
) {
  const day = [...visits, ...weighings]
    .map((entry) => entry.day)
    .sort()
    .at(-1)!;
  return assess({ dog: grownDog, visits, weighings, foodDecisions: [], day, ...changes });
}

describe('weighings between visits', () => {
  const losing = { foodGoal: 'lose', bcs: 7, targetWeightKg: 25, kcal: 900 } as const;

  it('count like those of visits: weight, trend, corridor and own energy', () => {
    const weighed = [30, 29.6, 29.3, 29, 28.6].map((kg, i) => ({
      day: after(2 * i),
      weightKg: kg,
    }));
    const [first, ...rest] = weighed;
    const visits = [visit(first!.day, 30, losing)];
    const atVisits = assessed(
      [...visits, ...rest.map((w) => visit(w.day, w.weightKg, losing))],
      [],
    )!;
    const between = assessed(visits, rest, { day: atVisits.day })!;
    expect(between.weightKg).toBe(28.6);
    expect(between.trend).toEqual(atVisits.trend);
    expect(between.trendOnRation).toEqual(atVisits.trendOnRation);
    expect(between.corridor).toEqual(atVisits.corridor);
    // The visits between say once more what is fed; with one visit alone nothing was logged yet.
    const told = assessed([...visits, visit(after(8), null, losing)], rest)!;
    expect(told.own.weighings).toBe(5);
    expect(told.own.mid).toBeCloseTo(atVisits.own.mid, 6);
  });

  it('move the food that is proposed', () => {
    const visits = [visit(START, 30, losing), visit(after(8), null, losing)];
    const decision = { decidedOn: START, kcalPerDay: 900, known: { runningKcalPerDay: 0 } };
    const steady = [2, 4, 6, 8].map((week) => ({ day: after(week), weightKg: 30 }));
    const without = assessed(visits, [], { foodDecisions: [decision] })!;
    const withThem = assessed(visits, steady, { foodDecisions: [decision] })!;
    // Fed and weighed steadily on a plan to lose: less food, once the weighings are there to say so.
    expect(without.food.verdict).not.toBe('change');
    expect(withThem.food.verdict).toBe('change');
    expect(withThem.food.kcalPerDay!).toBeLessThan(900);
  });

  it('move the weigh-in of a dog that is to lose weight out by no day, and another aim’s as the rate allows', () => {
    const weeks = 10;
    const kg = (week: number) => Math.round(300 * (1 - 0.01 * week)) / 10;
    const visits = [visit(START, 30, losing), visit(after(weeks), kg(weeks), losing)];
    const decision = { decidedOn: START, kcalPerDay: 900, known: { runningKcalPerDay: 0 } };
    const atHome = Array.from({ length: 2 * weeks - 1 }, (_, index) => ({
      day: addDays(START, Math.round(3.5 * (index + 1))),
      weightKg: kg((index + 1) / 2),
    }));
    const told = { foodDecisions: [decision] };
    const without = assessed(visits, [], told)!.food;
    const withThem = assessed(visits, atHome, told)!.food;
    // Two weighings tell too little of the rate: two weeks. Twenty at home tell it, and the food stays.
    expect([without.verdict, withThem.verdict]).toEqual(['wait', 'keep']);
    expect(without.nextWeighInDay).toBe(addDays(after(weeks), 14));
    expect(withThem.nextWeighInDay).toBe(without.nextWeighInDay);
    // Weighed as often at visits, the rate is set: four weeks (S).
    const seen = atHome.map(({ day, weightKg }) => visit(day, weightKg, losing));
    const settled = assessed([visits[0]!, ...seen, visits[1]!], [], told)!.food;
    expect(settled.nextWeighInDay).toBe(addDays(after(weeks), 28));
    const holding = visits.map((each) => ({
      ...each,
      foodGoal: 'hold' as const,
      targetWeightKg: 30,
      weightKg: 30,
    }));
    const still = atHome.map(({ day }) => ({ day, weightKg: 30 }));
    const held = assessed(holding, still, told)!.food;
    expect(held.nextWeighInDay).toBe(addDays(after(weeks), 28));
  });

  it('are flagged where one does not fit', () => {
    const visits = [visit(START, 30), visit(after(8), 30)];
    const weighings = [2, 4, 6].map((week) => ({
      day: after(week),
      weightKg: week === 4 ? 20 : 30,
    }));
    expect(assessed(visits, weighings)!.trend.flagged.map(({ day }) => day)).toContain(after(4));
  });

  it('after the assessed day do not count; on a day of a visit that of the visit is the latest', () => {
    const visits = [visit(START, 30), visit(after(4), 29)];
    const weighings = [
      { day: after(4), weightKg: 29.4 },
      { day: after(5), weightKg: 20 },
    ];
    const now = assessed(visits, weighings, { day: after(4) })!;
    expect(now.weightKg).toBe(29);
    expect(now.trend.points).toHaveLength(3);
  });

  it('alone, before the first visit, make no assessment; the first visit then needs no weight', () => {
    const weighings = [{ day: START, weightKg: 30 }];
    expect(assessed([], weighings)).toBeNull();
    expect(assessed([visit(after(1), null)], weighings)!.weightKg).toBe(30);
  });

  it('are taken alike by the list of dogs off course', () => {
    const entry = fc.record({
      week: fc.integer({ min: 0, max: 30 }),
      kg: fc.integer({ min: 200, max: 360 }),
    });
    holds(
      fc.property(
        fc.array(entry, { maxLength: 6 }),
        fc.constantFrom('lose', 'hold'),
        (some, goal) => {
          const visits = [visit(START, 30, { ...losing, foodGoal: goal as 'lose' | 'hold' })];
          const weighings = some.map(({ week, kg }) => ({ day: after(week), weightKg: kg / 10 }));
          const input = { dog: grownDog, visits, weighings, foodDecisions: [], day: after(30) };
          const whole = assess(input)!;
          expect(weightCourse(input)).toEqual(whole.offCorridor ?? whole.drift);
        },
      ),
      { seed: 1, numRuns: 200 },
    );
  });
});
