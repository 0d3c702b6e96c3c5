import type { Figure, Reason } from '../figure.ts';
import type { Limb } from '../readiness/types.ts';

export const JOINTS = ['carpus', 'elbow', 'shoulder', 'hip', 'stifle', 'tarsus'] as const;
export type Joint = (typeof JOINTS)[number];
export const MOVEMENTS = ['flexion', 'extension'] as const;
export type Movement = (typeof MOVEMENTS)[number];

/** One measurement on a limb, as the record keeps it. */
export type GaitMeasurement =
  | {
      readonly kind: 'joint angle';
      readonly limb: Limb;
      readonly joint: Joint;
      readonly movement: Movement;
      /** Degrees. */
      readonly value: number;
      readonly note?: string;
    }
  | {
      readonly kind: 'thigh girth';
      readonly limb: Limb;
      /** cm */
      readonly value: number;
      /** Site, stance and clip: a change is only judged against a girth taken the same way. */
      readonly note?: string;
    }
  | {
      readonly kind: 'standing weight';
      readonly limb: Limb;
      /** kg under this limb. */
      readonly value: number;
      readonly note?: string;
    };

/** "Within error" is a result: the difference is smaller than the measurement can show. */
export type ChangeVerdict = 'first measurement' | 'within error' | 'more' | 'less';

/** A measurement with its reference and its change since last time. */
export interface JudgedMeasurement {
  readonly measurement: GaitMeasurement;
  /** Value with unit, published reference (where there is one) and what to know. */
  readonly figure: Figure;
  /** Published mean of sound dogs, where there is one. */
  readonly reference: number | null;
  /** Value minus reference. */
  readonly fromReference: number | null;
  /** Value minus the last one; null for a first measurement. */
  readonly change: number | null;
  /** Changes up to this are within error. */
  readonly error: number;
  readonly verdict: ChangeVerdict;
}

/** Left against right of the same measurement. */
export interface SideComparison {
  readonly label: string;
  readonly left: number;
  readonly right: number;
  readonly unit: string;
  /** 200 (left − right) / (left + right), %. */
  readonly symmetryIndex: number;
  /** left − right. */
  readonly difference: number;
  /** Differences up to this are within the error of the measurement, in `unit`. */
  readonly error: number;
  readonly withinError: boolean;
}

/** Share of the standing weight per limb and end of the body. */
export interface StandingShares {
  /** % of the sum of the four. */
  readonly shares: Readonly<Record<Limb, number>>;
  readonly foreSharePercent: Figure;
  readonly symmetryFore: number;
  readonly symmetryHind: number;
  /** |left hind − right hind|, % of body weight. */
  readonly hindDifferencePercent: Figure;
  readonly reasons: readonly Reason[];
}

/** Times of touch-down and lift-off of one limb, seconds from any start. */
export interface FootfallTimes {
  readonly limb: Limb;
  readonly touchDowns: readonly number[];
  readonly liftOffs: readonly number[];
}

/** A mean over strides with its spread. */
export interface Spread {
  readonly mean: number;
  /** Sample standard deviation; null for a single stride. */
  readonly sd: number | null;
  readonly count: number;
}

export interface LimbTiming {
  readonly limb: Limb;
  /** Seconds from touch-down to touch-down. */
  readonly strideS: Spread | null;
  /** Seconds from touch-down to lift-off. */
  readonly stanceS: Spread | null;
  /** Stance / stride, %. */
  readonly dutyPercent: Spread | null;
}

export type GaitClass =
  | 'pace'
  | 'lateral sequence, lateral couplets'
  | 'lateral sequence, single foot'
  | 'lateral sequence, diagonal couplets'
  | 'trot'
  | 'diagonal sequence, diagonal couplets'
  | 'diagonal sequence, single foot'
  | 'diagonal sequence, lateral couplets'
  | 'asymmetrical (canter or gallop)';

export interface FootfallTiming {
  readonly limbs: readonly LimbTiming[];
  /** (fore contact − same-side hind contact) / stride, %, per side and over both. */
  readonly lateralPhase: {
    readonly left: Spread | null;
    readonly right: Spread | null;
    readonly both: Spread | null;
  };
  /** Right contact after left contact of the same pair, % of the stride; 50 = evenly spaced. */
  readonly pairPhase: { readonly fore: Spread | null; readonly hind: Spread | null };
  /** Symmetry index of stance times left against right, %. */
  readonly stanceSymmetry: { readonly fore: number | null; readonly hind: number | null };
  readonly dutyPercent: Spread | null;
  readonly strideS: Spread | null;
  /** "walking" over 50 % duty, else "running"; null where it cannot be told. */
  readonly footing: 'walking' | 'running' | null;
  readonly gait: GaitClass | null;
  readonly strides: number;
  readonly reasons: readonly Reason[];
}

export type LikelyGait = 'walk' | 'trot' | 'trot or canter' | 'canter';
