import { MUSCLE_CONDITIONS } from '../../../core/condition/bodyCondition.ts';
import { PALPATION_REGIONS, RISES } from '../../../core/readiness/record.ts';
import { FOOD_GOALS } from '../../../core/weight/foodTypes.ts';
import { WEIGHING_METHODS } from '../../../core/weight/weighing.ts';
import { json, part, type Fields } from './fieldKinds.ts';
import type {
  Clearance,
  Footfall,
  LimbGrades,
  Measurement,
  PalpationGrades,
  Questionnaire,
} from './parts.ts';
import { grades, measured, signs, timed } from './visitParts.ts';
import { cleared, pressed, totals } from './visitTold.ts';

// What is seen and measured at a visit, in the parts of its form.

const VISIT_KINDS = ['intake', 'follow-up'] as const;

const unpressed = (): PalpationGrades =>
  Object.fromEntries(PALPATION_REGIONS.map((region) => [region, null])) as PalpationGrades;

const unseen = (): LimbGrades => ({
  leftFore: null,
  rightFore: null,
  leftHind: null,
  rightHind: null,
});

/** What the dog comes for. */
export const WHY = {
  kind: { kind: 'word', label: 'Kind of visit', words: VISIT_KINDS, blank: 'intake', since: 1 },
  day: { kind: 'day', label: 'Day of the visit', since: 1 },
  referral: {
    kind: 'text',
    label: 'Reason for the referral',
    as: 'notes',
    carried: true,
    since: 4,
  },
  diagnosis: { kind: 'text', label: 'Diagnosis', as: 'notes', carried: true, since: 4 },
} as const satisfies Fields;

/** Weight and condition. */
export const WEIGHT = {
  /** Null where the dog was not weighed. */
  weightKg: {
    kind: 'number',
    label: 'Body weight',
    unit: 'kg',
    min: 0.1,
    max: 150,
    nullable: true,
    since: 1,
  },
  weighingMethod: {
    kind: 'word',
    label: 'How weighed',
    words: WEIGHING_METHODS,
    blank: 'same scale',
    since: 1,
  },
  scaleStepKg: {
    kind: 'number',
    label: 'Step of the scale',
    unit: 'kg',
    min: 0.001,
    max: 5,
    measure: 'kg of a scale',
    blank: 0.1,
    carried: true,
    since: 1,
  },
  bcs: {
    kind: 'number',
    label: 'Body condition score',
    unit: 'of 9',
    min: 1,
    max: 9,
    whole: true,
    nullable: true,
    measure: 'body condition score',
    since: 1,
  },
  muscle: {
    kind: 'word',
    label: 'Muscle condition',
    words: MUSCLE_CONDITIONS,
    nullable: true,
    since: 1,
  },
  targetWeightKg: {
    kind: 'number',
    label: 'Target weight',
    unit: 'kg',
    min: 0.1,
    max: 150,
    nullable: true,
    carried: true,
    since: 1,
  },
  foodGoal: {
    kind: 'word',
    label: 'Aim of feeding',
    words: FOOD_GOALS,
    blank: 'hold',
    carried: true,
    since: 1,
  },
} as const satisfies Fields;

/** How it moves. */
export const GAIT = {
  /** Lameness 0–5 per limb; null = not looked at. */
  lamenessWalk: part<LimbGrades>({
    label: 'Lameness at walk',
    empty: unseen,
    read: grades('walk'),
    since: 1,
  }),
  lamenessTrot: part<LimbGrades>({
    label: 'Lameness at trot',
    empty: unseen,
    read: grades('trot'),
    since: 1,
  }),
  /** The tick of earlier releases: kept as it was told, and no clearance. */
  trotLamenessAssessed: { kind: 'flag', label: 'Lameness at trot assessed by a vet', since: 2 },
  lamenessClearances: json<Clearance[]>({
    label: 'Lameness cleared by a vet',
    empty: () => [],
    read: cleared,
    carried: true,
    since: 4,
  }),
  measurements: part<Measurement[]>({
    label: 'Measurements',
    empty: () => [],
    read: measured,
    since: 1,
  }),
  footfalls: part<Footfall[]>({ label: 'Footfalls', empty: () => [], read: timed, since: 1 }),
  gaitNote: { kind: 'text', label: 'Gait note', as: 'notes', since: 1 },
} as const satisfies Fields;

/** Pain and signs. */
export const SIGNS = {
  signsAsked: { kind: 'flag', label: 'Warning signs looked and asked for', since: 4 },
  signs: part<string[]>({ label: 'Signs', empty: () => [], read: signs, since: 1 }),
  palpation: json<PalpationGrades>({
    label: 'Pain on palpation',
    empty: unpressed,
    read: pressed,
    since: 4,
  }),
  sitToStand: { kind: 'word', label: 'Sit to stand', words: RISES, nullable: true, since: 4 },
  lieToStand: { kind: 'word', label: 'Lie to stand', words: RISES, nullable: true, since: 4 },
  questionnaires: json<Questionnaire[]>({
    label: 'Owner questionnaires',
    empty: () => [],
    read: totals,
    since: 4,
  }),
} as const satisfies Fields;
