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

/** Where bands end, °C; above the last there is no run. */
export interface HeatRungs {
  readonly usualToC: number;
  readonly cautionToC: number;
  readonly halfToC: number;
  readonly walkToC: number;
}

/**
 * Limits of the bands for one dog: in shade air temperature, and beside them in shade wet-bulb
 * globe temperature. The stricter of the two bands holds.
 */
export interface HeatLimits extends HeatRungs {
  readonly wbgt: HeatRungs;
  /** How far the limits were moved down, °C. */
  readonly shiftC: number;
}

/** What cold asks of one dog. */
export interface ColdLimits {
  readonly warmUpBelowC: number;
  readonly warmUpMinutes: number;
  /** A dog under the weight of the rule, a thin one or a senior wears a coat. */
  readonly coat: boolean;
  readonly halfBelowC: number;
  readonly noneBelowC: number;
}

export const COLD_BANDS = ['cold care', 'half the run time', 'no run'] as const;
export type ColdBandId = (typeof COLD_BANDS)[number];

export interface ColdBand {
  readonly band: ColdBandId;
  readonly advice: readonly string[];
  /** Share of the planned run-minutes that may be run: 1, 0.5 or 0. */
  readonly runShare: number;
  readonly reasons: readonly Reason[];
}

/** A band of the ladder: the air temperature it ends at, °C, for each humidity of the ladder. */
export interface HeatStep {
  readonly band: HeatBandId;
  readonly toC: readonly number[];
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
  /** By warmth and humidity; what cold asks for stands apart. */
  readonly band: HeatBandId;
  /** Null above the temperature from which cold counts. */
  readonly cold: ColdBand | null;
  /** What to do, in plain sentences, in warmth and in cold. */
  readonly advice: readonly string[];
  /** Share of the planned run-minutes that may be run, after warmth and cold: 1, 0.5 or 0. */
  readonly runShare: number;
  readonly limits: HeatLimits;
  /** Each shift of the bands, the humid air where it decided, and the cold. */
  readonly reasons: readonly Reason[];
  /** For information, °C; it gates nothing. */
  readonly heatIndexC: number;
  /** °C; null in air too dry to have one (under 0.1 % humidity). */
  readonly dewPointC: number | null;
  /** The numbers with their formula and source. */
  readonly figures: {
    readonly heatIndex: Figure;
    readonly dewPoint: Figure | null;
    /** Shade wet-bulb globe temperature, which decides beside the air temperature. */
    readonly wbgt: Figure;
  };
}

/** Bands for one dog over temperature and humidity. */
export interface HeatTable {
  readonly tempsC: readonly number[];
  readonly humiditiesPct: readonly number[];
  /** `rows[i][j]` is the band at `tempsC[i]` and `humiditiesPct[j]`. */
  readonly rows: readonly (readonly HeatBandId[])[];
  readonly limits: HeatLimits;
  /** The humidities up to which the columns of `ladder` hold, %. */
  readonly ladderHumiditiesPct: readonly number[];
  /** The bands up to "walk only" that this dog has; above the last there is no run. */
  readonly ladder: readonly HeatStep[];
  readonly cold: ColdLimits;
  /** Weeks of half the run time in the first warm spell. */
  readonly notUsedWeeks: number;
  readonly reasons: readonly Reason[];
}
