import { PALPATION_REGIONS } from '../../../core/readiness/record.ts';
import type { Field } from '../history/change.ts';
import { capital, listed, noted } from '../history/fields.ts';
import type { Clearance, InjuryEntry, PalpationGrades, Questionnaire } from './parts.ts';
import { LIMB_NAMES } from './visitParts.ts';

// How what was told and found beside gait, weight and signs reads in the history of a visit.

export const cleared = listed<Clearance>(
  'the clearances',
  ({ limb, gait }) => `${gait}, ${LIMB_NAMES[limb]}`,
  (key) => `Lameness cleared at ${key}`,
  ({ grade, vet, day, scope }) => [
    ['grade', 'grade', 'lameness grade', grade],
    ['vet', 'vet', 'text', vet],
    ['day', 'day', 'day', day],
    ['scope', 'for', 'text', scope],
  ],
);

export const injured = listed<InjuryEntry>(
  'injuries and surgery',
  ({ kind, structure }) => `${kind}, ${structure}`,
  capital,
  ({ side, day, done }) => [
    ['side', 'side', 'word', side],
    ['day', 'day', 'day', day],
    ['done', 'what was done', 'text', done],
  ],
);

export function pressed(path: string, palpation: PalpationGrades): Field[] {
  return PALPATION_REGIONS.map((region) => ({
    path: `${path}.${region}`,
    label: `Pain on palpation, ${region}`,
    measure: 'in of 4',
    value: palpation[region],
  }));
}

export const questionnaireLabel = (name: string): string => `Questionnaire ${name}`;

export const totals = listed<Questionnaire>(
  'the questionnaires',
  ({ name }) => name,
  questionnaireLabel,
  ({ total, day }) => [
    ['total', 'total', 'in points', total],
    ['day', 'day', 'day', day],
  ],
);

const chosen = noted('the exercises', 'Exercise', (id) => id.replaceAll('-', ' '));

/** None chosen is not the same as not looked at. */
export const exercisesChosen = (path: string, ids: readonly string[] | null): Field[] => [
  { path, label: 'Strength exercises, gone through', measure: 'yes or no', value: ids !== null },
  ...chosen(path, ids ?? []),
];
