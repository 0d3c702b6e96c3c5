import type { Reason } from '../figure.ts';
import { from } from '../origin.ts';
import {
  EXERCISES,
  type Contraindication,
  type Exercise,
  type ExerciseId,
  type Purpose,
} from './catalogue.ts';

/** How far the dog is: none before the vet has seen it, then as far as it may walk or runs. */
export type StrengthStage = 'vet first' | 'walking' | 'ready' | 'running';

export interface StrengthInput {
  readonly stage: StrengthStage;
  /** What rules exercises out. */
  readonly against: readonly Contraindication[];
  /** Purposes that the findings ask for, the one that counts most first. */
  readonly needs: readonly Purpose[];
}

export interface StrengthProposal {
  readonly exercises: readonly ExerciseId[];
  readonly reasons: readonly Reason[];
}

/** As many as an owner does in a quarter of an hour (D); the trade's range is 3 to 5. */
const PROPOSED = 4;
const LEVEL: Readonly<Record<StrengthStage, number>> = {
  'vet first': 0,
  walking: 1,
  ready: 2,
  running: 3,
};
/** What every runner needs, after what the findings ask for. */
const EVERY_RUNNER: readonly Purpose[] = ['hind limbs', 'trunk', 'balance', 'mobility'];

const reason = (code: string, text: string, params: Reason['params'] = {}): Reason => ({
  code,
  text,
  params,
  ...from('D', 'D', 'ownDecision', 'rehabilitation2018'),
});

/**
 * True where nothing speaks against an exercise for this dog.
 * @example allowedExercise(EXERCISES[0], { stage: 'walking', against: [], needs: [] }) // => false
 */
export function allowedExercise(exercise: Exercise, input: StrengthInput): boolean {
  const against = exercise.notFor.some((finding) => input.against.includes(finding));
  return !against && exercise.level <= LEVEL[input.stage];
}

/**
 * Three to five exercises for this dog, one for each purpose that counts before a second for any;
 * none before the vet has seen the dog. Only a proposal: the practitioner chooses.
 * @example
 * proposeStrength({ stage: 'walking', against: [], needs: ['balance'] }).exercises[0]
 *   // => 'paw-lifts'
 * proposeStrength({ stage: 'vet first', against: [], needs: [] }).exercises // => []
 * Source: common practice in form, the choice our own (D).
 */
export function proposeStrength(input: StrengthInput): StrengthProposal {
  if (input.stage === 'vet first') {
    const text = 'No exercises before the vet has seen the dog.';
    return { exercises: [], reasons: [reason('strength-vet-first', text)] };
  }
  const allowed = EXERCISES.filter((exercise) => allowedExercise(exercise, input));
  const chosen: (typeof allowed)[number][] = [];
  const purposes = [...new Set([...input.needs, ...EVERY_RUNNER])];
  for (const purpose of [...purposes, ...purposes]) {
    const next = allowed.find(
      (exercise) =>
        !chosen.includes(exercise) && (exercise.purposes as readonly Purpose[]).includes(purpose),
    );
    if (next !== undefined && chosen.length < PROPOSED) chosen.push(next);
  }
  const needs =
    input.needs.length === 0
      ? []
      : [
          reason('strength-needs', `The findings ask for: ${input.needs.join(', ')}.`, {
            needs: input.needs.join(', '),
          }),
        ];
  const against =
    input.against.length === 0
      ? []
      : [
          reason('strength-against', `Left out because of: ${input.against.join(', ')}.`, {
            against: input.against.join(', '),
          }),
        ];
  return { exercises: chosen.map(({ id }) => id), reasons: [...needs, ...against] };
}
