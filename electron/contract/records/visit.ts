import { MUSCLE_CONDITIONS } from '../../../core/condition/bodyCondition.ts';
import { ACTIVITY_LEVELS } from '../../../core/energy/maintenance.ts';
import { START_LEVELS } from '../../../core/ramp/types.ts';
import {
  APPETITES,
  PALPATION_REGIONS,
  RISES,
  STOOLS,
  YES_NO,
} from '../../../core/readiness/record.ts';
import { SURGERY_STATES, WALK_BASES } from '../../../core/readiness/types.ts';
import { FOOD_GOALS } from '../../../core/weight/foodTypes.ts';
import { WEIGHING_METHODS } from '../../../core/weight/weighing.ts';
import type { DietItem } from '../foodRecords.ts';
import type { Begun } from './blank.ts';
import { json, part, type Fields } from './fieldKinds.ts';
import { CONSENT, DISEASE, FEEDING, HEAT_ILLNESS } from './visitGroups.ts';
import type {
  Clearance,
  Footfall,
  InjuryEntry,
  LimbGrades,
  Measurement,
  Override,
  PalpationGrades,
  Questionnaire,
} from './parts.ts';
import { foods, grades, measured, setAside, signs, timed } from './visitParts.ts';
import { cleared, exercisesChosen, injured, pressed, totals } from './visitTold.ts';

export const VISIT_KINDS = ['intake', 'follow-up'] as const;

const unpressed = (): PalpationGrades =>
  Object.fromEntries(PALPATION_REGIONS.map((region) => [region, null])) as PalpationGrades;

const unseen = (): LimbGrades => ({
  leftFore: null,
  rightFore: null,
  leftHind: null,
  rightHind: null,
});

/** What the practitioner saw, measured and was told at a visit. */
export const VISIT = {
  dogId: { kind: 'id', label: 'The dog', fixed: true, since: 1 },
  kind: { kind: 'word', label: 'Kind of visit', words: VISIT_KINDS, blank: 'intake', since: 1 },
  day: { kind: 'day', label: 'Day of the visit', since: 1 },
  activity: {
    kind: 'word',
    label: 'Daily activity',
    words: ACTIVITY_LEVELS,
    blank: 'low',
    carried: true,
    since: 1,
  },
  conditioning: {
    kind: 'word',
    label: 'Condition for running',
    words: START_LEVELS,
    blank: 'unconditioned',
    carried: true,
    since: 1,
  },
  walkBase: {
    kind: 'word',
    label: 'Walk base',
    words: WALK_BASES,
    blank: 'not tested',
    carried: true,
    since: 1,
  },
  surgery: {
    kind: 'word',
    label: 'Surgery',
    words: SURGERY_STATES,
    blank: 'none',
    carried: true,
    since: 1,
  },
  /** An empty list, or no answer, is a finding only once it was asked for. */
  historyAsked: {
    kind: 'flag',
    label: 'Asked for surgery, injury, disease and medicine',
    carried: true,
    since: 4,
  },
  injuries: json<InjuryEntry[]>({
    label: 'Injuries and surgery',
    empty: () => [],
    read: injured,
    carried: true,
    since: 4,
  }),
  diagnosis: { kind: 'text', label: 'Diagnosis', as: 'notes', carried: true, since: 4 },
  referral: {
    kind: 'text',
    label: 'Reason for the referral',
    as: 'notes',
    carried: true,
    since: 4,
  },
  disease: { kind: 'group', label: 'Known disease', of: DISEASE, carried: true, since: 4 },
  medicine: { kind: 'text', label: 'Medicine', as: 'line', carried: true, since: 4 },
  heatIllness: {
    kind: 'group',
    label: 'Earlier heat illness',
    of: HEAT_ILLNESS,
    carried: true,
    since: 4,
  },
  usedToWarmth: {
    kind: 'word',
    label: 'Used to warm weather',
    words: YES_NO,
    nullable: true,
    since: 4,
  },
  /** Asked while a plan runs: an illness since the last running, over since that day. */
  wellSince: {
    kind: 'day',
    label: 'Ill since the last visit, well again since',
    nullable: true,
    since: 4,
  },
  /** The vet's written yes to runs beyond what core allows by itself. */
  longRunClearance: {
    kind: 'flag',
    label: 'Written clearance for long runs',
    carried: true,
    since: 4,
  },
  airwayDisease: { kind: 'flag', label: 'Airway disease', carried: true, since: 1 },
  airwayClearance: {
    kind: 'flag',
    label: 'Written clearance for short nose or airways',
    carried: true,
    since: 1,
  },
  radiographicClearance: {
    kind: 'flag',
    label: 'Growth plates closed on radiographs',
    carried: true,
    since: 1,
  },
  consent: { kind: 'group', label: 'Consent', of: CONSENT, carried: true, since: 1 },
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
  gaitNote: { kind: 'text', label: 'Gait note', as: 'notes', since: 1 },
  measurements: part<Measurement[]>({
    label: 'Measurements',
    empty: () => [],
    read: measured,
    since: 1,
  }),
  footfalls: part<Footfall[]>({ label: 'Footfalls', empty: () => [], read: timed, since: 1 }),
  signsAsked: { kind: 'flag', label: 'Warning signs looked and asked for', since: 4 },
  signs: part<string[]>({ label: 'Signs', empty: () => [], read: signs, since: 1 }),
  diet: part<DietItem[]>({
    label: 'Foods',
    empty: () => [],
    read: foods,
    carried: true,
    since: 1,
  }),
  mealsPerDay: {
    kind: 'number',
    label: 'Meals',
    unit: 'a day',
    min: 1,
    max: 6,
    whole: true,
    measure: 'count',
    blank: 2,
    carried: true,
    since: 1,
  },
  weightLossDiet: {
    kind: 'flag',
    label: 'Complete diet made for weight loss',
    carried: true,
    since: 1,
  },
  feeding: { kind: 'group', label: 'Feeding at home', of: FEEDING, carried: true, since: 4 },
  appetite: { kind: 'word', label: 'Appetite', words: APPETITES, nullable: true, since: 4 },
  thirst: { kind: 'word', label: 'Thirst', words: APPETITES, nullable: true, since: 4 },
  stool: { kind: 'word', label: 'Stool', words: STOOLS, nullable: true, since: 4 },
  /** Strength exercises chosen, by id; null where none were looked at. */
  exercises: json<string[] | null>({
    label: 'Strength exercises',
    nullable: true,
    empty: () => null,
    read: exercisesChosen,
    carried: true,
    since: 4,
  }),
  overrides: part<Override[]>({
    label: 'Rules set aside',
    empty: () => [],
    read: setAside,
    carried: true,
    since: 1,
  }),
  notes: { kind: 'text', label: 'Notes on the visit', as: 'notes', since: 1 },
} as const satisfies Fields & Begun<Fields>;
