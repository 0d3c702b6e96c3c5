import { grouped } from '../../core/quantityText.ts';
import { DAY_FORMATS } from '../../electron/contract/records.ts';
import {
  TABLE_WEIGHT_UNITS,
  type ImportPreview,
  type TableLook,
  type WeightMapping,
} from '../../electron/contract/exchange/weightImport.ts';
import { firstStepKg } from '../units/dimensions.ts';

/** The dog all rows are of. */
export interface ChosenDog {
  readonly id: string;
  readonly name: string;
}

/** What is what in the table, while it is being chosen; null where nothing is chosen yet. */
export interface ImportEntry extends Omit<
  WeightMapping,
  'dog' | 'dayColumn' | 'weightColumn' | 'scaleStepKg'
> {
  dogColumn: number | null;
  ownerColumn: number | null;
  dayColumn: number | null;
  weightColumn: number | null;
  scaleStepKg: number | null;
}

/** Whose weights a table holds. */
export interface Whose {
  whose: 'named' | 'one';
  dog: ChosenDog | null;
}

/** As guessed; weights of an unknown scale count with the error of another scale (D). */
export function entryOf({ guess }: TableLook): ImportEntry {
  const { dayFormatSure: _sure, ...rest } = guess;
  const scaleStepKg = firstStepKg(guess.unit === 'lb' ? 'lb' : 'kg');
  return { ...rest, weighingMethod: 'other scale', scaleStepKg };
}

/** Null while something is still to be chosen. */
export function mappingOf(entry: ImportEntry, whose: Whose): WeightMapping | null {
  const { dogColumn, ownerColumn, dayColumn, weightColumn, scaleStepKg, ...rest } = entry;
  if (dayColumn === null || weightColumn === null || scaleStepKg === null) return null;
  const dog = dogOf(dogColumn, ownerColumn, whose);
  return dog === null ? null : { ...rest, dog, dayColumn, weightColumn, scaleStepKg };
}

function dogOf(
  column: number | null,
  ownerColumn: number | null,
  { whose, dog }: Whose,
): WeightMapping['dog'] | null {
  if (whose === 'one') return dog === null ? null : { by: 'choice', dogId: dog.id };
  return column === null ? null : { by: 'column', column, ownerColumn };
}

/** What is still to be chosen, as a sentence; empty when every row can be shown. */
export function missingSentence(entry: ImportEntry, whose: Whose): string {
  if (mappingOf(entry, whose) !== null) return '';
  if (entry.scaleStepKg === null) {
    return 'Enter the step of the scale; then every row is shown.';
  }
  return whose.whose === 'one'
    ? 'Choose the dog, and the columns of the day and the weight; then every row is shown.'
    : 'Choose the columns of the dog, the day and the weight; then every row is shown.';
}

/** What would come of the table, in short, and what there is to do before. */
export function previewSentences({ counts, slips }: ImportPreview): string {
  const known = counts.known + counts.repeated;
  const out = counts['left out'];
  return [
    `${grouped(counts.new)} new, ${grouped(known)} known, ${grouped(counts.refused)} refused.`,
    out === 0 ? '' : `Left out: ${grouped(out)}.`,
    counts.refused === 0
      ? ''
      : 'Mend the refused rows in the file, or the choices above, or leave them out; nothing is kept before.',
    slips === 0
      ? ''
      : `Weights to look at: ${grouped(slips)}. They are kept unless you leave them out.`,
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}

const same = <T extends string>(values: readonly T[]) =>
  values.map((value) => ({ value, label: value as string }));

export const WHOSE_OPTIONS = [
  { value: 'named', label: 'Of dogs the table names', hint: 'A column holds the name of the dog.' },
  { value: 'one', label: 'All rows are of one dog', hint: 'You choose the dog.' },
] as const;
export const DAY_OPTIONS = same(DAY_FORMATS);
export const UNIT_OPTIONS = same(TABLE_WEIGHT_UNITS);
export const DECIMAL_OPTIONS = [
  { value: '.', label: 'Point: 24.3' },
  { value: ',', label: 'Comma: 24,3' },
] as const;
