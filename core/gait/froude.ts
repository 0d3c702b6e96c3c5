import { inRange } from '../check.ts';
import { estimate, figure, type Estimate, type Figure } from '../figure.ts';
import { from } from '../origin.ts';
import type { RuleChanges } from '../rules/all.ts';
import { GAIT_RULES, gaitRuleValues } from '../rules/gait.ts';
import { provenanceOf } from '../rules/provenance.ts';
import type { LikelyGait } from './types.ts';

/** Standard acceleration of free fall, m/s² (exact by definition). */
export const GRAVITY = 9.80665;

export const SPEED_MPS = { min: 0, max: 20 } as const;
/** Height at the withers. */
export const HEIGHT_M = { min: 0.1, max: 1.2 } as const;
export const PACE_MIN_PER_KM = { min: 2, max: 20 } as const;

/**
 * Speed in m/s of a pace in min/km (2–20).
 * @example speedOfPace(5) // => 3.333
 */
export function speedOfPace(paceMinPerKm: number): number {
  return 1000 / 60 / inRange('paceMinPerKm', paceMinPerKm, 'min per km', PACE_MIN_PER_KM);
}

/**
 * Pace in min/km of a speed in m/s.
 * @example paceOfSpeed(2.5) // => 6.667
 */
export function paceOfSpeed(speedMps: number): number {
  return 1000 / 60 / inRange('speedMps', speedMps, 'm/s', { min: 0.1, max: 20 });
}

/**
 * Froude number, `v² / (g h)`, h = height at the withers: at the same number dogs of all sizes
 * move in about the same way.
 *
 * @throws RangeError for speedMps outside 0–20 m/s or heightM outside 0.1–1.2 m.
 * @example froudeNumber({ speedMps: 1, heightM: 0.5 }) // => 0.204
 * Source: dynamic similarity (M).
 */
export function froudeNumber(input: {
  readonly speedMps: number;
  readonly heightM: number;
}): number {
  inRange('speedMps', input.speedMps, 'm/s', SPEED_MPS);
  inRange('heightM', input.heightM, 'm', HEIGHT_M);
  return input.speedMps ** 2 / (GRAVITY * input.heightM);
}

/** The gait a dog of this size likely uses at a speed. */
export interface GaitAtSpeed {
  readonly froude: Figure;
  readonly gait: LikelyGait;
  readonly text: string;
}

const GAIT_TEXT: Readonly<Record<LikelyGait, string>> = {
  walk: 'likely a walk',
  trot: 'likely a trot',
  'trot or canter': 'trot or canter: in the range where dogs change over',
  canter: 'likely already a canter',
};

/**
 * The likely gait at the owner's speed. Walk to trot near Froude 0.5, trot to canter about 2–3.
 * Speed alone never identifies a gait: look at the dog.
 * @throws RangeError as `froudeNumber`.
 * @example likelyGait({ speedMps: 2, heightM: 0.5 }).gait // => 'trot'
 */
export function likelyGait(input: {
  readonly speedMps: number;
  readonly heightM: number;
  readonly rules?: RuleChanges;
}): GaitAtSpeed {
  const rules = gaitRuleValues(input.rules);
  const value = froudeNumber(input);
  const gait: LikelyGait =
    value < rules.froudeTrot
      ? 'walk'
      : value < rules.froudeCanterLow
        ? 'trot'
        : value <= rules.froudeCanterHigh
          ? 'trot or canter'
          : 'canter';
  const froude = figure(value, {
    id: 'froudeNumber',
    label: 'Froude number',
    unit: '',
    formula: 'v² / (g × h)',
    inputs: [
      { label: 'Speed', value: input.speedMps, unit: 'm/s' },
      { label: 'Height at the withers', value: input.heightM, unit: 'm' },
    ],
    ...from('C', 'M', 'froudeGaits', 'kano2016'),
    rules: ['froudeTrot', 'froudeCanterLow', 'froudeCanterHigh'],
    notes: [
      `Walk to trot near ${rules.froudeTrot}, trot to canter about ${rules.froudeCanterLow}–${rules.froudeCanterHigh} (from memory).`,
      'Speed alone never identifies a gait.',
    ],
  });
  return { froude, gait, text: GAIT_TEXT[gait] };
}

/** Speeds and paces at which a dog of this height changes its gait. */
export interface GaitChanges {
  /** m/s */
  readonly trotSpeed: Figure;
  /** m/s: low and high end of the published thresholds, mid between them. */
  readonly canterSpeed: Estimate;
  /** min/km; `low` is the faster pace. */
  readonly canterPace: Estimate;
}

/**
 * At which speed dogs of this height change to a canter or gallop: `√(Fr × g × h)` over the published range of Fr.
 * @throws RangeError for heightM outside 0.1–1.2 m.
 * @example gaitChanges({ heightM: 0.5 }).canterPace // => { mid: 4.76, low: 4.35, high: 5.32, … }
 */
export function gaitChanges(input: {
  readonly heightM: number;
  readonly rules?: RuleChanges;
}): GaitChanges {
  const rules = gaitRuleValues(input.rules);
  const heightM = inRange('heightM', input.heightM, 'm', HEIGHT_M);
  const speedAt = (froude: number): number => Math.sqrt(froude * GRAVITY * heightM);
  const low = speedAt(rules.froudeCanterLow);
  const high = speedAt(rules.froudeCanterHigh);
  const mid = speedAt((rules.froudeCanterLow + rules.froudeCanterHigh) / 2);
  const common = {
    inputs: [{ label: 'Height at the withers', value: heightM, unit: 'm' }],
    ...provenanceOf(GAIT_RULES.froudeCanterLow, rules.froudeCanterLow, ['froudeCanterHigh']),
  };
  const range = `Froude ${rules.froudeCanterLow}–${rules.froudeCanterHigh}`;
  return {
    trotSpeed: figure(speedAt(rules.froudeTrot), {
      id: 'trotSpeed',
      label: 'Walk becomes trot near',
      unit: 'm/s',
      formula: '√(Fr × g × h)',
      ...common,
      ...provenanceOf(GAIT_RULES.froudeTrot, rules.froudeTrot),
    }),
    canterSpeed: estimate(mid, low, high, {
      id: 'canterSpeed',
      label: 'Trot becomes canter between',
      unit: 'm/s',
      rangeMeaning: range,
      formula: '√(Fr × g × h)',
      ...common,
    }),
    canterPace: estimate(paceOfSpeed(mid), paceOfSpeed(high), paceOfSpeed(low), {
      id: 'canterPace',
      label: 'Pace at which dogs of this height change to a canter or gallop',
      unit: 'min/km',
      rangeMeaning: range,
      formula: '1000 / 60 / √(Fr × g × h)',
      ...common,
    }),
  };
}
