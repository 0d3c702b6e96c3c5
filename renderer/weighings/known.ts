import type { DogFile } from '../../electron/contract/contract.ts';
import type {
  WeighingInput,
  WeighingKnown,
  WeighingRecord,
} from '../../electron/contract/weighing.ts';

type Weighed = Pick<DogFile, 'visits' | 'weighings'>;

/** Every weight of the record, of visits and between them. */
export function weightsOf({ visits, weighings }: Weighed): WeighingKnown['weights'] {
  return [
    ...weighings,
    ...visits.flatMap(({ day, weightKg }) => (weightKg === null ? [] : [{ day, weightKg }])),
  ];
}

/** The step of a scale on which nothing was weighed yet, kg: as in the visit's form. */
const FIRST_STEP_KG = 0.1;

/** How the latest weighing was done: most owners use one scale. */
export function lastScale({
  visits,
  weighings,
}: Weighed): Pick<WeighingInput, 'weighingMethod' | 'scaleStepKg'> {
  const last = [...weighings, ...visits.filter(({ weightKg }) => weightKg !== null)]
    .sort((a, b) => a.day.localeCompare(b.day))
    .at(-1);
  return {
    weighingMethod: last?.weighingMethod ?? 'same scale',
    scaleStepKg: last?.scaleStepKg ?? FIRST_STEP_KG,
  };
}

/** The weighing between visits behind a point of the chart; no day has two of one weight. */
export function weighingBehind(
  weighings: readonly WeighingRecord[],
  { day, kg }: { readonly day: string; readonly kg: number },
): WeighingRecord | null {
  return weighings.find((weighing) => weighing.day === day && weighing.weightKg === kg) ?? null;
}
