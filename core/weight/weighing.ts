import { inRange, oneOf, weightInRange } from '../check.ts';
import { dayNumber, type IsoDay } from '../day.ts';
import type { Observation } from './fit.ts';

export const WEIGHING_METHODS = ['same scale', 'other scale', 'harness on', 'wet coat'] as const;
export type WeighingMethod = (typeof WEIGHING_METHODS)[number];

export interface Weighing {
  readonly day: IsoDay;
  readonly weightKg: number;
  /** Default `same scale`. */
  readonly method?: WeighingMethod;
  /** The scale's own step, kg (default 0.1). */
  readonly scaleStepKg?: number;
}

/** A weighing with its day as a number and the standard deviation of its error in kg. */
export interface MeasuredWeight {
  readonly day: IsoDay;
  readonly dayNumber: number;
  readonly weightKg: number;
  /** The whole error, an unknown offset of the method included: the bar on a chart. */
  readonly sdKg: number;
  readonly method: WeighingMethod;
  /** Median of this weighing and its neighbours in time: no slip of the pen moves it far. */
  readonly typicalKg: number;
  /** The part of the error that is this weighing's alone. */
  readonly ownSdKg: number;
  /** The part shared by all weighings of this method; 0 for the usual scale. */
  readonly sharedSdKg: number;
}

/** Error of one weighing, share of body weight (D: no published canine figure was found). */
export const WEIGHING_SD_SHARE = 0.01;
/** Further error where the weighing was not like the others, share of body weight (D). */
export const METHOD_SD_SHARE = 0.02;
export const DEFAULT_SCALE_STEP_KG = 0.1;

/**
 * Another scale and a harness put the same offset on every weighing made so; a wet coat holds
 * another amount of water each time.
 */
const SHARES_OFFSET: readonly WeighingMethod[] = ['other scale', 'harness on'];

/**
 * Standard deviation of one weighing's error, kg: 1 % of weight, the step's d / √12, and 2 % more
 * where it was weighed differently (D).
 */
export function weighingSd(weighing: Weighing): number {
  return Math.hypot(...errorParts(weighing, weighing.weightKg));
}

function errorParts(weighing: Weighing, weightKg: number): readonly [number, number, number] {
  const step = (weighing.scaleStepKg ?? DEFAULT_SCALE_STEP_KG) / Math.sqrt(12);
  const differently = (weighing.method ?? 'same scale') !== 'same scale';
  return [WEIGHING_SD_SHARE * weightKg, step, differently ? METHOD_SD_SHARE * weightKg : 0];
}

/**
 * The weighings in order of days, checked. The error is a share of the typical weight around the
 * day, not of the number read: 4.0 typed for 40 must not count as the most exact weighing of all.
 *
 * @throws RangeError for a weight outside 0.1–150 kg, a step outside 0.001–5 kg, an unknown method,
 *   or no calendar day
 */
export function measured(weighings: readonly Weighing[]): MeasuredWeight[] {
  const ordered = weighings.map(checked).sort((a, b) => a.dayNumber - b.dayNumber);
  return ordered.map(({ dayNumber: number, weighing }, index) => {
    const around = ordered.slice(Math.max(0, index - 1), index + 2);
    const neighbours = around.length === 3 ? around : aroundAnEnd(ordered, index);
    const typicalKg = median(neighbours.map((entry) => entry.weighing.weightKg));
    const [share, step, method] = errorParts(weighing, typicalKg);
    const shared = SHARES_OFFSET.includes(weighing.method ?? 'same scale') ? method : 0;
    return {
      day: weighing.day,
      dayNumber: number,
      weightKg: weighing.weightKg,
      sdKg: Math.hypot(share, step, method),
      method: weighing.method ?? 'same scale',
      typicalKg,
      ownSdKg: Math.hypot(share, step, shared > 0 ? 0 : method),
      sharedSdKg: shared,
    };
  });
}

function checked(weighing: Weighing, index: number): { dayNumber: number; weighing: Weighing } {
  weightInRange(`weighings[${index}].weightKg`, weighing.weightKg);
  if (weighing.scaleStepKg !== undefined) {
    inRange(`weighings[${index}].scaleStepKg`, weighing.scaleStepKg, 'kg', { min: 0.001, max: 5 });
  }
  if (weighing.method !== undefined) {
    oneOf(`weighings[${index}].method`, weighing.method, WEIGHING_METHODS);
  }
  return { dayNumber: dayNumber(weighing.day, `weighings[${index}].day`), weighing };
}

/** The first and the last weighing have one neighbour only: take the nearest two. */
function aroundAnEnd<T>(ordered: readonly T[], index: number): readonly T[] {
  return index === 0 ? ordered.slice(0, 3) : ordered.slice(-3);
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length / 2;
  return sorted.length % 2 === 1
    ? sorted[Math.floor(middle)]!
    : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

/** The weighing as an observation for a line of weight against days. */
export function toObservation(point: MeasuredWeight): Observation {
  return {
    x: point.dayNumber,
    y: point.weightKg,
    sd: point.ownSdKg,
    group: point.sharedSdKg > 0 ? point.method : null,
    groupSd: point.sharedSdKg,
  };
}
