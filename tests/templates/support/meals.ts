import { maintenanceEnergy } from '../../../core/energy/maintenance.ts';
import { addDays } from '../../../core/day.ts';
import { ration, type FedFood } from '../../../core/food/ration.ts';
import type { Reason } from '../../../core/figure.ts';
import type { FeedingSheetData } from '../../../templates/index.ts';
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

const reasons: readonly Reason[] = [
  {
    code: 'start-loss',
    text: 'Weight loss starts at the resting energy of the target weight.',
    params: {},
    evidence: 'C',
    mark: 'S',
    sources: ['hand2010'],
  },
  {
    code: 'nutrients',
    text: 'On ordinary food this amount can be short of some nutrients. Ask the vet about a complete diet made for weight loss.',
    params: {},
    evidence: 'A',
    mark: 'S',
    sources: ['linder2012'],
  },
];

/** Ten even steps from one food to another, as a service would hand them over. */
const changeover: FeedingSheetData['changeover'] = {
  oldFood: 'Old dry food',
  newFood: 'New dry food',
  steps: Array.from({ length: 10 }, (_, i) => ({
    day: addDays('2025-12-02', i),
    oldGrams: 198 - i * 22,
    newGrams: 22 + i * 22,
  })),
};

export function meals(paper: Paper, changes: Partial<FeedingSheetData> = {}): FeedingSheetData {
  return {
    ...context(paper),
    aim: 'lose',
    kcalPerDay: 711,
    need: maintenanceEnergy({ weightKg: 24.2, neuter: 'neutered', activity: 'moderate' }),
    targetWeightKg: 22,
    ration: ration({ kcalPerDay: 711, foods }),
    changeover: null,
    nextWeighDay: '2025-12-15',
    reasons,
    ...changes,
  };
}

/** As full as it gets: six foods, a changeover, reasons. */
export const fullMeals = (paper: Paper): FeedingSheetData =>
  meals(paper, {
    ration: ration({ kcalPerDay: 711, foods: sixFoods, mealsPerDay: 3 }),
    changeover,
  });

/** Energy only: no food on record, no day to weigh, no range. */
export const bareMeals = (paper: Paper): FeedingSheetData =>
  meals(paper, {
    need: null,
    ration: null,
    targetWeightKg: null,
    nextWeighDay: null,
    reasons: [],
    aim: 'hold',
  });

export const longNamesMeals = (paper: Paper): FeedingSheetData => ({
  ...fullMeals(paper),
  ...longNames(paper),
});
