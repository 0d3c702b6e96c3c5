import { OWN, PRACTICE } from '../origin.ts';
import type { IsoDay } from '../day.ts';
import { found, type Found } from './reason.ts';
import type { LamenessClearance } from './record.ts';
import { LIMBS, type Limb, type LimbGrades, type ScreeningInput } from './types.ts';

const LIMB_WORDS: Readonly<Record<Limb, string>> = {
  leftFore: 'left fore',
  rightFore: 'right fore',
  leftHind: 'left hind',
  rightHind: 'right hind',
};

type Grades = Partial<LimbGrades> | undefined;

function lameLimbs(grades: Grades): string {
  return LIMBS.filter((limb) => (grades?.[limb] ?? 0) > 0)
    .map((limb) => `${LIMB_WORDS[limb]} grade ${grades![limb]} of 5`)
    .join(', ');
}

/** Seen only when all four limbs were graded: the limb that was left out may be the lame one. */
const seen = (grades: Grades): boolean => LIMBS.every((limb) => grades?.[limb] != null);

/** The highest grade at trot a vet's clearance can carry (D); above it the vet comes first. */
export const MOST_CLEARED_AT_TROT = 1;

const worst = (grades: Grades): number => Math.max(0, ...LIMBS.map((limb) => grades?.[limb] ?? 0));

/** Cleared by a vet, but above what running starts with: it closes the start, not a plan in force. */
const START_ONLY: ReadonlySet<string> = new Set(['lameness-walk-cleared', 'lameness-trot-cleared']);

/** True for the code of a lameness that keeps a dog from starting and does not stop a plan. */
export const closesOnlyTheStart = (code: string): boolean => START_ONLY.has(code);

/**
 * True for a lameness that no written reason sets aside (D): any at walk, and at trot above grade
 * `MOST_CLEARED_AT_TROT`. Only the recorded clearance of a vet makes them milder.
 * @example standsWhateverIsWritten({ code: 'lameness-trot', params: { grade: 2 } }) // => true
 */
export function standsWhateverIsWritten({ code, params }: Pick<Found, 'code' | 'params'>): boolean {
  if (code === 'lameness-walk' || START_ONLY.has(code)) return true;
  return code === 'lameness-trot' && Number(params.grade) > MOST_CLEARED_AT_TROT;
}

/**
 * The grades no clearance covers, 0 for those it does: a named vet cleared this limb in this gait, on
 * the day or before it, at the same grade or a higher one. Without a day nothing is covered.
 */
export function unclearedGrades(
  grades: Partial<LimbGrades>,
  gait: LamenessClearance['gait'],
  clearances: readonly LamenessClearance[],
  day: IsoDay | undefined,
): Partial<LimbGrades> {
  const holds = (limb: Limb, grade: number): boolean =>
    clearances.some(
      (cleared) =>
        cleared.gait === gait &&
        cleared.limb === limb &&
        cleared.grade >= grade &&
        cleared.vet.trim() !== '' &&
        day !== undefined &&
        cleared.day <= day,
    );
  return Object.fromEntries(
    (Object.entries(grades) as [Limb, number | null][]).map(([limb, grade]) => [
      limb,
      grade !== null && holds(limb, grade) ? 0 : grade,
    ]),
  );
}

/** True with a grade above 0 in any limb at trot, cleared or not; lame at walk no dog starts. */
export const isLame = ({ lameness }: ScreeningInput): boolean => worst(lameness?.trot) > 0;

/** Lameness seen, and gaits not looked at (CP; that unseen means walking only is D). */
export function lamenessReasons(input: ScreeningInput): Found[] {
  const { walk, trot } = input.lameness ?? {};
  return [
    ...lameAtWalk(walk, isCleared(walk, 'walk', input)),
    ...lameAtTrot(trot, isCleared(trot, 'trot', input)),
    ...notSeen(walk, trot),
  ];
}

function isCleared(
  grades: Grades,
  gait: LamenessClearance['gait'],
  { lamenessClearances = [], day }: ScreeningInput,
): boolean {
  return worst(unclearedGrades(grades ?? {}, gait, lamenessClearances, day)) === 0;
}

function lameAtWalk(grades: Grades, cleared: boolean): Found[] {
  const limbs = lameLimbs(grades);
  if (limbs === '') return [];
  const params = { grade: worst(grades) };
  if (cleared) {
    const text = `Lame at walk, cleared by the vet: ${limbs}. Running starts sound at walk.`;
    const change = 'The dog walks sound.';
    const code = 'lameness-walk-cleared';
    return [found({ code, gate: 'walking only', text, change, params }, OWN)];
  }
  const text = `Lame at walk: ${limbs}.`;
  const change = 'The vet finds and treats the cause, and the dog walks sound.';
  return [found({ code: 'lameness-walk', gate: 'vet first', text, change, params }, PRACTICE)];
}

function lameAtTrot(grades: Grades, cleared: boolean): Found[] {
  const limbs = lameLimbs(grades);
  if (limbs === '') return [];
  const grade = worst(grades);
  const params = { grade };
  const isHigh = grade > MOST_CLEARED_AT_TROT;
  const most = `Running starts at grade ${MOST_CLEARED_AT_TROT} or less on every limb.`;
  if (cleared && isHigh) {
    const text = `Lame at trot, cleared by the vet: ${limbs}. ${most}`;
    const change = `The dog trots at grade ${MOST_CLEARED_AT_TROT} or less.`;
    const code = 'lameness-trot-cleared';
    return [found({ code, gate: 'walking only', text, change, params }, OWN)];
  }
  if (cleared) {
    const text = `Lame at trot, cleared by the vet: ${limbs}. Start as after an injury, and stop at any change.`;
    const change = 'The dog trots sound.';
    return [found({ code: 'lameness-trot-assessed', gate: 'note', text, change, params }, OWN)];
  }
  const text = `Lame at trot: ${limbs}.${isHigh ? ` ${most}` : ''}`;
  const change = isHigh
    ? `The vet treats the cause, and the dog trots at grade ${MOST_CLEARED_AT_TROT} or less, cleared by the vet.`
    : 'The vet assesses the lameness and clears the dog for work, by limb and grade, or it trots sound.';
  return [found({ code: 'lameness-trot', gate: 'vet first', text, change, params }, PRACTICE)];
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
