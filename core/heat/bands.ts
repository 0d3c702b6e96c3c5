import { inRange, wholeInRange } from '../check.ts';
import type { Provenance } from '../figure.ts';
import { checkAir, dewPoint, heatIndex, type Air } from './air.ts';

/** What to do with a run in this air, mildest first. */
export const HEAT_BANDS = [
  'usual care',
  'caution',
  'half the run time',
  'walk only',
  'no run',
] as const;
export type HeatBandName = (typeof HEAT_BANDS)[number];

/** Upper end of each band, °C of shade air; above the last there is no run (C/D, editable). */
export const BAND_ENDS_C: Readonly<Record<Exclude<HeatBandName, 'no run'>, number>> = {
  'usual care': 10,
  caution: 15,
  'half the run time': 18,
  'walk only': 20,
};
/** From here with this humidity the run is halved at least, whatever the ends above (D). */
export const HUMID = { fromC: 16, humidityPct: 85 } as const;
/** Each reason moves the bands down by this; all together by at most `MOST_SHIFT_C` (D). */
export const SHIFT_C = 3;
export const MOST_SHIFT_C = 6;
export const HEAVY_DOG_KG = 50;
export const HIGH_BCS = 6;

/** What makes a dog bear less heat. All optional: what is not known shifts nothing. */
export interface HeatDog {
  readonly bcs?: number;
  readonly weightKg?: number;
  readonly coat?: 'ordinary' | 'thick' | 'dark' | 'thick and dark';
  readonly senior?: boolean;
  readonly acclimatised?: boolean;
  readonly shortNosed?: boolean;
}

export interface HeatShift {
  readonly code: string;
  readonly text: string;
  readonly shiftC: number;
}

export interface HeatBand extends Provenance {
  readonly band: HeatBandName;
  readonly advice: string;
  /** Sum of the shifts, °C, at most 6. */
  readonly shiftC: number;
  readonly shifts: readonly HeatShift[];
  /** The temperature the bands are read at: air plus shift, °C. */
  readonly effectiveC: number;
  /** For information, °C. */
  readonly dewPointC: number;
  readonly heatIndexC: number;
}

const ADVICE: Readonly<Record<HeatBandName, string>> = {
  'usual care': 'Run as planned. Carry water, and offer some every 15 to 20 minutes.',
  caution: 'Run as planned in shade, early or late. Carry water; watch the breathing.',
  'half the run time': 'Run half the planned time at most, in shade, early or late, with water.',
  'walk only': 'Walk only, in shade, with water.',
  'no run': 'No run. A short walk in the coolest hour; hand test on the ground first.',
};

/** The shifts of one dog, each explained. A short-nosed dog takes the whole 6 °C at once. */
export function heatShifts(dog: HeatDog): readonly HeatShift[] {
  if (dog.bcs !== undefined) wholeInRange('bcs', dog.bcs, 'of 9', { min: 1, max: 9 });
  if (dog.weightKg !== undefined) {
    inRange('weightKg', dog.weightKg, 'kg', { min: 0.1, max: 150 });
  }
  const candidates: readonly [boolean, string, string, number][] = [
    [dog.shortNosed === true, 'short-nosed', 'short-nosed', MOST_SHIFT_C],
    [(dog.bcs ?? 0) >= HIGH_BCS, 'bcs', `body condition ${dog.bcs} of 9`, SHIFT_C],
    [(dog.weightKg ?? 0) > HEAVY_DOG_KG, 'heavy', `over ${HEAVY_DOG_KG} kg`, SHIFT_C],
    [(dog.coat ?? 'ordinary') !== 'ordinary', 'coat', `${dog.coat} coat`, SHIFT_C],
    [dog.senior === true, 'senior', 'senior', SHIFT_C],
    [dog.acclimatised === false, 'not-used', 'not used to the weather', SHIFT_C],
  ];
  return candidates
    .filter(([applies]) => applies)
    .map(([, code, text, shiftC]) => ({ code, text, shiftC }));
}

/** The band at a temperature that already carries the dog's shift. */
function bandAt(effectiveC: number, humidityPct: number): HeatBandName {
  const byTemperature =
    HEAT_BANDS.find((band) => band !== 'no run' && effectiveC <= BAND_ENDS_C[band]) ?? 'no run';
  const humid = effectiveC >= HUMID.fromC && humidityPct >= HUMID.humidityPct;
  return humid ? stricter(byTemperature, 'half the run time') : byTemperature;
}

function stricter(a: HeatBandName, b: HeatBandName): HeatBandName {
  return HEAT_BANDS.indexOf(a) > HEAT_BANDS.indexOf(b) ? a : b;
}

/**
 * What the air allows this dog. Bands in shade air temperature and humidity, moved down by 3 °C for
 * each of body condition 6 and more, over 50 kg, thick or dark coat, senior, not used to the
 * weather (6 °C at most), and by 6 °C for a short-nosed dog with clearance. The human heat index is
 * no gate and only shown.
 *
 * @throws RangeError for −40–60 °C, 1–100 %, a score that is not 1–9, weight outside 0.1–150 kg
 * Sources: bands ours (D), after Hall 2022 and Carter & Hall 2018 (S): half of the days with heat
 * illness had under 16.9 °C.
 */
export function heatBand(input: Air & { readonly dog?: HeatDog }): HeatBand {
  checkAir(input);
  const shifts = heatShifts(input.dog ?? {});
  const shiftC = Math.min(
    MOST_SHIFT_C,
    shifts.reduce((sum, shift) => sum + shift.shiftC, 0),
  );
  const effectiveC = input.tempC + shiftC;
  const band = bandAt(effectiveC, input.humidityPct);
  return {
    band,
    advice: ADVICE[band],
    shiftC,
    shifts,
    effectiveC,
    dewPointC: dewPoint(input),
    heatIndexC: heatIndex(input),
    evidence: 'D',
    mark: 'D',
    sources: ['ownDecision', 'hall2022', 'carterHall2018', 'raceLimits'],
  };
}

export interface HeatTable {
  readonly temperaturesC: readonly number[];
  readonly humiditiesPct: readonly number[];
  /** One row per temperature, one cell per humidity. */
  readonly rows: readonly (readonly HeatBandName[])[];
}

/** Temperature by humidity for one dog, for screen and heat card. */
export function heatTable(
  dog: HeatDog,
  temperaturesC: readonly number[] = [0, 4, 8, 10, 12, 14, 15, 16, 18, 20, 22, 25],
  humiditiesPct: readonly number[] = [30, 50, 70, 85, 95],
): HeatTable {
  const rows = temperaturesC.map((tempC) =>
    humiditiesPct.map((humidityPct) => heatBand({ tempC, humidityPct, dog }).band),
  );
  return { temperaturesC, humiditiesPct, rows };
}
