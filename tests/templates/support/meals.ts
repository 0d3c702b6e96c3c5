import {
  adjustFood,
  bowlsOf,
  changeover,
  maintenanceEnergy,
  ration,
  type AdjustFoodInput,
  type FedFood,
} from '../../../core/index.ts';
import type { BowlLabelsData, FeedingSheetData } from '../../../templates/index.ts';
import type { Paper } from '../../../templates/theme.ts';
import { context, longNames } from './people.ts';

const foods: readonly FedFood[] = [
  { name: 'Dry food (invented brand)', kcalPer100g: 362, gramsPerDay: 220, gramsPerCup: 92 },
  { name: 'Cooked carrots', kcalPer100g: 35, gramsPerDay: 80, fixedGrams: true },
  { name: 'Training treats', kcalPer100g: 310, gramsPerDay: 30, treat: true },
];

const sixFoods: readonly FedFood[] = [
  ...foods,
  { name: 'Wet food, turkey (invented brand)', kcalPer100g: 108, gramsPerDay: 150 },
  { name: 'Cottage cheese', kcalPer100g: 98, gramsPerDay: 40 },
  { name: 'Salmon oil', kcalPer100g: 900, gramsPerDay: 4, fixedGrams: true },
];

const base: AdjustFoodInput = {
  day: '2025-12-01',
  goal: 'lose',
  weightKg: 24.2,
  targetWeightKg: 22,
  bcs: 6,
  maintenance: maintenanceEnergy({ weightKg: 24.2, neuter: 'neutered', activity: 'moderate' }),
  currentKcal: 900,
  foods,
};

const newFood = changeover({
  startDay: '2025-12-02',
  kcalPerDay: 612,
  oldFood: { name: 'Old dry food', kcalPer100g: 362 },
  newFood: { name: 'New dry food', kcalPer100g: 310 },
});

export function meals(
  paper: Paper,
  input: Partial<AdjustFoodInput> = {},
  changes: Partial<FeedingSheetData> = {},
): FeedingSheetData {
  const asked = { ...base, ...input };
  const proposal = adjustFood(asked);
  return {
    ...context(paper),
    aim: asked.goal,
    proposal,
    decidedOn: proposal.kcalPerDay === null ? null : asked.day,
    kcalPerDay: proposal.kcalPerDay,
    decisionNote: '',
    ration: proposal.ration,
    need: asked.maintenance ?? null,
    targetWeightKg: asked.targetWeightKg,
    changeover: null,
    nextWeighDay: proposal.nextWeighInDay,
    ...changes,
  };
}

/** What the practitioner settles on in place of the proposal. */
const settled = (kcalPerDay: number, asFed: readonly FedFood[], mealsPerDay = 2) => ({
  kcalPerDay,
  ration: ration({ kcalPerDay, foods: asFed, mealsPerDay }),
  decisionNote: 'A little more, for the long walks in December.',
});

/** An amount of the practitioner's own. */
export const editedMeals = (paper: Paper): FeedingSheetData =>
  meals(paper, {}, settled(760, foods));

/** As full as it gets: six foods, a changeover, an amount of the practitioner's own. */
export const fullMeals = (paper: Paper): FeedingSheetData =>
  meals(
    paper,
    { foods: sixFoods, mealsPerDay: 3, currentKcal: 1300 },
    {
      ...settled(1000, sixFoods, 3),
      changeover: newFood,
      byWeek: [7, 8, 9, 10, 11, 12, 13, 14].map((week) => ({ week, kcalPerDay: 900 + 6 * week })),
    },
  );

/** Energy only: no food on record. */
export const bareMeals = (paper: Paper): FeedingSheetData =>
  meals(
    paper,
    { goal: 'hold', foods: undefined, currentKcal: undefined },
    { need: null, targetWeightKg: null },
  );

/** Too thin: the vet comes first, and no amount is proposed. */
export const referredMeals = (paper: Paper): FeedingSheetData =>
  meals(paper, { goal: 'gain', bcs: 2 });

export const longNamesMeals = (paper: Paper): FeedingSheetData => ({
  ...fullMeals(paper),
  ...longNames(paper),
});

/** A new food in the place of the dry one, beside one that stays. */
export function changingMeals(paper: Paper): FeedingSheetData {
  const data = meals(paper);
  const [dry] = data.ration!.items;
  const change = changeover({
    startDay: '2025-12-02',
    kcalPerDay: dry!.kcalPerDay,
    oldFood: { name: 'Old dry food', kcalPer100g: 340 },
    newFood: dry!,
  });
  return { ...data, changeover: change };
}

export const bowlLabelsOf = (data: FeedingSheetData): BowlLabelsData => ({
  ...data,
  bowls: bowlsOf(data.ration!, data.changeover),
  mealsPerDay: data.ration!.mealsPerDay,
  since: data.changeover?.steps.at(-1)!.day ?? data.day,
});
