import { grouped } from '../../core/quantityText.ts';
import {
  BETWEEN_KEYS,
  type FieldChange,
  type FieldValue,
  type Measure,
} from '../../electron/contract/history/change.ts';
import type { Dimension } from '../units/dimensions.ts';
import type { Shown } from '../units/shown.ts';
import {
  ACTIVITY_WORDS,
  COAT_WORDS,
  GOAL_WORDS,
  KIND_WORDS,
  NEUTER_WORDS,
  NEXT_DAY_WORDS,
  OUTCOME_WORDS,
  SEX_WORDS,
  START_WORDS,
  SURGERY_WORDS,
  WALK_BASE_WORDS,
  WEIGHING_WORDS,
} from '../words.ts';

/** What a changed field was and is, as it reads on the form. */
export interface ChangeText {
  readonly was: string;
  readonly is: string;
}

const WORDS: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  kind: KIND_WORDS,
  activity: ACTIVITY_WORDS,
  conditioning: START_WORDS,
  surgery: SURGERY_WORDS,
  walkBase: WALK_BASE_WORDS,
  weighingMethod: WEIGHING_WORDS,
  foodGoal: GOAL_WORDS,
  sex: SEX_WORDS,
  neuter: NEUTER_WORDS,
  coat: COAT_WORDS,
  outcome: OUTCOME_WORDS,
  nextDay: NEXT_DAY_WORDS,
};

const DIMENSIONS: Partial<Record<Measure, Dimension>> = {
  kg: 'weight',
  'kg of a scale': 'scaleStep',
  cm: 'girth',
  months: 'months',
  minutes: 'minutes',
  g: 'grams',
  'g a day': 'grams',
  'kcal per 100 g': 'energyPer100g',
  '%': 'percent',
  degrees: 'degrees',
};

const NONE: Partial<Record<Measure, string>> = {
  'body condition score': 'not scored',
  'lameness grade': 'not looked at',
  'yes or no': 'no',
  word: 'not entered',
};

const MOST_DIGITS = 6;

/** Both sides of a change, in the practice's units and with as many digits as tell them apart. */
export function changeText(change: FieldChange, shown: Shown): ChangeText {
  const text = (value: FieldValue, digits?: number) => fieldText(change, value, shown, digits);
  const first = { was: text(change.before), is: text(change.after) };
  if (first.was !== first.is) return first;
  for (let digits = 1; digits <= MOST_DIGITS; digits++) {
    const next = { was: text(change.before, digits), is: text(change.after, digits) };
    if (next.was !== next.is) return next;
  }
  return first;
}

/** The value of a field as it reads on the form. */
export function fieldText(
  { measure, path }: Pick<FieldChange, 'measure' | 'path'>,
  value: FieldValue,
  shown: Shown,
  digits?: number,
): string {
  if (value === null || value === '') return NONE[measure] ?? 'nothing entered';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') return wordsOf(measure, path, value, shown);
  const dimension = DIMENSIONS[measure];
  if (dimension !== undefined) {
    const amount = shown.amount(dimension, value, digits);
    return measure === 'g a day' ? `${amount} a day` : amount;
  }
  if (measure.startsWith('in ')) return `${value} ${measure.slice('in '.length)}`;
  if (measure === 'body condition score') return `${value} of 9`;
  if (measure === 'lameness grade') return `${value} of 5`;
  return grouped(value);
}

function wordsOf(measure: Measure, path: string, value: string, shown: Shown): string {
  if (measure === 'day') return shown.day(value);
  if (measure === 'word') return WORDS[path]?.[value] ?? value;
  if (measure === 'order') return value.split(BETWEEN_KEYS).join(', ');
  return value;
}
