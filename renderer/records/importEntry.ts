import { DAY_FORMATS } from '../../electron/contract/records.ts';
import {
  TABLE_WEIGHT_UNITS,
  type TableLook,
  type WeightMapping,
} from '../../electron/contract/weightImport.ts';

/** What is what in the table, while it is being chosen; null where nothing is chosen yet. */
export interface ImportEntry extends Omit<WeightMapping, 'dog' | 'dayColumn' | 'weightColumn'> {
  dogColumn: number | null;
  ownerColumn: number | null;
  dayColumn: number | null;
  weightColumn: number | null;
}

/** As guessed; weights of an unknown scale count with the error of another scale (D). */
export function entryOf({ guess }: TableLook): ImportEntry {
  const { dayFormatSure: _sure, ...rest } = guess;
  return { ...rest, weighingMethod: 'other scale', scaleStepKg: 0.1 };
}

/** Null while a column is still to be chosen. */
export function mappingOf(entry: ImportEntry): WeightMapping | null {
  const { dogColumn, ownerColumn, dayColumn, weightColumn, ...rest } = entry;
  if (dogColumn === null || dayColumn === null || weightColumn === null) return null;
  const dog = { by: 'column', column: dogColumn, ownerColumn } as const;
  return { ...rest, dog, dayColumn, weightColumn };
}

const same = <T extends string>(values: readonly T[]) =>
  values.map((value) => ({ value, label: value as string }));

export const DAY_OPTIONS = same(DAY_FORMATS);
export const UNIT_OPTIONS = same(TABLE_WEIGHT_UNITS);
export const DECIMAL_OPTIONS = [
  { value: '.', label: 'Point: 24.3' },
  { value: ',', label: 'Comma: 24,3' },
] as const;
