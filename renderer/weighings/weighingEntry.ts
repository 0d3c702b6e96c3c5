import type { DogFile } from '../../electron/contract/contract.ts';
import { marked } from '../../core/quantityText.ts';
import { LIMITS, limitSentence } from '../../electron/contract/limits.ts';
import {
  weighingProblem,
  type WeighingInput,
  type WeighingRecord,
} from '../../electron/contract/weighings/weighing.ts';
import type { Form } from '../composables/useForm.ts';
import { weightsOf } from './known.ts';

/** A weighing while it is typed; null where nothing readable stands yet. */
export type WeighingEntry = Omit<WeighingInput, 'weightKg' | 'scaleStepKg'> & {
  weightKg: number | null;
  scaleStepKg: number | null;
};

export interface WeighingForm {
  weighing: WeighingEntry;
}

type Checked = Pick<Form<WeighingForm>, 'values' | 'problemAt' | 'refuse' | 'attempt'>;

interface Around {
  readonly file: DogFile;
  readonly today: string;
  /** The weighing that is amended, which is no double of itself; null for a new one. */
  readonly amended: WeighingRecord | null;
}

/**
 * Puts the sentences of the service beside the fields before it is asked.
 * @returns the weighing when nothing stands in the way
 */
export function checkedWeighing(
  form: Checked,
  { file, today, amended }: Around,
): WeighingInput | null {
  const { weightKg, scaleStepKg, ...rest } = form.values.weighing;
  need(form, 'weightKg', weightKg);
  need(form, 'scaleStepKg', scaleStepKg);
  if (weightKg === null || scaleStepKg === null) {
    form.attempt();
    return null;
  }
  const weighing = { ...rest, weightKg, scaleStepKg };
  const weighings = file.weighings.filter(({ id }) => id !== amended?.id);
  const problem = weighingProblem(weighing, {
    today,
    birthDay: file.dog.birthDay,
    weights: weightsOf({ visits: file.visits, weighings }),
  });
  if (problem !== null) form.refuse(`weighing.${problem.field}`, problem.message);
  return form.attempt() ? weighing : null;
}

function need(form: Checked, name: 'weightKg' | 'scaleStepKg', value: number | null) {
  const path = `weighing.${name}`;
  if (value === null && form.problemAt(path) === undefined) {
    form.refuse(path, limitSentence(LIMITS[name], marked));
  }
}
