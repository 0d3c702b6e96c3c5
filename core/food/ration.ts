import { ArgumentError, inRange, wholeInRange } from '../check.ts';
import { FOOD_KCAL_RANGE } from './foodChoice.ts';

/** Treats may make up at most this share of the day's energy (S). */
export const TREAT_SHARE = 0.1;

/** A food or treat as it is fed. */
export interface FedFood {
  readonly name: string;
  readonly kcalPer100g: number;
  readonly gramsPerDay: number;
  readonly treat?: boolean;
  /** These grams stay; the other foods take up the change. */
  readonly fixedGrams?: boolean;
  /** What the owner's own cup of this food weighs, g. */
  readonly gramsPerCup?: number | null;
}

export interface RationItem {
  readonly name: string;
  readonly treat: boolean;
  readonly fixedGrams: boolean;
  readonly kcalPer100g: number;
  readonly gramsPerDay: number;
  readonly gramsPerMeal: number;
  readonly kcalPerDay: number;
  /** Cups a day by the owner's own weighed cup; null without one. */
  readonly cupsPerDay: number | null;
}

/** What to put in the bowl. Grams are unrounded; the items sum to `kcalPerDay`. */
export interface Ration {
  readonly kcalPerDay: number;
  readonly mealsPerDay: number;
  readonly items: readonly RationItem[];
  readonly treatAllowanceKcal: number;
  readonly treatKcal: number;
}

/**
 * Energy of what is fed, kcal/day.
 * @example intakeEnergy([{ name: 'Dry food', kcalPer100g: 360, gramsPerDay: 250 }]) // => 900
 */
export function intakeEnergy(foods: readonly FedFood[]): number {
  return foods.reduce((sum, food) => sum + (food.kcalPer100g * food.gramsPerDay) / 100, 0);
}

export interface RationInput {
  readonly kcalPerDay: number;
  readonly foods: readonly FedFood[];
  readonly mealsPerDay?: number;
}

/**
 * Shares `kcalPerDay` over the foods as they are fed now: fixed grams stay, treats stay up to 10 %
 * of the day's energy, the remaining foods keep their proportion to one another.
 *
 * @throws RangeError for energy outside 1–20000 kcal/day, meals outside 1–6, food energy outside
 *   5–950 kcal per 100 g, a cup outside 1–2000 g, or when fixed foods and treats leave no energy for the rest
 * @example
 * ration({ kcalPerDay: 900, foods: sample.foods }).items.map(({ gramsPerDay }) => gramsPerDay)
 *   // => [225, 22.5]
 * Source: treats at most 10 % (S); proportion kept by our choice (D).
 */
export function ration(input: RationInput): Ration {
  inRange('kcalPerDay', input.kcalPerDay, 'kcal/day', { min: 1, max: 20000 });
  const mealsPerDay = wholeInRange('mealsPerDay', input.mealsPerDay ?? 2, 'a day', {
    min: 1,
    max: 6,
  });
  for (const food of input.foods) checkFood(food);
  const treatAllowanceKcal = TREAT_SHARE * input.kcalPerDay;
  const treatFactor = Math.min(
    1,
    treatAllowanceKcal / Math.max(1e-9, energyOf(input.foods, isTreat)),
  );
  const treatKcal = energyOf(input.foods, isTreat) * treatFactor;
  const fixedKcal = energyOf(input.foods, isFixed);
  const freeKcal = input.kcalPerDay - treatKcal - fixedKcal;
  const freeNow = energyOf(input.foods, isFree);
  assertRoom(input.foods, freeKcal, freeNow);
  const items = input.foods.map((food) => {
    const factor = isTreat(food) ? treatFactor : isFixed(food) ? 1 : freeKcal / freeNow;
    return rationItem(food, food.gramsPerDay * factor, mealsPerDay);
  });
  return { kcalPerDay: input.kcalPerDay, mealsPerDay, items, treatAllowanceKcal, treatKcal };
}

/**
 * As `ration`; null while no food is listed whose amount could follow, or where fixed foods and
 * treats already take the whole day.
 * @example
 * rationOrNull({ kcalPerDay: 900, foods: [] }) // => null
 * rationOrNull({ kcalPerDay: 900, foods: sample.foods })?.treatKcal // => 90
 */
export function rationOrNull(input: RationInput): Ration | null {
  const foods = input.foods.filter((food) => food.gramsPerDay > 0);
  const treats = Math.min(energyOf(foods, isTreat), TREAT_SHARE * input.kcalPerDay);
  const room = input.kcalPerDay - treats - energyOf(foods, isFixed);
  return foods.some(isFree) && room > 0 ? ration({ ...input, foods }) : null;
}

const isTreat = (food: FedFood): boolean => food.treat === true;
const isFixed = (food: FedFood): boolean => food.treat !== true && food.fixedGrams === true;
const isFree = (food: FedFood): boolean => food.treat !== true && food.fixedGrams !== true;

function energyOf(foods: readonly FedFood[], which: (food: FedFood) => boolean): number {
  return intakeEnergy(foods.filter(which));
}

function checkFood(food: FedFood): void {
  inRange('kcalPer100g', food.kcalPer100g, 'kcal per 100 g', FOOD_KCAL_RANGE);
  inRange('gramsPerDay', food.gramsPerDay, 'g/day', { min: 0, max: 10000 });
  if (food.gramsPerCup !== undefined && food.gramsPerCup !== null) {
    inRange('gramsPerCup', food.gramsPerCup, 'g', { min: 1, max: 2000 });
  }
}

function assertRoom(foods: readonly FedFood[], freeKcal: number, freeNow: number): void {
  if (freeNow > 0 && freeKcal > 0) return;
  const problem = foods.some(isFree)
    ? 'gramsPerDay must leave energy for the foods that are not fixed: fixed foods and treats already take the whole day'
    : 'foods must hold at least one food whose amount is not fixed and that is not a treat';
  throw new ArgumentError('foods', 'kcal/day', undefined, problem);
}

function rationItem(food: FedFood, gramsPerDay: number, mealsPerDay: number): RationItem {
  const cup = food.gramsPerCup ?? null;
  return {
    name: food.name,
    treat: isTreat(food),
    fixedGrams: isFixed(food),
    kcalPer100g: food.kcalPer100g,
    gramsPerDay,
    gramsPerMeal: gramsPerDay / mealsPerDay,
    kcalPerDay: (food.kcalPer100g * gramsPerDay) / 100,
    cupsPerDay: cup === null ? null : gramsPerDay / cup,
  };
}
