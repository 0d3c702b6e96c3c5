import { expect } from 'vitest';
import { addDays } from '../../../core/day.ts';
import {
  adjustFood,
  estimateMaintenance,
  maintenanceEnergy,
  weightTrend,
  type AdjustFoodInput,
  type Weighing,
  type FoodProposal,
} from '../../../core/nutrition.ts';
import { expectToReadInAnyUnits } from '../../support/otherUnits.ts';

export const START = '2026-03-01';
/** A trend over `weights`, one every two weeks. */
export const trendOf = (weights: readonly number[]) =>
  weightTrend(weights.map((weightKg, index) => ({ day: addDays(START, 14 * index), weightKg })));
export const falling = (percentPerWeek: number, count: number, from = 30) =>
  trendOf(Array.from({ length: count }, (_, i) => from * (1 - (percentPerWeek * 2 * i) / 100)));

export const MAINTENANCE = maintenanceEnergy({ weightKg: 30 });

/** A dog of 30 kg on a plan to lose 5 kg. */
export const base: AdjustFoodInput = {
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
/** What is proposed, held to its own words. */
export function ask(changes: Partial<AdjustFoodInput>): FoodProposal {
  const input = { ...base, ...changes };
  const proposal = adjustFood(input);
  const { currentKcal = 0, runningKcalPerDay = 0 } = input;
  expectSaidAsDone(proposal, currentKcal, runningKcalPerDay);
  return proposal;
}

/** A proposal that says one thing and does another, or rests on nothing, fails whatever is asked. */
function expectSaidAsDone(proposal: FoodProposal, present: number, running: number): void {
  const { reasons, warnings, figure, kcalPerDay } = proposal;
  expectToReadInAnyUnits([...reasons, ...warnings]);
  for (const { code, text, params, sources } of [...reasons, ...warnings]) {
    expect(sources.length, code).toBeGreaterThan(0);
    // The words of other languages have their figures from the parameters alone.
    const [kcal] = [...text.replaceAll(',', '').matchAll(/(\d+) kcal a day/g)].map((match) =>
      Number(match[1]),
    );
    const told = Object.values(params).map((value) => Math.abs(Number(value)));
    if (kcal !== undefined) expect(told, text).toContain(kcal);
    if (text.startsWith('Less food by')) expect(kcalPerDay).toBeLessThan(present);
    if (/^More food by|: go up/.test(text)) expect(kcalPerDay).toBeGreaterThan(present);
    if (text.includes(': go down')) expect(kcalPerDay).toBeLessThan(present);
    if (text.includes(': keep the ration')) expect(kcalPerDay).toBe(present);
    if (/target-reached$/.test(code)) {
      expect(text.includes('the planned running in it')).toBe(running > 0);
    }
  }
  if (kcalPerDay === null) return;
  expect(figure!.value).toBe(kcalPerDay);
  expect(figure!.sources.length).toBeGreaterThan(0);
  const [, sign, percent] = /^present ration ([+−]) ([\d.]+) %$/.exec(figure!.formula) ?? [];
  expect(figure!.formula.length).toBeGreaterThan(10);
  if (percent === undefined) return;
  const share = (Number(percent) / 100) * (sign === '+' ? 1 : -1);
  expect(Math.abs(kcalPerDay / present - 1 - share)).toBeLessThan(0.0006);
}
export const codes = (list: readonly { readonly code: string }[]) => list.map(({ code }) => code);

/** The record of a dog that needs `need` kcal a day and was fed 780: weighed every two weeks. */
export function record(need: number, fed = 780) {
  const weighings = Array.from({ length: 9 }, (_, index) => ({
    day: addDays(START, 14 * index),
    weightKg: 30 + ((fed - need) * 14 * index) / 7920,
  }));
  return {
    trend: weightTrend(weighings),
    own: estimateMaintenance({
      prior: maintenanceEnergy({ weightKg: 30 }),
      weighings,
      intakes: [{ fromDay: START, kcalPerDay: fed }],
    }),
  };
}

export const weighed = (days: number, weightKg: number): Weighing => ({
  day: addDays(START, days),
  weightKg,
});
/** A dog of 25 kg that needs `need` and eats 900 kcal, weighed without error. */
export const course = (need: number, apart: number, count: number): Weighing[] =>
  Array.from({ length: count }, (_, index) =>
    weighed(index * apart, 25 + ((900 - need) * index * apart) / 7920),
  );
