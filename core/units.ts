/** Conversions at the edge of the program. Core computes in kg, km, °C, kcal and grams only. */

/** Exact by definition (international pound, 1959). */
export const KG_PER_LB = 0.45359237;
/** Exact by definition (international mile, 1959). */
export const KM_PER_MILE = 1.609344;
/** Thermochemical calorie, exact by definition; the one food energy is declared in. */
export const KJ_PER_KCAL = 4.184;
export const CM_PER_INCH = 2.54;
export const GRAMS_PER_OUNCE = 28.349523125;

/** @example kgFromLb(100) // => 45.359237 */
export const kgFromLb = (lb: number): number => lb * KG_PER_LB;
/** @example lbFromKg(20) // => 44.09 */
export const lbFromKg = (kg: number): number => kg / KG_PER_LB;
/** @example kmFromMiles(1) // => 1.609344 */
export const kmFromMiles = (miles: number): number => miles * KM_PER_MILE;
/** @example milesFromKm(5) // => 3.107 */
export const milesFromKm = (km: number): number => km / KM_PER_MILE;
/** @example kcalFromKj(418.4) // => 100 */
export const kcalFromKj = (kj: number): number => kj / KJ_PER_KCAL;
/** @example kjFromKcal(100) // => 418.4 */
export const kjFromKcal = (kcal: number): number => kcal * KJ_PER_KCAL;
/** @example celsiusFromFahrenheit(212) // => 100 */
export const celsiusFromFahrenheit = (f: number): number => ((f - 32) * 5) / 9;
/** @example fahrenheitFromCelsius(10) // => 50 */
export const fahrenheitFromCelsius = (c: number): number => (c * 9) / 5 + 32;
/** @example cmFromInches(10) // => 25.4 */
export const cmFromInches = (inches: number): number => inches * CM_PER_INCH;
/** @example inchesFromCm(50) // => 19.69 */
export const inchesFromCm = (cm: number): number => cm / CM_PER_INCH;
/** @example gramsFromOunces(16) // => 453.59237 */
export const gramsFromOunces = (oz: number): number => oz * GRAMS_PER_OUNCE;
/** @example ouncesFromGrams(100) // => 3.527 */
export const ouncesFromGrams = (grams: number): number => grams / GRAMS_PER_OUNCE;
