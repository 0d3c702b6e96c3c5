import { ArgumentError, inRange } from '../check.ts';
import type { Provenance } from '../figure.ts';
import type { Limb } from '../readiness/types.ts';
import { symmetryIndex } from './symmetry.ts';

/** Times of one limb, s from any start, in order: each touch-down with its lift-off. */
export interface LimbTimes {
  readonly touchDowns: readonly number[];
  readonly liftOffs: readonly number[];
}

export interface Spread {
  readonly mean: number;
  /** Standard deviation over strides; 0 for one stride. */
  readonly sd: number;
  readonly count: number;
}

export type HildebrandGait = 'walk' | 'running walk or run, not classed' | 'trot' | 'pace';

export interface FootfallTiming extends Provenance {
  readonly strideSeconds: Spread;
  /** Stance / stride, %, by limb and over all. */
  readonly dutyFactorPct: Readonly<Partial<Record<Limb, Spread>>>;
  readonly meanDutyPct: number;
  /** (fore contact − same-side hind contact) / stride, %, both sides together. */
  readonly lateralPhasePct: Spread | null;
  readonly gait: HildebrandGait | null;
  readonly strides: number;
  /** Left-right symmetry of stance time, %, where both limbs were timed. */
  readonly stanceSymmetryFore: number | null;
  readonly stanceSymmetryHind: number | null;
}

const WALK_DUTY_PCT = 50;
const TROT_PHASE = { low: 43.75, high: 56.25 } as const;
const PACE_PHASE = { below: 6.25, above: 93.75 } as const;
const SECONDS = { min: 0, max: 3600 };

function spread(values: readonly number[]): Spread {
  const count = values.length;
  const mean = values.reduce((sum, value) => sum + value, 0) / count;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { mean, sd: count > 1 ? Math.sqrt(squares / (count - 1)) : 0, count };
}

interface Stride {
  readonly start: number;
  readonly seconds: number;
  readonly stance: number;
}

/** Strides of one limb: touch-down to next touch-down, with the stance between. */
function stridesOf(limb: Limb, times: LimbTimes): Stride[] {
  for (const [name, list] of Object.entries({
    touchDowns: times.touchDowns,
    liftOffs: times.liftOffs,
  })) {
    list.forEach((value, index) => {
      inRange(`${limb}.${name}[${index}]`, value, 's', SECONDS);
      if (index > 0 && value <= list[index - 1]!) {
        throw new ArgumentError(
          `${limb}.${name}`,
          's',
          SECONDS,
          `${limb}.${name} must rise, but ${value} s follows ${list[index - 1]} s`,
        );
      }
    });
  }
  return times.touchDowns.slice(0, -1).flatMap((start, index) => {
    const next = times.touchDowns[index + 1]!;
    const lift = times.liftOffs.find((value) => value > start && value < next);
    return lift === undefined ? [] : [{ start, seconds: next - start, stance: lift - start }];
  });
}

/**
 * Stride time, duty factor, lateral phase and Hildebrand's gait class from timed footfalls.
 * Duty over 50 % is a walk; otherwise a phase of 43.75–56.25 % is a trot, of 0–6.25 or
 * 93.75–100 % a pace. A class needs fore and hind limb of one side.
 *
 * @throws RangeError for times outside 0–3600 s or out of order, or when no limb has a whole stride
 * Source: Hildebrand (M, from memory).
 */
export function footfallTiming(limbs: Readonly<Partial<Record<Limb, LimbTimes>>>): FootfallTiming {
  const strides = Object.fromEntries(
    (Object.entries(limbs) as [Limb, LimbTimes][]).map(([limb, times]) => [
      limb,
      stridesOf(limb, times),
    ]),
  ) as Partial<Record<Limb, Stride[]>>;
  const all = Object.values(strides).flat();
  if (all.length === 0) {
    throw new ArgumentError(
      'limbs',
      's',
      SECONDS,
      'limbs must hold at least one whole stride: touch-down, lift-off, touch-down',
    );
  }
  const duty = (list: readonly Stride[]): number[] =>
    list.map(({ stance, seconds }) => (100 * stance) / seconds);
  const dutyFactorPct = Object.fromEntries(
    Object.entries(strides)
      .filter(([, list]) => list.length > 0)
      .map(([limb, list]) => [limb, spread(duty(list))]),
  ) as FootfallTiming['dutyFactorPct'];
  const meanDutyPct = spread(duty(all)).mean;
  const phases = [
    ...lateralPhases(strides.leftFore, strides.leftHind),
    ...lateralPhases(strides.rightFore, strides.rightHind),
  ];
  const lateralPhasePct = phases.length === 0 ? null : circularSpread(phases);
  return {
    strideSeconds: spread(all.map(({ seconds }) => seconds)),
    dutyFactorPct,
    meanDutyPct,
    lateralPhasePct,
    gait: lateralPhasePct === null ? null : classify(meanDutyPct, lateralPhasePct.mean),
    strides: all.length,
    stanceSymmetryFore: stanceSymmetry(strides.leftFore, strides.rightFore),
    stanceSymmetryHind: stanceSymmetry(strides.leftHind, strides.rightHind),
    evidence: 'C',
    mark: 'M',
    sources: ['hildebrand'],
  };
}

function lateralPhases(fore: readonly Stride[] = [], hind: readonly Stride[] = []): number[] {
  return hind.flatMap(({ start, seconds }) => {
    const contact = fore.find((stride) => stride.start >= start && stride.start < start + seconds);
    return contact === undefined ? [] : [(100 * (contact.start - start)) / seconds];
  });
}

/** Phases lie on a circle: 99 % and 1 % are neighbours. */
function circularSpread(phases: readonly number[]): Spread {
  const turn = (2 * Math.PI) / 100;
  const sine = phases.reduce((sum, phase) => sum + Math.sin(phase * turn), 0);
  const cosine = phases.reduce((sum, phase) => sum + Math.cos(phase * turn), 0);
  const mean = (Math.atan2(sine, cosine) / turn + 100) % 100;
  const offsets = phases.map((phase) => ((phase - mean + 150) % 100) - 50);
  return { mean, sd: spread(offsets).sd, count: phases.length };
}

function classify(dutyPct: number, phasePct: number): HildebrandGait {
  if (dutyPct > WALK_DUTY_PCT) return 'walk';
  if (phasePct >= TROT_PHASE.low && phasePct <= TROT_PHASE.high) return 'trot';
  if (phasePct <= PACE_PHASE.below || phasePct >= PACE_PHASE.above) return 'pace';
  return 'running walk or run, not classed';
}

function stanceSymmetry(
  left: readonly Stride[] = [],
  right: readonly Stride[] = [],
): number | null {
  if (left.length === 0 || right.length === 0) return null;
  const stance = (list: readonly Stride[]): number =>
    spread(list.map((stride) => stride.stance)).mean;
  return symmetryIndex(stance(left), stance(right));
}
