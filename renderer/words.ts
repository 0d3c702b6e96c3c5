import { grouped } from '../core/quantityText.ts';
import type { HandoutKind } from '../electron/contract/records.ts';
import type {
  Dog,
  LimbGrades,
  PlanRequest,
  Practice,
  SessionInput,
  VisitFacts,
} from '../electron/contract/records.ts';
import type { OwnFood } from '../electron/contract/food/shelf.ts';

// What the contract's words are called on screen. The types make each list complete; only types
// are imported from it, so that the schemas (and their library) stay out of the front end.

type Words<T extends string> = Readonly<Record<T, string>>;

/** Words as the options of a select or radio group. */
export const optionsOf = <T extends string>(words: Words<T>) =>
  (Object.entries(words) as [T, string][]).map(([value, label]) => ({ value, label }));

/** "1 dog", "1,204 dogs"; `many` where it is not the one with an s. */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${grouped(count)} ${count === 1 ? one : many}`;

export const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);

/** A text up to the end of its first sentence. */
export const headOf = (text: string): string => /^.*?[.!](?=\s|$)/.exec(text)?.[0] ?? text;

/** The grades of a scale as its choices; `none` is what it says where nothing was looked at. */
export const gradeOptions = (none: string, grades: readonly string[]) => [
  { value: null, label: '–', name: none },
  ...grades.map((words, grade) => ({
    value: grade,
    label: String(grade),
    name: `grade ${grade}: ${words}`,
  })),
];

export type Limb = keyof LimbGrades;
export const LIMB_WORDS: Words<Limb> = {
  leftFore: 'Left fore',
  rightFore: 'Right fore',
  leftHind: 'Left hind',
  rightHind: 'Right hind',
};

/** Lameness grade 0 to 5, in our own words, so that two people in one practice mean the same. */
export const LAMENESS_WORDS: readonly string[] = [
  'sound',
  'barely seen, comes and goes',
  'slight, seen at most strides',
  'plain at every stride, limb loaded',
  'severe, limb only touched down',
  'limb not used',
];

/** Monday first. */
export const WEEKDAY_NAMES = [
  'Monday',
  'Tuesday',
  'Wednesday',
  'Thursday',
  'Friday',
  'Saturday',
  'Sunday',
] as const;

export const KIND_WORDS: Words<VisitFacts['kind']> = {
  intake: 'Intake',
  'follow-up': 'Follow-up',
};
export const START_WORDS: Words<VisitFacts['conditioning']> = {
  conditioned: 'Conditioned adult',
  unconditioned: 'Unconditioned, senior or overweight',
  'post-injury': 'After injury, cleared',
};
export const STAGE_WORDS: Words<PlanRequest['laterStages'][number] | 'time'> = {
  time: 'Time',
  pull: 'Pull',
  hills: 'Hills',
  speed: 'Speed',
};
export const OUTCOME_WORDS: Words<SessionInput['outcome']> = {
  done: 'Done',
  shortened: 'Shortened',
  missed: 'Missed',
  held: 'Held back',
};
export const NEXT_DAY_WORDS: Words<NonNullable<SessionInput['nextDay']>> = {
  normal: 'Normal',
  'mild stiffness gone within 24 h': 'Mildly stiff, gone within 24 h',
  'stiffness over 24 h': 'Stiff for over 24 h',
  'stiffness cleared and returned': 'Stiffness went and came back',
  'stiffness over 48 h': 'Stiff for over 48 h',
};
export const STOP_SIGN_WORDS: Words<SessionInput['signs'][number]> = {
  lameness: 'Lame',
  refusal: 'Refused to run',
  collapse: 'Collapsed',
  'neurological sign': 'Stumbling, knuckling, weak',
  'breathing distress': 'Laboured breathing',
};
export const ACTIVITY_WORDS: Words<VisitFacts['activity']> = {
  low: 'Low, under 1 h a day',
  moderate: 'Moderate, 1 to 3 h a day, easy',
  high: 'High, 1 to 3 h a day, brisk or playing hard',
  working: 'Working, 3 to 6 h a day',
};
export const WALK_BASE_WORDS: Words<VisitFacts['walkBase']> = {
  passed: 'Passed',
  failed: 'Failed',
  'not tested': 'Not tested',
};
export const SURGERY_WORDS: Words<VisitFacts['surgery']> = {
  none: 'None',
  'cleared in writing': 'Cleared in writing',
  'not cleared': 'Not cleared',
};
export const GAIT_WORDS: Words<VisitFacts['lamenessClearances'][number]['gait']> = {
  walk: 'Walk',
  trot: 'Trot',
};
export const INJURY_WORDS: Words<VisitFacts['injuries'][number]['kind']> = {
  injury: 'Injury',
  surgery: 'Surgery',
};
export const SIDE_WORDS: Words<VisitFacts['injuries'][number]['side']> = {
  left: 'Left',
  right: 'Right',
  both: 'Both',
  middle: 'Middle',
};
export const RISE_WORDS: Words<NonNullable<VisitFacts['sitToStand']>> = {
  even: 'Evenly',
  'leans left': 'Leans to the left',
  'leans right': 'Leans to the right',
  cannot: 'Cannot',
};
const APPETITE_WORDS: Words<NonNullable<VisitFacts['appetite']>> = {
  normal: 'Normal',
  'less than usual': 'Less than usual',
  'more than usual': 'More than usual',
};
const STOOL_WORDS: Words<NonNullable<VisitFacts['stool']>> = {
  normal: 'Normal',
  soft: 'Soft',
  loose: 'Loose',
  hard: 'Hard',
};
const FOOD_KIND_WORDS: Words<NonNullable<VisitFacts['feeding']['foodKind']>> = {
  complete: 'Complete food',
  'home-made': 'Home-made',
  raw: 'Raw',
  mixed: 'Mixed',
};
export const OWN_FOOD_WORDS: Words<OwnFood['kind']> = { food: 'Food', treat: 'Treat' };
const YES_NO_WORDS: Words<NonNullable<VisitFacts['disease']['joints']>> = { no: 'No', yes: 'Yes' };
/** Words that may also be left without an answer. */
const askedOf = <T extends string>(words: Words<T>, none = 'Not asked') => [
  { value: null, label: none },
  ...optionsOf(words),
];
export const RISE_OPTIONS = askedOf(RISE_WORDS, 'Not looked at');
export const APPETITE_OPTIONS = askedOf(APPETITE_WORDS);
export const STOOL_OPTIONS = askedOf(STOOL_WORDS);
export const FOOD_KIND_OPTIONS = askedOf(FOOD_KIND_WORDS);
export const YES_NO_OPTIONS = askedOf(YES_NO_WORDS);

export const WEIGHING_WORDS: Words<VisitFacts['weighingMethod']> = {
  'same scale': 'Same scale',
  'other scale': 'Other scale',
  'harness on': 'Harness on',
  'wet coat': 'Wet coat',
};
/** Before a dog was ever weighed there is nothing that a scale could be the same as. */
const FIRST_WEIGHING_WORDS: typeof WEIGHING_WORDS = {
  ...WEIGHING_WORDS,
  'same scale': 'The scale for this dog from now on',
  'other scale': 'A scale used this once',
};
export const weighingWords = (first: boolean): typeof WEIGHING_WORDS =>
  first ? FIRST_WEIGHING_WORDS : WEIGHING_WORDS;
export const GOAL_WORDS: Words<VisitFacts['foodGoal']> = {
  lose: 'Lose weight',
  hold: 'Hold weight',
  gain: 'Gain weight',
};

export const SEX_WORDS: Words<Dog['sex']> = { female: 'Female', male: 'Male' };
export const NEUTER_WORDS: Words<Dog['neuter']> = {
  intact: 'Intact',
  neutered: 'Neutered',
  unknown: 'Unknown',
};
export const COAT_WORDS: Words<Dog['coat']> = {
  ordinary: 'Ordinary',
  thick: 'Thick',
  dark: 'Dark',
  'thick and dark': 'Thick and dark',
};

export const WEIGHT_UNIT_WORDS: Words<Practice['weightUnit']> = { kg: 'Kilograms', lb: 'Pounds' };
export const ENERGY_UNIT_WORDS: Words<Practice['energyUnit']> = { kcal: 'kcal', kJ: 'kJ' };
export const DISTANCE_UNIT_WORDS: Words<Practice['distanceUnit']> = {
  km: 'Kilometres',
  mi: 'Miles',
};
export const TEMPERATURE_UNIT_WORDS: Words<Practice['temperatureUnit']> = { C: '°C', F: '°F' };
export const PAPER_WORDS: Words<Practice['paper']> = { A4: 'A4', LETTER: 'Letter' };
export const DAY_FORMAT_WORDS: Words<Practice['dayFormat']> = {
  'YYYY-MM-DD': 'year-month-day',
  'DD.MM.YYYY': 'day.month.year',
  'DD/MM/YYYY': 'day/month/year',
  'MM/DD/YYYY': 'month/day/year',
};

export const LANGUAGE_WORDS: Words<Practice['language']> = {
  en: 'English',
  de: 'Deutsch',
  fr: 'Français',
  es: 'Español',
};

export const HANDOUT_WORDS: Words<HandoutKind> = {
  'running-plan': 'Running plan',
  'feeding-sheet': 'Feeding sheet',
  'bowl-labels': 'Labels for the bowl',
  'progress-report': 'Progress report',
  'heat-card': 'Heat card',
  'kit-sheet': 'Kit and technique',
  'strength-sheet': 'Strength and balance',
  'vet-letter': 'Letter to the vet',
  'assessment-record': 'Assessment record',
};
