import type { LIMBS } from '../../electron/contract/records.ts';

// Our own words for the scores and grades, so that two people in one practice mean the same.

/** Body condition score 1 to 9. */
export const BCS_WORDS: readonly string[] = [
  'Skin and bone: ribs, spine and pelvis jut out, and muscle has gone too.',
  'Ribs, spine and pelvis seen at once; nothing but skin over them.',
  'Ribs seen and felt with almost nothing over them; waist drawn in hard.',
  'Ribs found at a touch; waist plain from above, belly line rising. Ideal, on the lean side.',
  'Ribs found at a light touch under a thin layer; waist seen from above. Ideal.',
  'Ribs found with a little pressure; waist still there, but soft.',
  'Ribs take pressing to find; pads over loins and tail root; waist almost straight.',
  'Ribs hardly found under the layer; thick pads over loins and tail root; no waist.',
  'Ribs not found; fat over chest, spine, neck and tail root; belly hangs.',
];

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
