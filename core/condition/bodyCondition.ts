/** One body condition score in our own words: what the hand feels. */
export interface ConditionScore {
  readonly score: number;
  readonly name: string;
  readonly description: string;
}

/**
 * Body condition 1–9, 4–5 ideal (Laflamme 1997, WSAVA). The descriptions are our own, built around what
 * the hand feels, from the ribs over back and hips to the flank.
 */
export const BODY_CONDITION: readonly ConditionScore[] = [
  {
    score: 1,
    name: 'Starved',
    description:
      'The hand meets edges and nothing soft, at ribs, spine and hips alike; muscle is going too.',
  },
  {
    score: 2,
    name: 'Very thin',
    description:
      'Every rib and every bone of the back stays under the finger without pressing; some muscle is gone.',
  },
  {
    score: 3,
    name: 'Thin',
    description:
      'Fingers drop between the ribs; the spine runs like beads under the thumb; the flank falls in.',
  },
  {
    score: 4,
    name: 'Lean, ideal',
    description:
      'A light stroke counts the ribs; the hips are felt but rounded; behind the ribs the hand slides well inward.',
  },
  {
    score: 5,
    name: 'Ideal',
    description:
      'A light stroke finds the ribs under a thin, even layer; behind them the hand still slides inward.',
  },
  {
    score: 6,
    name: 'A little heavy',
    description:
      'The ribs ask for a little pressure; the loins feel soft; behind the ribs the hand hardly slides inward.',
  },
  {
    score: 7,
    name: 'Heavy',
    description:
      'The ribs ask for firm pressure; a pad moves under the hand at loins and tail; the sides run straight.',
  },
  {
    score: 8,
    name: 'Obese',
    description:
      'The hand loses the ribs; pads at loins, tail and chest can be taken hold of; the sides bulge.',
  },
  {
    score: 9,
    name: 'Very obese',
    description:
      'No bone reaches the hand; folds lie over back, neck and thighs; the belly swings.',
  },
];

export const MUSCLE_CONDITIONS = ['normal', 'mild loss', 'moderate loss', 'severe loss'] as const;
export type MuscleCondition = (typeof MUSCLE_CONDITIONS)[number];

/** Muscle condition, scored apart from fat (WSAVA); our own words. */
export const MUSCLE_CONDITION: readonly {
  readonly grade: MuscleCondition;
  readonly description: string;
}[] = [
  { grade: 'normal', description: 'Muscle full over spine, shoulder blades, skull and hips.' },
  { grade: 'mild loss', description: 'Slightly less muscle beside the spine.' },
  {
    grade: 'moderate loss',
    description: 'Bones of spine and hips felt sharply; hollows beside them.',
  },
  {
    grade: 'severe loss',
    description: 'Bones stand out everywhere; hardly any muscle beside the spine.',
  },
];
