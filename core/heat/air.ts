import { inRange } from '../check.ts';
import { celsiusFromFahrenheit, fahrenheitFromCelsius } from '../units.ts';

export const AIR_TEMP_C = { min: -40, max: 60 } as const;
export const HUMIDITY_PCT = { min: 0, max: 100 } as const;

export interface Air {
  /** Air temperature in the shade, −40 to 60 °C. */
  readonly tempC: number;
  /** Relative humidity, 0–100 %. */
  readonly humidityPct: number;
}

/** Magnus coefficients; the second in °C. */
const MAGNUS_A = 17.625;
const MAGNUS_B = 243.04;

/**
 * Checks temperature and humidity.
 * @throws RangeError naming the argument, its unit and range.
 * @example
 * checkAir({ tempC: 20, humidityPct: 120 })
 *   // throws humidityPct must be from 0 to 100 %, but is 120
 */
export function checkAir({ tempC, humidityPct }: Air): void {
  inRange('tempC', tempC, '°C', AIR_TEMP_C);
  inRange('humidityPct', humidityPct, '%', HUMIDITY_PCT);
}

/**
 * Dew point, °C: the temperature at which this air is saturated.
 * `γ = ln(RH/100) + 17.625 t / (243.04 + t)`, `243.04 γ / (17.625 − γ)`.
 *
 * @throws RangeError for −40–60 °C or humidity outside 0.1–100 % (dry air has no dew point).
 * @example dewPoint({ tempC: 20, humidityPct: 50 }) // => 9.26
 * Source: Magnus form, coefficients 17.625 and 243.04 (C).
 */
export function dewPoint({ tempC, humidityPct }: Air): number {
  inRange('tempC', tempC, '°C', AIR_TEMP_C);
  inRange('humidityPct', humidityPct, '%', { min: 0.1, max: 100 });
  const gamma = Math.log(humidityPct / 100) + (MAGNUS_A * tempC) / (MAGNUS_B + tempC);
  return (MAGNUS_B * gamma) / (MAGNUS_A - gamma);
}

/** The simple form holds while it stays below this, °F. */
const SWITCH_F = 80;

/**
 * Heat index, °C: how warm the air feels to a resting person in the shade. For information; it
 * says little about a running dog and gates nothing here.
 *
 * Simple form `0.5 (T + 61 + 1.2 (T − 68) + 0.094 RH)` while that is under 80 °F, else the
 * regression of Rothfusz with the agency's two adjustments (all in °F inside).
 *
 * @throws RangeError for −40–60 °C and 0–100 %.
 * @example heatIndex({ tempC: 16, humidityPct: 85 }) // => 15.9
 * Source: National Weather Service SR 90-23 and the agency's equation page (S).
 */
export function heatIndex(air: Air): number {
  checkAir(air);
  const t = fahrenheitFromCelsius(air.tempC);
  const rh = air.humidityPct;
  const simple = 0.5 * (t + 61 + (t - 68) * 1.2 + rh * 0.094);
  return celsiusFromFahrenheit(simple < SWITCH_F ? simple : rothfusz(t, rh) + adjustment(t, rh));
}

function rothfusz(t: number, rh: number): number {
  return (
    -42.379 +
    2.04901523 * t +
    10.14333127 * rh -
    0.22475541 * t * rh -
    0.00683783 * t * t -
    0.05481717 * rh * rh +
    0.00122874 * t * t * rh +
    0.00085282 * t * rh * rh -
    0.00000199 * t * t * rh * rh
  );
}

/** °F, added to the regression in very dry or very humid air. */
function adjustment(t: number, rh: number): number {
  if (rh < 13 && t >= 80 && t <= 112) {
    return -((13 - rh) / 4) * Math.sqrt((17 - Math.abs(t - 95)) / 17);
  }
  if (rh > 85 && t >= 80 && t <= 87) return ((rh - 85) / 10) * ((87 - t) / 5);
  return 0;
}
