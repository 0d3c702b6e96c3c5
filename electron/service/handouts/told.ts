import { exerciseOf } from '../../../core/index.ts';
import { createFormat, en, type LetterHistory, type ToldFacts } from '../../../templates/index.ts';
import { toldAt, toldText } from '../../contract/records/told.ts';
import type { Material } from './material.ts';

// What the letter and the record are told of the history and of the findings beside the numbers.

/** What the practitioner chose for between the runs; nothing while the vet has to see the dog. */
export const exercises = ({ latest, state }: Material) =>
  state.screening.outcome === 'vet first'
    ? []
    : (latest.exercises ?? []).map(exerciseOf).filter((exercise) => exercise !== undefined);

/** Silence is a finding only once somebody asked. */
const historyAsked = ({ state }: Material): boolean =>
  state.screening.reasons.every(({ code }) => code !== 'history-not-asked');

/** Null where an injury or surgery is told by itself, and where nobody asked. */
export function surgeryTold(material: Material): LetterHistory['surgery'] {
  const { surgery, injuries } = material.latest;
  const isNone = injuries.length === 0 && historyAsked(material);
  return surgery !== 'none' || isNone ? surgery : null;
}

export function told(material: Material): ToldFacts {
  const { context, latest } = material;
  const { day } = createFormat(context.practice, en.frame.numbers);
  const facts = (place: Parameters<typeof toldAt>[1]) =>
    toldAt(latest, place).map(({ parts, ...fact }) => ({ ...fact, text: toldText(parts, day) }));
  return {
    history: facts('history'),
    found: facts('found'),
    feeding: facts('feeding'),
    exercises: exercises(material),
    signsAsked: latest.signsAsked || latest.signs.length > 0,
    historyAsked: historyAsked(material),
  };
}
