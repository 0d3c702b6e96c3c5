import { z } from 'zod';
import { choice, day, flag, number, quantity, requiredLine, later, whole } from '../fields.ts';
import { QUANTITIES } from '../records/quantities.ts';

// What a dog eats; part of records.ts.

const ENERGY_FROM = ['declared', 'label'] as const;

/** Each share refuses by its own name: five of them stand side by side. */
const share = (name: string) =>
  number({ ...QUANTITIES.nutrientPct, label: `${name} on the label` });

/** What the label of a food says, % as fed. */
export const labelInput = later(() =>
  z.object({
    proteinPct: share('Protein'),
    fatPct: share('Fat'),
    fibrePct: share('Fibre'),
    moisturePct: share('Moisture'),
    ashPct: share('Ash'),
  }),
);
export type FoodLabel = z.output<ReturnType<typeof labelInput>>;

export const dietItemInput = later(() =>
  z.object({
    name: requiredLine('Name of the food'),
    treat: flag('Treat'),
    kcalPer100g: quantity('kcalPer100g'),
    gramsPerDay: quantity('gramsPerDay'),
    gramsPerCup: quantity('gramsPerCup').nullable(),
    /** True when these grams stay as they are and the other foods take up the change. */
    fixedGrams: flag('Amount stays fixed'),
    /** Where `kcalPer100g` comes from: the pack, or computed from `label`. */
    energyFrom: choice('Source of the food energy', ENERGY_FROM),
    label: labelInput().nullable(),
  }),
);
export type DietItem = z.output<ReturnType<typeof dietItemInput>>;

/** One food takes the place of another, at the same energy, over some days. */
export const foodSwitchInput = later(() =>
  z.object({
    replaces: requiredLine('Food to be replaced'),
    name: requiredLine('Name of the new food'),
    kcalPer100g: quantity('kcalPer100g'),
    startDay: day('First day of the changeover'),
    days: whole('changeoverDays'),
  }),
);
export type FoodSwitch = z.output<ReturnType<typeof foodSwitchInput>>;
