import type { DogFile } from '../../electron/contract/contract.ts';
import type { Practice } from '../../electron/contract/records.ts';
import type {
  WeighingInput,
  WeighingKnown,
  WeighingRecord,
} from '../../electron/contract/weighings/weighing.ts';
import { firstStepKg } from '../units/dimensions.ts';

type Weighed = Pick<DogFile, 'visits' | 'weighings'>;

/** Every weight of the record, of visits and between them. */
export function weightsOf({ visits, weighings }: Weighed): WeighingKnown['weights'] {
  return [
    ...weighings,
    ...visits.flatMap(({ day, weightKg }) => (weightKg === null ? [] : [{ day, weightKg }])),
  ];
}

/** How the latest weighing was done: most owners use one scale. */
export function lastScale(
  { visits, weighings }: Weighed,
  weightUnit: Practice['weightUnit'],
): Pick<WeighingInput, 'weighingMethod' | 'scaleStepKg'> {
  const last = [...weighings, ...visits.filter(({ weightKg }) => weightKg !== null)]
    .sort((a, b) => a.day.localeCompare(b.day))
    .at(-1);
  return {
    weighingMethod: last?.weighingMethod ?? 'same scale',
    scaleStepKg: last?.scaleStepKg ?? firstStepKg(weightUnit),
  };
}

/** The weighing between visits behind a point of the chart; no day has two of one weight. */
export function weighingBehind(
  weighings: readonly WeighingRecord[],
  { day, kg }: { readonly day: string; readonly kg: number },
): WeighingRecord | null {
  return weighings.find((weighing) => weighing.day === day && weighing.weightKg === kg) ?? null;
}
