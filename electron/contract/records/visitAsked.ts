import { ACTIVITY_LEVELS } from '../../../core/energy/maintenance.ts';
import { START_LEVELS } from '../../../core/ramp/types.ts';
import { APPETITES, STOOLS } from '../../../core/readiness/record.ts';
import { SURGERY_STATES, WALK_BASES } from '../../../core/readiness/types.ts';
import type { DietItem } from '../food/records.ts';
import { json, part, yesOrNo, type Fields } from './fieldKinds.ts';
import type { InjuryEntry, Override } from './parts.ts';
import { CONSENT, DISEASE, FEEDING, HEAT_ILLNESS } from './visitGroups.ts';
import { foods, setAside } from './visitParts.ts';
import { exercisesChosen, injured } from './visitTold.ts';

// What is asked, decided and noted at a visit, in the parts of its form.

/** What it does, what is known of it, and the consent of its vet. */
export const HISTORY = {
  walkBase: {
    kind: 'word',
    label: 'Walk base',
    words: WALK_BASES,
    blank: 'not tested',
    unanswered: 'not tested',
    carried: true,
    since: 1,
  },
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
  /** An empty list, or no answer, is a finding only once it was asked for. */
  historyAsked: {
    kind: 'flag',
    label: 'Asked for surgery, injury, disease and medicine',
    carried: true,
    since: 4,
  },
  surgery: {
    kind: 'word',
    label: 'Surgery',
    words: SURGERY_STATES,
    blank: 'none',
    unanswered: 'none',
    carried: true,
    since: 1,
  },
  injuries: json<InjuryEntry[]>({
    label: 'Injuries and surgery',
    empty: () => [],
    read: injured,
    carried: true,
    since: 4,
  }),
  airwayDisease: { kind: 'flag', label: 'Airway disease', carried: true, since: 1 },
  disease: { kind: 'group', label: 'Known disease', of: DISEASE, carried: true, since: 4 },
  medicine: { kind: 'text', label: 'Medicine', as: 'line', carried: true, since: 4 },
  heatIllness: {
    kind: 'group',
    label: 'Earlier heat illness',
    of: HEAT_ILLNESS,
    carried: true,
    since: 4,
  },
  usedToWarmth: yesOrNo('Used to warm weather', 4),
  /** Asked while a plan runs: an illness since the last running, over since that day. */
  wellSince: {
    kind: 'day',
    label: 'Ill since the last visit, well again since',
    nullable: true,
    since: 4,
  },
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
} as const satisfies Fields;

/** What bears on the running plan. */
export const PLAN = {
  overrides: part<Override[]>({
    label: 'Rules set aside',
    empty: () => [],
    read: setAside,
    carried: true,
    since: 1,
  }),
  /** The vet's written yes to runs beyond what core allows by itself. */
  longRunClearance: {
    kind: 'flag',
    label: 'Written clearance for long runs',
    carried: true,
    since: 4,
  },
  /** Strength exercises chosen, by id; null where none were looked at. */
  exercises: json<string[] | null>({
    label: 'Strength exercises',
    nullable: true,
    empty: () => null,
    read: exercisesChosen,
    carried: true,
    since: 4,
  }),
} as const satisfies Fields;

/** What it eats, and how. */
export const FOOD = {
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
} as const satisfies Fields;

export const NOTES = {
  notes: { kind: 'text', label: 'Notes on the visit', as: 'notes', since: 1 },
} as const satisfies Fields;
