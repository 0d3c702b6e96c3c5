import type { LIMBS } from '../../electron/contract/records.ts';

// Our own words for grades and levels, so that two people in one practice mean the same.

/** Lameness grade 0 to 5. */
export const LAMENESS_WORDS: readonly string[] = [
  'sound',
  'barely seen, comes and goes',
  'slight, seen at most strides',
  'plain at every stride, limb loaded',
  'severe, limb only touched down',
  'limb not used',
];

export const LIMB_WORDS: Record<(typeof LIMBS)[number], string> = {
  leftFore: 'Left fore',
  rightFore: 'Right fore',
  leftHind: 'Left hind',
  rightHind: 'Right hind',
};

export const START_WORDS = {
  conditioned: 'Conditioned adult',
  unconditioned: 'Unconditioned, senior or overweight',
  'post-injury': 'After injury, cleared',
} as const;

export const GOAL_WORDS = {
  lose: 'Lose weight',
  hold: 'Hold weight',
  gain: 'Gain weight',
} as const;

export const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);

/** The words of a contract list as options of a select or radio group. */
export const optionsOf = <T extends string>(words: readonly T[]) =>
  words.map((word) => ({ value: word, label: capital(word) }));
