import { inRange, oneOf, weightInRange } from '../check.ts';
import { dayNumber, type IsoDay } from '../day.ts';
import type { Observation } from './line.ts';

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
 * @example weighingSd({ day: '2026-03-02', weightKg: 40 }) // => 0.401
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
 * @example
 * measured([{ day: '2026-03-02', weightKg: 40 }])[0] // => { dayNumber: 20514, sdKg: 0.401, … }
 */
export function measured(weighings: readonly Weighing[]): MeasuredWeight[] {
  const ordered = weighings.map(checked).sort((a, b) => a.dayNumber - b.dayNumber);
  return ordered.map(({ dayNumber: number, weighing }, index) => {
    const typicalKg = typicalAround(ordered, index);
    const [share, step, method] = errorParts(weighing, typicalKg);
    const shared = SHARES_OFFSET.includes(weighing.method ?? 'same scale') ? method : 0;
    const alone = share * share + step * step;
    return {
      day: weighing.day,
      dayNumber: number,
      weightKg: weighing.weightKg,
      sdKg: Math.sqrt(alone + method * method),
      method: weighing.method ?? 'same scale',
      typicalKg,
      ownSdKg: Math.sqrt(shared > 0 ? alone : alone + method * method),
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

/** Median of a weighing and its neighbours; the first and the last take the nearest two. */
function typicalAround(ordered: readonly { weighing: Weighing }[], index: number): number {
  const kg = (at: number): number => ordered[at]!.weighing.weightKg;
  if (ordered.length === 1) return kg(0);
  if (ordered.length === 2) return (kg(0) + kg(1)) / 2;
  const middle = Math.min(Math.max(index, 1), ordered.length - 2);
  const [a, b, c] = [kg(middle - 1), kg(middle), kg(middle + 1)];
  return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
}

/**
 * The weighing as an observation for a line of weight against days.
 * @example measured([{ day: '2026-03-02', weightKg: 40 }]).map(toObservation)
 *   // => [{ x: 20514, y: 40, sd: 0.401, group: null, groupSd: 0 }]
 */
export function toObservation(point: MeasuredWeight): Observation {
  return {
    x: point.dayNumber,
    y: point.weightKg,
    sd: point.ownSdKg,
    group: point.sharedSdKg > 0 ? point.method : null,
    groupSd: point.sharedSdKg,
  };
}
