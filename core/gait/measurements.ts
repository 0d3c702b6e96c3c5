import { inRange, oneOf } from '../check.ts';
import type { Provenance } from '../figure.ts';
import type { Limb } from '../readiness/types.ts';
import { symmetryIndex } from './symmetry.ts';

export const JOINTS = ['carpus', 'elbow', 'shoulder', 'hip', 'stifle', 'tarsus'] as const;
export type Joint = (typeof JOINTS)[number];
export type Movement = 'flexion' | 'extension';

/** Range of motion of Labradors, degrees (Jaegger 2002: fore limb S, hind limb from memory). */
export const JOINT_REFERENCE: Readonly<
  Record<Joint, { readonly flexion: number; readonly extension: number }>
> = {
  carpus: { flexion: 32, extension: 196 },
  elbow: { flexion: 36, extension: 165 },
  shoulder: { flexion: 57, extension: 165 },
  hip: { flexion: 50, extension: 162 },
  stifle: { flexion: 42, extension: 162 },
  tarsus: { flexion: 39, extension: 164 },
};
const HIND: readonly Joint[] = ['hip', 'stifle', 'tarsus'];

/** Changes up to this are within the error of repeating the measurement. */
export const ANGLE_ERROR_DEG = 6;
export const GIRTH_ERROR_CM = 1;
/** Left-right difference of the hind limbs worth a flag, % of body weight (C from Hyytiäinen, S). */
export const HIND_DIFFERENCE_FLAG_PCT = 8.7;
/** Share of the fore limbs in a standing dog, % (S). */
export const FORE_SHARE = { mean: 60.4, sd: 4.8 } as const;

export interface AngleFinding extends Provenance {
  readonly reference: number;
  readonly difference: number;
  readonly withinError: boolean;
}

/**
 * A joint angle against the published Labrador value, degrees. Differences up to 6 are within the
 * error of repeating it; another breed may differ for good.
 * @throws RangeError for an angle outside 0–360 degrees or an unknown joint
 */
export function jointAngle(joint: Joint, movement: Movement, degrees: number): AngleFinding {
  oneOf('joint', joint, JOINTS);
  oneOf('movement', movement, ['flexion', 'extension']);
  inRange('degrees', degrees, 'degrees', { min: 0, max: 360 });
  const reference = JOINT_REFERENCE[joint][movement];
  const difference = degrees - reference;
  const hind = HIND.includes(joint);
  return {
    reference,
    difference,
    withinError: Math.abs(difference) <= ANGLE_ERROR_DEG,
    evidence: 'A',
    mark: hind ? 'M' : 'S',
    sources: [hind ? 'jaegger2002Hind' : 'jaegger2002'],
  };
}

export type ChangeVerdict = 'within error' | 'more' | 'less';

/** A later value against an earlier one, judged by the error of measuring. */
export function changeSince(now: number, before: number, error: number): ChangeVerdict {
  const change = now - before;
  if (Math.abs(change) <= error + 1e-9) return 'within error';
  return change > 0 ? 'more' : 'less';
}

/** Thigh girth: under 1 cm is within error (Bascunan 2016, S). Site, stance and clip must match. */
export function girthChange(nowCm: number, beforeCm: number): ChangeVerdict {
  inRange('nowCm', nowCm, 'cm', { min: 1, max: 120 });
  inRange('beforeCm', beforeCm, 'cm', { min: 1, max: 120 });
  return Math.abs(nowCm - beforeCm) < GIRTH_ERROR_CM
    ? 'within error'
    : changeSince(nowCm, beforeCm, 0);
}

export interface StandingWeight extends Provenance {
  readonly totalKg: number;
  /** Share of body weight on each limb, %. */
  readonly sharePct: Readonly<Record<Limb, number>>;
  readonly foreSharePct: number;
  /** Left minus right hind, % of body weight. */
  readonly hindDifferencePct: number;
  readonly flagged: boolean;
  readonly symmetryFore: number;
  readonly symmetryHind: number;
  readonly note: string;
}

/**
 * Standing weight per limb, kg: shares, left-right differences, and a flag where the hind limbs
 * differ by more than 8.7 % of body weight. A normal result does not rule lameness out.
 * @throws RangeError for a limb outside 0–150 kg or a pair that bears nothing
 */
export function standingWeight(kg: Readonly<Record<Limb, number>>): StandingWeight {
  for (const [limb, value] of Object.entries(kg)) inRange(limb, value, 'kg', { min: 0, max: 150 });
  const totalKg = kg.leftFore + kg.rightFore + kg.leftHind + kg.rightHind;
  const symmetryFore = symmetryIndex(kg.leftFore, kg.rightFore);
  const symmetryHind = symmetryIndex(kg.leftHind, kg.rightHind);
  const share = (value: number): number => (100 * value) / totalKg;
  const hindDifferencePct = share(kg.leftHind - kg.rightHind);
  return {
    totalKg,
    sharePct: {
      leftFore: share(kg.leftFore),
      rightFore: share(kg.rightFore),
      leftHind: share(kg.leftHind),
      rightHind: share(kg.rightHind),
    },
    foreSharePct: share(kg.leftFore + kg.rightFore),
    hindDifferencePct,
    flagged: Math.abs(hindDifferencePct) > HIND_DIFFERENCE_FLAG_PCT,
    symmetryFore,
    symmetryHind,
    note: 'A normal result does not rule lameness out.',
    evidence: 'A',
    mark: 'C',
    sources: ['hyytiainen2012', 'standingShare'],
  };
}
