import { PALPATION_REGIONS } from '../../../core/readiness/record.ts';
import type { Field } from '../history/change.ts';
import { entryFields, keyed, noted, orderOf } from '../history/fields.ts';
import type { Clearance, InjuryEntry, PalpationGrades, Questionnaire } from './parts.ts';
import { LIMB_NAMES } from './visitParts.ts';

// How what was told and found beside gait, weight and signs reads in the history of a visit.

export function cleared(path: string, clearances: readonly Clearance[]): Field[] {
  const all = keyed(clearances, ({ limb, gait }) => `${gait}, ${LIMB_NAMES[limb]}`);
  return [
    ...all.flatMap(({ entry, key }) =>
      entryFields(`${path}.${key}`, `Lameness cleared at ${key}`, [
        ['grade', 'grade', 'lameness grade', entry.grade],
        ['vet', 'vet', 'text', entry.vet],
        ['day', 'day', 'day', entry.day],
        ['scope', 'for', 'text', entry.scope],
      ]),
    ),
    orderOf(path, 'the clearances', all),
  ];
}

export function injured(path: string, injuries: readonly InjuryEntry[]): Field[] {
  const all = keyed(injuries, ({ kind, structure }) => `${kind}, ${structure}`);
  return [
    ...all.flatMap(({ entry, key }) =>
      entryFields(`${path}.${key}`, key.charAt(0).toUpperCase() + key.slice(1), [
        ['side', 'side', 'word', entry.side],
        ['day', 'day', 'day', entry.day],
        ['done', 'what was done', 'text', entry.done],
      ]),
    ),
    orderOf(path, 'injuries and surgery', all),
  ];
}

export function pressed(path: string, palpation: PalpationGrades): Field[] {
  return PALPATION_REGIONS.map((region) => ({
    path: `${path}.${region}`,
    label: `Pain on palpation, ${region}`,
    measure: 'in of 4',
    value: palpation[region],
  }));
}

export const questionnaireLabel = (name: string): string => `Questionnaire ${name}`;

export function totals(path: string, questionnaires: readonly Questionnaire[]): Field[] {
  const all = keyed(questionnaires, ({ name }) => name);
  return [
    ...all.flatMap(({ entry, key }) =>
      entryFields(`${path}.${key}`, questionnaireLabel(key), [
        ['total', 'total', 'in points', entry.total],
        ['day', 'day', 'day', entry.day],
      ]),
    ),
    orderOf(path, 'the questionnaires', all),
  ];
}

const chosen = noted('the exercises', 'Exercise', (id) => id.replaceAll('-', ' '));

/** None chosen is not the same as not looked at. */
export const exercisesChosen = (path: string, ids: readonly string[] | null): Field[] => [
  { path, label: 'Strength exercises, gone through', measure: 'yes or no', value: ids !== null },
  ...chosen(path, ids ?? []),
];
