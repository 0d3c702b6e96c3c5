import { wholeInRange } from '../check.ts';
import type { Provenance } from '../figure.ts';
import { from } from '../origin.ts';
import { LIMBS, type Limb, type LimbGrades } from '../readiness/types.ts';

/** Of a grade in our own words. No canine scale is validated: never convert to another. */
export const LAMENESS_PROVENANCE: Provenance = from('D', 'S', 'lamenessScales');

/** One limb at one gait, then and now. */
export interface LamenessChange {
  readonly gait: 'walk' | 'trot';
  readonly limb: Limb;
  readonly before: number | null;
  readonly now: number | null;
  readonly verdict: 'better' | 'same' | 'worse' | 'not seen before' | 'not seen now';
}

interface Seen {
  readonly walk?: Partial<LimbGrades>;
  readonly trot?: Partial<LimbGrades>;
}

/**
 * The grades of two visits side by side, for every limb seen at either.
 * @example compareLameness({ trot: { leftHind: 2 } }, { trot: { leftHind: 1 } })
 *   // => [{ gait: 'trot', limb: 'leftHind', before: 2, now: 1, verdict: 'better' }]
 */
export function compareLameness(before: Seen, now: Seen): LamenessChange[] {
  const changes: LamenessChange[] = [];
  for (const gait of ['walk', 'trot'] as const) {
    for (const limb of LIMBS) {
      const then = graded(before[gait]?.[limb], gait, limb);
      const today = graded(now[gait]?.[limb], gait, limb);
      if (then === null && today === null) continue;
      changes.push({ gait, limb, before: then, now: today, verdict: verdictOf(then, today) });
    }
  }
  return changes;
}

function graded(grade: number | null | undefined, gait: string, limb: Limb): number | null {
  if (grade === undefined || grade === null) return null;
  return wholeInRange(`${gait}.${limb}`, grade, 'of 5', { min: 0, max: 5 });
}

function verdictOf(before: number | null, now: number | null): LamenessChange['verdict'] {
  if (before === null) return 'not seen before';
  if (now === null) return 'not seen now';
  if (before === now) return 'same';
  return now < before ? 'better' : 'worse';
}
