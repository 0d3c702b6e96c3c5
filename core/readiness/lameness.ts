import { found, OWN, PRACTICE, type Found } from './reason.ts';
import type { Limb, LimbGrades, ScreeningInput } from './types.ts';

const LIMB_WORDS: Readonly<Record<Limb, string>> = {
  leftFore: 'left fore',
  rightFore: 'right fore',
  leftHind: 'left hind',
  rightHind: 'right hind',
};
const LIMBS = Object.keys(LIMB_WORDS) as Limb[];

type Grades = Partial<LimbGrades> | undefined;

function lameLimbs(grades: Grades): string {
  return LIMBS.filter((limb) => (grades?.[limb] ?? 0) > 0)
    .map((limb) => `${LIMB_WORDS[limb]} grade ${grades![limb]} of 5`)
    .join(', ');
}

/** Seen only when all four limbs were graded: the limb that was left out may be the lame one. */
const seen = (grades: Grades): boolean => LIMBS.every((limb) => grades?.[limb] != null);

/** True with a grade above 0 in any limb at walk or trot, assessed or not. */
export function isLame({ lameness }: ScreeningInput): boolean {
  return lameLimbs(lameness?.walk) !== '' || lameLimbs(lameness?.trot) !== '';
}

/** Lameness seen, and gaits not looked at (CP; that unseen means walking only is D). */
export function lamenessReasons(input: ScreeningInput): Found[] {
  const { walk, trot } = input.lameness ?? {};
  return [...lameAtWalk(walk), ...lameAtTrot(trot, input), ...notSeen(walk, trot)];
}

function lameAtWalk(grades: Grades): Found[] {
  const limbs = lameLimbs(grades);
  if (limbs === '') return [];
  const text = `Lame at walk: ${limbs}.`;
  const change = 'The vet finds and treats the cause, and the dog walks sound.';
  return [found({ code: 'lameness-walk', gate: 'vet first', text, change }, PRACTICE)];
}

function lameAtTrot(grades: Grades, { trotLamenessAssessed }: ScreeningInput): Found[] {
  const limbs = lameLimbs(grades);
  if (limbs === '') return [];
  if (trotLamenessAssessed === true) {
    const text = `Lame at trot, assessed by the vet: ${limbs}. Start as after an injury, and stop at any change.`;
    const change = 'The dog trots sound.';
    return [found({ code: 'lameness-trot-assessed', gate: 'note', text, change }, OWN)];
  }
  const text = `Lame at trot: ${limbs}.`;
  const change = 'The vet assesses the lameness and clears the dog for work, or it trots sound.';
  return [found({ code: 'lameness-trot', gate: 'vet first', text, change }, PRACTICE)];
}

function notSeen(walk: Grades, trot: Grades): Found[] {
  const reasons: Found[] = [];
  if (!seen(walk)) {
    const text = 'Not all four limbs have been seen at walk.';
    const change = 'Watch it walk in hand on a hard, level surface and grade every limb.';
    reasons.push(found({ code: 'walk-not-seen', gate: 'walking only', text, change }, OWN));
  }
  if (!seen(trot)) {
    const text = 'Not all four limbs have been seen at trot.';
    const change = 'Watch it trot in hand on a hard, level surface and grade every limb.';
    reasons.push(found({ code: 'trot-not-seen', gate: 'walking only', text, change }, OWN));
  }
  return reasons;
}
