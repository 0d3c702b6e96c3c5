import { inRange } from '../check.ts';
import { figure, type Figure, type Reason } from '../figure.ts';
import { from } from '../origin.ts';
import { saying } from '../quantityText.ts';
import { foodEnergy, METHODS_DIFFER_FROM, type LabelAnalysis } from './foodEnergy.ts';

/** Energy a food can have as fed, kcal per 100 g: from a watery broth to pure fat (C). */
export const FOOD_KCAL_RANGE = { min: 5, max: 950 } as const;

/** What is known of a food: the energy declared on the pack, the analysis on the label, or both. */
export interface FoodEnergyInput {
  /** kcal per 100 g as fed, where the pack says it. */
  readonly declaredKcalPer100g?: number;
  readonly label?: LabelAnalysis;
}

export interface FoodEnergyChoice {
  /** The energy to feed by, kcal per 100 g as fed. */
  readonly kcalPer100g: number;
  readonly method: 'declared' | 'four steps';
  readonly declared: number | null;
  /** Both computed values where a label is given, kcal per 100 g. */
  readonly predictive: number | null;
  readonly atwater: number | null;
  /** Set where the values differ by more than 10 % of the one used. */
  readonly warning: Reason | null;
  readonly figure: Figure;
}

/**
 * The energy to feed a food by: declared on the pack where it is, else the four steps from the
 * label. Where any two of the known values differ by more than 10 %, all are shown.
 *
 * @throws RangeError when neither is given, the declared energy is outside 5–950 kcal per 100 g, or
 *   the label is out of range
 * @example
 * chooseFoodEnergy({ label: sample.label }) // => { kcalPer100g: 375.55, method: 'four steps', … }
 * chooseFoodEnergy({ declaredKcalPer100g: 380 }) // => { kcalPer100g: 380, method: 'declared', … }
 * Source: FEDIAF 2017 p. 118 for the four steps (S); the order of preference is our choice (D).
 */
export function chooseFoodEnergy(input: FoodEnergyInput): FoodEnergyChoice {
  const declared = input.declaredKcalPer100g ?? null;
  if (declared !== null) {
    inRange('declaredKcalPer100g', declared, 'kcal per 100 g', FOOD_KCAL_RANGE);
  }
  const computed = input.label === undefined ? null : foodEnergy(input.label);
  if (declared === null && computed === null) {
    inRange('declaredKcalPer100g', Number.NaN, 'kcal per 100 g', FOOD_KCAL_RANGE);
  }
  const predictive = computed?.predictive ?? null;
  const atwater = computed?.atwater ?? null;
  const kcalPer100g = declared ?? predictive!;
  const warning = differenceWarning({ declared, predictive, atwater }, kcalPer100g);
  return {
    kcalPer100g,
    method: declared === null ? 'four steps' : 'declared',
    declared,
    predictive,
    atwater,
    warning,
    figure: choiceFigure(input, kcalPer100g, declared !== null, warning),
  };
}

const WORDS = {
  declared: 'declared',
  predictive: 'four steps',
  atwater: 'Atwater factors',
} as const;

type Known = Readonly<Record<keyof typeof WORDS, number | null>>;

function differenceWarning(known: Known, used: number): Reason | null {
  const names = (Object.keys(WORDS) as (keyof Known)[]).filter((name) => known[name] !== null);
  const values = names.map((name) => known[name]!);
  if (Math.max(...values) - Math.min(...values) <= METHODS_DIFFER_FROM * used) return null;
  const list = names.map((name) => `${WORDS[name]} {${Math.round(known[name]!)} kcal}`).join(', ');
  return {
    code: 'methods-differ',
    ...saying(
      `The ways to tell the energy of this food differ by more than 10 %: ${list} per 100 g. Check the label, or ask the maker.`,
    ),
    params: Object.fromEntries(names.map((name) => [name, Math.round(known[name]!)])),
    ...from('D', 'D', 'fediaf2017', 'ownDecision'),
  };
}

function choiceFigure(
  { label }: FoodEnergyInput,
  kcalPer100g: number,
  isDeclared: boolean,
  warning: Reason | null,
): Figure {
  const percent = (name: string, value: number) => ({ label: name, value, unit: '%' });
  return figure(kcalPer100g, {
    id: 'foodEnergy',
    label: 'Energy of the food',
    unit: 'kcal per 100 g',
    formula: isDeclared
      ? 'declared on the pack'
      : 'GE = 5.7 P + 9.4 F + 4.1 (NFE + fibre); DE = GE × (91.2 − 1.43 × fibre % of dry matter) %; ME = DE − 1.04 P',
    inputs:
      label === undefined
        ? []
        : [
            percent('Protein', label.proteinPct),
            percent('Fat', label.fatPct),
            percent('Fibre', label.fibrePct),
            percent('Moisture', label.moisturePct),
            percent('Ash', label.ashPct),
          ],
    ...from('C', 'S', 'fediaf2017'),
    notes: warning === null ? [] : [warning.said ?? warning.text],
  });
}
