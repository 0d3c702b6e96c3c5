// The exercises between the runs. The names are the trade's, the wording is ours. Doses are our own
// cautious choice (D) inside what a guideline says of the week: 3 to 5 days, not two in a row.

/** What an exercise is for. */
export const PURPOSES = ['hind limbs', 'fore limbs', 'trunk', 'balance', 'mobility'] as const;
export type Purpose = (typeof PURPOSES)[number];

/** For which dogs an exercise is out. */
export const CONTRAINDICATIONS = [
  'spine',
  'cruciate before clearance',
  'open growth plates',
] as const;
export type Contraindication = (typeof CONTRAINDICATIONS)[number];

export interface Exercise {
  readonly id: string;
  readonly name: string;
  readonly purposes: readonly Purpose[];
  /** 1 for every dog that may walk, 2 for one that may begin to run, 3 for one that runs. */
  readonly level: 1 | 2 | 3;
  readonly sets: number;
  /** In each set; of what, `unit` says. */
  readonly repeats: number;
  readonly unit: 'times' | 'steps' | 'seconds' | 'minutes';
  readonly daysPerWeek: number;
  /** After two clean weeks. */
  readonly harder: string;
  readonly stop: ExerciseStop;
  readonly notFor: readonly Contraindication[];
}

/** When to stop, beside what stops every exercise: lame, in pain, unwilling. */
export const EXERCISE_STOPS = {
  leans: 'Stop when the dog leans, sits crooked or stiffens.',
  trembles: 'Stop when a limb trembles or the dog steps off.',
  stride: 'Stop when a step is short, a paw drags or the dog stumbles.',
} as const;
export type ExerciseStop = keyof typeof EXERCISE_STOPS;

/** Every exercise begins with two sets, on days with one between them at least. */
const DOSE = { sets: 2, daysPerWeek: 3 } as const;

export const EXERCISES = [
  {
    id: 'sit-to-stand',
    name: 'Sit to stand',
    purposes: ['hind limbs'],
    level: 2,
    repeats: 5,
    unit: 'times',
    ...DOSE,
    harder: 'A third set; then with the fore paws on a low step.',
    stop: 'leans',
    notFor: ['cruciate before clearance'],
  },
  {
    id: 'down-to-stand',
    name: 'Down to stand',
    purposes: ['hind limbs', 'fore limbs'],
    level: 2,
    repeats: 4,
    unit: 'times',
    ...DOSE,
    harder: 'A third set; then from a soft mat.',
    stop: 'leans',
    notFor: ['spine', 'cruciate before clearance'],
  },
  {
    id: 'backing-up',
    name: 'Backing up',
    purposes: ['hind limbs', 'trunk'],
    level: 2,
    repeats: 5,
    unit: 'steps',
    ...DOSE,
    harder: 'Two steps more; then up a gentle slope.',
    stop: 'stride',
    notFor: ['spine', 'cruciate before clearance'],
  },
  {
    id: 'figures-of-eight',
    name: 'Figures of eight',
    purposes: ['trunk', 'mobility'],
    level: 1,
    repeats: 3,
    unit: 'times',
    ...DOSE,
    harder: 'A third set; then round a tighter pair of cones.',
    stop: 'stride',
    notFor: ['spine', 'cruciate before clearance'],
  },
  {
    id: 'circles',
    name: 'Circles both ways',
    purposes: ['trunk', 'mobility'],
    level: 1,
    repeats: 3,
    unit: 'times',
    ...DOSE,
    harder: 'A third set; then a circle one step smaller.',
    stop: 'stride',
    notFor: [],
  },
  {
    id: 'ground-poles',
    name: 'Poles on the ground, walked slowly',
    purposes: ['hind limbs', 'fore limbs', 'mobility'],
    level: 1,
    repeats: 3,
    unit: 'times',
    ...DOSE,
    harder: 'A third set; then two poles more.',
    stop: 'stride',
    notFor: [],
  },
  {
    id: 'slope-walking',
    name: 'Slopes, walked',
    purposes: ['hind limbs'],
    level: 2,
    repeats: 2,
    unit: 'minutes',
    ...DOSE,
    harder: 'A minute more in each set; then a steeper slope.',
    stop: 'stride',
    notFor: ['spine', 'cruciate before clearance', 'open growth plates'],
  },
  {
    id: 'cushion-weight-shifts',
    name: 'Weight shifts, standing on a cushion',
    purposes: ['balance', 'trunk'],
    level: 3,
    repeats: 20,
    unit: 'seconds',
    ...DOSE,
    harder: 'Ten seconds more; then a softer cushion.',
    stop: 'trembles',
    notFor: ['spine', 'cruciate before clearance', 'open growth plates'],
  },
  {
    id: 'paw-lifts',
    name: 'Paw lifts, one at a time',
    purposes: ['balance', 'fore limbs'],
    level: 1,
    repeats: 5,
    unit: 'seconds',
    ...DOSE,
    harder: 'A third set; then three seconds longer.',
    stop: 'trembles',
    notFor: [],
  },
  {
    id: 'three-leg-stand',
    name: 'Three-leg stand',
    purposes: ['balance', 'hind limbs'],
    level: 3,
    repeats: 5,
    unit: 'seconds',
    ...DOSE,
    harder: 'A third set; then three seconds longer.',
    stop: 'trembles',
    notFor: ['spine', 'cruciate before clearance', 'open growth plates'],
  },
  {
    id: 'side-steps',
    name: 'Side steps',
    purposes: ['hind limbs', 'fore limbs', 'balance'],
    level: 2,
    repeats: 5,
    unit: 'steps',
    ...DOSE,
    harder: 'Two steps more; then over a pole on the ground.',
    stop: 'stride',
    notFor: ['spine', 'cruciate before clearance'],
  },
  {
    id: 'play-bow',
    name: 'Play bow',
    purposes: ['mobility', 'trunk'],
    level: 2,
    repeats: 3,
    unit: 'times',
    ...DOSE,
    harder: 'A third set; then held for three seconds.',
    stop: 'leans',
    notFor: ['spine', 'cruciate before clearance', 'open growth plates'],
  },
] as const satisfies readonly Exercise[];

export type ExerciseId = (typeof EXERCISES)[number]['id'];

/**
 * An exercise by its id; undefined for one that this version does not know.
 * @example
 * exerciseOf('play-bow')?.name // => 'Play bow'
 * exerciseOf('handstand') // => undefined
 */
export const exerciseOf = (id: string): (Exercise & { readonly id: ExerciseId }) | undefined =>
  EXERCISES.find((exercise) => exercise.id === id);
