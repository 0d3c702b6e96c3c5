import { compareLameness, type LamenessChange, LIMBS } from '../../core/index.ts';
import type { Visit } from '../../electron/contract/contract.ts';
import { LIMB_WORDS, type Limb } from '../words.ts';

export type Gait = 'walk' | 'trot';
export const GAITS = ['walk', 'trot'] as const satisfies readonly Gait[];

/** The grade of one limb at one gait, visit by visit; null where it was not looked at. */
export interface LimbCourse {
  readonly limb: Limb;
  readonly gait: Gait;
  /** One for each visit of the course. */
  readonly grades: readonly (number | null)[];
}

/** Lameness over the visits from the first to the last that had grades, oldest first. */
export interface LamenessCourse {
  /** The day of every visit in that time, also of those at which no limb was graded. */
  readonly days: readonly string[];
  /** Limb by limb, each at walk and at trot; those that were never graded are left out. */
  readonly limbs: readonly LimbCourse[];
  /** For each visit what changed since the graded one before; empty at the first. */
  readonly changes: readonly (readonly LamenessChange[])[];
}

const gradeOf = (visit: Visit, gait: Gait, limb: Limb): number | null =>
  (gait === 'walk' ? visit.lamenessWalk : visit.lamenessTrot)[limb];

const isGraded = (visit: Visit): boolean =>
  LIMBS.some((limb) => GAITS.some((gait) => gradeOf(visit, gait, limb) !== null));

const seenAt = ({ lamenessWalk, lamenessTrot }: Visit) => ({
  walk: lamenessWalk,
  trot: lamenessTrot,
});

/** Null before two visits had grades: one visit is no course. */
export function lamenessCourse(all: readonly Visit[]): LamenessCourse | null {
  const visits = all.slice(all.findIndex(isGraded), all.findLastIndex(isGraded) + 1);
  if (visits.filter(isGraded).length < 2) return null;
  const limbs = LIMBS.flatMap((limb) =>
    GAITS.map((gait) => ({ limb, gait, grades: visits.map((it) => gradeOf(it, gait, limb)) })),
  ).filter(({ grades }) => grades.some((grade) => grade !== null));
  const changes = visits.map((visit, index) => {
    const before = visits.slice(0, index).findLast(isGraded);
    if (before === undefined || !isGraded(visit)) return [];
    return compareLameness(seenAt(before), seenAt(visit));
  });
  return { days: visits.map(({ day }) => day), limbs, changes };
}

/** True with any grade above sound. */
export const everLame = ({ limbs }: LamenessCourse): boolean =>
  limbs.some(({ grades }) => grades.some((grade) => (grade ?? 0) > 0));

/** "Left hind at trot". */
export const courseName = ({ limb, gait }: Pick<LimbCourse, 'limb' | 'gait'>): string =>
  `${LIMB_WORDS[limb]} at ${gait}`;

/** "better, grade 2 to 1"; "not looked at this time, grade 2 before". */
function changeWords({ verdict, before, now }: LamenessChange): string {
  if (verdict === 'not seen before') return `not looked at the time before, grade ${now}`;
  if (verdict === 'not seen now') return `not looked at this time, grade ${before} before`;
  return verdict === 'same' ? `as before, grade ${now}` : `${verdict}, grade ${before} to ${now}`;
}

/** What is other than the time before, a phrase each: "Left hind at trot: better, grade 2 to 1". */
export const changedWords = (changes: readonly LamenessChange[]): readonly string[] =>
  changes
    .filter(({ verdict }) => verdict !== 'same')
    .map((change) => `${courseName(change)}: ${changeWords(change)}`);

/** What one limb at one gait did since the time before: "better, grade 2 to 1"; '' at the first. */
export function changeOf(course: LamenessCourse, limb: LimbCourse, index: number): string {
  const found = course.changes[index]?.find(
    (change) => change.limb === limb.limb && change.gait === limb.gait,
  );
  return found === undefined ? '' : changeWords(found);
}
