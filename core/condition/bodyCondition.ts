/** One body condition score in our own words: what the hands feel and the eyes see. */
export interface ConditionScore {
  readonly score: number;
  readonly name: string;
  readonly description: string;
}

/** Body condition 1–9, 4–5 ideal (Laflamme 1997, WSAVA); the descriptions are our own words. */
export const BODY_CONDITION: readonly ConditionScore[] = [
  {
    score: 1,
    name: 'Starved',
    description: 'Every bone stands out from a distance; no fat, clear loss of muscle.',
  },
  {
    score: 2,
    name: 'Very thin',
    description: 'Ribs, spine and pelvis plain to see; no fat to feel, some muscle gone.',
  },
  {
    score: 3,
    name: 'Thin',
    description: 'Ribs felt at once and often seen; tops of the spine show; deep waist.',
  },
  {
    score: 4,
    name: 'Lean, ideal',
    description: 'Ribs felt under a very thin cover; waist plain from above; belly tucked up.',
  },
  {
    score: 5,
    name: 'Ideal',
    description: 'Ribs felt under a thin cover; waist behind the ribs; belly tucked up.',
  },
  {
    score: 6,
    name: 'A little heavy',
    description: 'Ribs felt under slightly thick cover; waist there but shallow.',
  },
  {
    score: 7,
    name: 'Heavy',
    description: 'Ribs felt only with pressure; fat over loins and tail base; waist barely there.',
  },
  {
    score: 8,
    name: 'Obese',
    description: 'Ribs hardly felt under thick fat; no waist; fat at loins and tail base.',
  },
  {
    score: 9,
    name: 'Very obese',
    description: 'Thick fat on chest, spine, tail base, neck and limbs; belly hangs.',
  },
];

export type MuscleCondition = 'normal' | 'mild loss' | 'moderate loss' | 'severe loss';

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
