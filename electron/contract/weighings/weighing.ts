import type { ValuesOf } from '../records/fieldKinds.ts';
import { later } from '../fields.ts';
import { inputOf } from '../records/input.ts';
import type { KEPT } from '../records/stored.ts';
import { WEIGHING } from '../records/weighing.ts';

export const weighingInput = later(() => inputOf(WEIGHING, {}));
export type WeighingInput = ValuesOf<typeof WEIGHING>;

export type WeighingRecord = ValuesOf<typeof KEPT.weighing>;

/** Weights nearer than this are the same reading, typed in another unit, kg (D). */
export const SAME_WEIGHT_KG = 0.0005;

/** What a weighing is held against before it is kept. */
export interface WeighingKnown {
  readonly today: string;
  readonly birthDay: string;
  /** Every weight of the record, of visits and between them. */
  readonly weights: readonly { readonly day: string; readonly weightKg: number }[];
}

/** Why a weighing cannot be kept: the field and the sentence beside it; null when it can. */
export interface WeighingProblem {
  readonly field: 'day' | 'weightKg';
  readonly code: 'future' | 'before birth' | 'duplicate';
  readonly message: string;
}

/** The same rules for the form, the service and the import of a table. */
export function weighingProblem(
  weighing: { readonly day: string; readonly weightKg: number },
  { today, birthDay, weights }: WeighingKnown,
): WeighingProblem | null {
  if (weighing.day > today) {
    return {
      field: 'day',
      code: 'future',
      message: 'Day of the weighing must not lie in the future.',
    };
  }
  if (weighing.day < birthDay) {
    return {
      field: 'day',
      code: 'before birth',
      message: `Day of the weighing must not lie before the dog’s day of birth (${birthDay}).`,
    };
  }
  const known = weights.some(
    ({ day: knownDay, weightKg }) =>
      knownDay === weighing.day && Math.abs(weightKg - weighing.weightKg) < SAME_WEIGHT_KG,
  );
  if (!known) return null;
  return {
    field: 'weightKg',
    code: 'duplicate',
    message: 'This weight is in the record of that day already.',
  };
}
