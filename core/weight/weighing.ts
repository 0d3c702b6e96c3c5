import { inRange, weightInRange } from '../check.ts';
import { dayNumber, type IsoDay } from '../day.ts';

export type WeighingMethod = 'same scale' | 'other scale' | 'harness on' | 'wet coat';

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
  readonly sdKg: number;
  readonly method: WeighingMethod;
}

/** Error of one weighing, share of body weight (D: no published canine figure was found). */
export const WEIGHING_SD_SHARE = 0.01;
/** Further error where the weighing was not like the others, share of body weight (D). */
const METHOD_SD_SHARE: Readonly<Record<WeighingMethod, number>> = {
  'same scale': 0,
  'other scale': 0.02,
  'harness on': 0.02,
  'wet coat': 0.02,
};
export const DEFAULT_SCALE_STEP_KG = 0.1;

/** Standard deviation of one weighing's error, kg: 1 % of weight and the step's d / √12 (D). */
export function weighingSd(weighing: Weighing): number {
  const own = WEIGHING_SD_SHARE * weighing.weightKg;
  const step = (weighing.scaleStepKg ?? DEFAULT_SCALE_STEP_KG) / Math.sqrt(12);
  const method = METHOD_SD_SHARE[weighing.method ?? 'same scale'] * weighing.weightKg;
  return Math.hypot(own, step, method);
}

/**
 * The weighings in order of days, checked.
 * @throws RangeError for a weight outside 0.1–150 kg, a step outside 0.001–5 kg, or no calendar day
 */
export function measured(weighings: readonly Weighing[]): MeasuredWeight[] {
  return weighings
    .map((weighing, index) => {
      weightInRange(`weighings[${index}].weightKg`, weighing.weightKg);
      if (weighing.scaleStepKg !== undefined) {
        inRange('scaleStepKg', weighing.scaleStepKg, 'kg', { min: 0.001, max: 5 });
      }
      return {
        day: weighing.day,
        dayNumber: dayNumber(weighing.day, `weighings[${index}].day`),
        weightKg: weighing.weightKg,
        sdKg: weighingSd(weighing),
        method: weighing.method ?? 'same scale',
      };
    })
    .sort((a, b) => a.dayNumber - b.dayNumber);
}
