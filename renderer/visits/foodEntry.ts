import type { FoodProposal } from '../../core/index.ts';
import type { FoodDecisionInput, FoodSwitch } from '../../electron/contract/records.ts';
import { isOvertaken } from './useAnswerTo.ts';

export interface FoodEntry {
  decision: FoodDecisionInput['decision'] | 'open';
  /** What was proposed when it was decided. */
  answeredTo: string;
  kcalPerDay: number | null;
  /** Whether a food of the table gives way to another; what was typed stays where it is taken back. */
  switches: boolean;
  foodSwitch: {
    replaces: string;
    name: string;
    kcalPer100g: number | null;
    startDay: string;
    days: number | null;
  };
  note: string;
}

const CHANGEOVER_DAYS = 10;

export function blankFood(day: string): FoodEntry {
  return {
    decision: 'open',
    answeredTo: '',
    kcalPerDay: null,
    switches: false,
    foodSwitch: { replaces: '', name: '', kcalPer100g: null, startDay: day, days: CHANGEOVER_DAYS },
    note: '',
  };
}

/** The change of food as far as it is complete; null while it is not, or none is wanted. */
export function foodSwitchOf(food: FoodEntry): FoodSwitch | null {
  const { kcalPer100g, days, ...rest } = food.foodSwitch;
  const whole = rest.replaces !== '' && rest.name !== '' && rest.startDay !== '';
  if (!food.switches || !whole || kcalPer100g === null || days === null) return null;
  return { ...rest, kcalPer100g, days };
}

/** Answers that hold whatever is proposed. */
export const FREE_FOOD_ANSWERS = ['edited'] as const;

/** What of a proposal an answer is given to, as it is shown: what differs by less is the same. */
export const foodKey = ({ verdict, kcalPerDay }: FoodProposal): string =>
  `${verdict} ${kcalPerDay === null ? '' : Math.round(kcalPerDay)}`;

/** The energy of a proposal that was answered, kcal/day; null where it had none. */
export function answeredKcal({ answeredTo }: FoodEntry): number | null {
  const [, kcal = ''] = answeredTo.split(' ');
  return kcal === '' ? null : Number(kcal);
}

/** True while the food was decided on another proposal than the present one. */
export const isFoodOvertaken = (food: FoodEntry, proposal: FoodProposal): boolean =>
  isOvertaken(food, foodKey(proposal), FREE_FOOD_ANSWERS);

/** The answer to the food proposal as it is sent; null while it is left open. */
export function foodDecisionOf(food: FoodEntry): FoodDecisionInput | null {
  if (food.decision === 'open') return null;
  return {
    decision: food.decision,
    kcalPerDay: decidedKcal(food),
    // What is missing is sent as it is: the service names the field, its unit and its range.
    foodSwitch: food.switches ? (food.foodSwitch as FoodSwitch) : null,
    note: food.note,
  };
}

/** What was typed, or what was seen when the proposal was accepted. */
function decidedKcal(food: FoodEntry): number | null {
  if (food.decision === 'edited') return food.kcalPerDay;
  return food.decision === 'accepted' ? answeredKcal(food) : null;
}
