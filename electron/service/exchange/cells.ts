import { isIsoDay } from '../../../core/day.ts';
import { LIMITS, limitSentence } from '../../contract/limits.ts';
import type { DecimalSign, TableWeightUnit } from '../../contract/exchange/weightImport.ts';
import type { Practice } from '../../contract/records.ts';
import { KG_PER_LB } from '../../../core/units.ts';

/** What a cell says, or the sentence why it cannot be read. */
export type Read<T> =
  | { readonly value: T; readonly problem: null }
  | { readonly value: null; readonly problem: string };

const read = <T>(value: T): Read<T> => ({ value, problem: null });
const refused = (problem: string): Read<never> => ({ value: null, problem });

type DayFormat = Practice['dayFormat'];

const DAY_PATTERNS: Readonly<Record<DayFormat, RegExp>> = {
  'YYYY-MM-DD': /^(?<y>\d{4})-(?<m>\d{1,2})-(?<d>\d{1,2})$/,
  'DD.MM.YYYY': /^(?<d>\d{1,2})\.(?<m>\d{1,2})\.(?<y>\d{4})$/,
  'DD/MM/YYYY': /^(?<d>\d{1,2})\/(?<m>\d{1,2})\/(?<y>\d{4})$/,
  'MM/DD/YYYY': /^(?<m>\d{1,2})\/(?<d>\d{1,2})\/(?<y>\d{4})$/,
};
/** A time of day behind the day, which is left out. */
const TIME = /[ T]\d{1,2}:\d{2}(:\d{2}(\.\d+)?)?( ?[AP]M|Z|[+-]\d{2}:?\d{2})?$/i;

/** A cell with a day, as ISO text. */
export function readDay(cell: string, format: DayFormat): Read<string> {
  if (cell === '') return refused('The day is missing.');
  const parts = DAY_PATTERNS[format].exec(cell.replace(TIME, ''))?.groups;
  if (parts === undefined) return refused(`The day must be written ${format}.`);
  const iso = `${parts['y']}-${parts['m']!.padStart(2, '0')}-${parts['d']!.padStart(2, '0')}`;
  if (isIsoDay(iso)) return read(iso);
  return refused(`The day must be a day of the calendar from 1980 to 2150, written ${format}.`);
}

const KG_PER: Readonly<Record<TableWeightUnit, number>> = { kg: 1, lb: KG_PER_LB, g: 0.001 };
const UNIT_WORDS: Readonly<Record<string, TableWeightUnit>> = {
  kg: 'kg',
  lb: 'lb',
  lbs: 'lb',
  g: 'g',
};

/** A cell with a weight, in kg. A unit written in the cell goes before that of the column. */
export function readWeight(
  cell: string,
  { unit, decimalSign }: { readonly unit: TableWeightUnit; readonly decimalSign: DecimalSign },
): Read<number> {
  if (cell === '') return refused('The weight is missing.');
  const [, digits = '', word = ''] = /^([\d.,]+)\s*([a-z]*)\.?$/i.exec(cell) ?? [];
  const number = decimalSign === '.' ? /^\d+(\.\d*)?$/ : /^\d+(,\d*)?$/;
  const written = word === '' ? unit : UNIT_WORDS[word.toLowerCase()];
  if (!number.test(digits) || written === undefined) {
    const sign = decimalSign === '.' ? 'a point' : 'a comma';
    return refused(`The weight must be a number with ${sign} as decimal sign, in ${unit}.`);
  }
  const kg = Number(digits.replace(',', '.')) * KG_PER[written];
  const { min, max } = LIMITS.weightKg;
  if (kg >= min && kg <= max) return read(roundedKg(kg));
  return refused(limitSentence(LIMITS.weightKg));
}

/** Pounds make endless decimals; a tenth of a gram is finer than any scale. */
const roundedKg = (kg: number): number => Math.round(kg * 10_000) / 10_000;
