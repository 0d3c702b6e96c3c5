import type { Figure, Reason } from '../figure.ts';
import type { RuleChanges } from '../rules/all.ts';

/** From mildest to strictest. */
export const HEAT_BANDS = [
  'usual care',
  'caution',
  'half the run time',
  'walk only',
  'no run',
] as const;
export type HeatBandId = (typeof HEAT_BANDS)[number];

/** What makes heat harder for this dog; everything absent counts as no burden. */
export interface HeatDog {
  readonly bcs?: number | null;
  readonly weightKg?: number | null;
  readonly coat?: 'ordinary' | 'thick' | 'dark' | 'thick and dark';
  readonly senior?: boolean;
  /** False for a dog not used to the weather. */
  readonly acclimatised?: boolean;
  readonly shortNosed?: boolean;
  /**
   * The vet's written clearance of a short-nosed dog. Unless it is true, a short-nosed dog does not
   * run at any temperature.
   */
  readonly cleared?: boolean;
}

/** Limits of the bands in shade air temperature, °C, for one dog. */
export interface HeatLimits {
  readonly usualToC: number;
  readonly cautionToC: number;
  readonly halfToC: number;
  readonly humidFromC: number;
  readonly humidFromPct: number;
  readonly walkToC: number;
  /** How far the limits were moved down, °C. */
  readonly shiftC: number;
}

export interface HeatBandInput {
  /** Air temperature in the shade, −40 to 60 °C. */
  readonly tempC: number;
  /** Relative humidity, 0–100 %. */
  readonly humidityPct: number;
  readonly dog?: HeatDog;
  readonly rules?: RuleChanges;
}

export interface HeatBand {
  readonly band: HeatBandId;
  /** What to do, in plain sentences. */
  readonly advice: readonly string[];
  /** Share of the planned run-minutes that may be run: 1, 0.5 or 0. */
  readonly runShare: number;
  readonly limits: HeatLimits;
  /** Each shift of the bands, and the humid air where it decided. */
  readonly reasons: readonly Reason[];
  /** For information, °C; it gates nothing. */
  readonly heatIndexC: number;
  /** °C; null in air too dry to have one (under 0.1 % humidity). */
  readonly dewPointC: number | null;
  /** Both numbers with their formula and source. */
  readonly figures: { readonly heatIndex: Figure; readonly dewPoint: Figure | null };
}

/** Bands for one dog over temperature and humidity. */
export interface HeatTable {
  readonly tempsC: readonly number[];
  readonly humiditiesPct: readonly number[];
  /** `rows[i][j]` is the band at `tempsC[i]` and `humiditiesPct[j]`. */
  readonly rows: readonly (readonly HeatBandId[])[];
  readonly limits: HeatLimits;
  readonly reasons: readonly Reason[];
}
