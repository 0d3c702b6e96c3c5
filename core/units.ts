/** Conversions at the edge of the program. Core computes in kg, km, °C, kcal and grams only. */

/** Exact by definition (international pound, 1959). */
export const KG_PER_LB = 0.45359237;
/** Exact by definition (international mile, 1959). */
export const KM_PER_MILE = 1.609344;
/** Thermochemical calorie, exact by definition; the one food energy is declared in. */
export const KJ_PER_KCAL = 4.184;
export const CM_PER_INCH = 2.54;
export const GRAMS_PER_OUNCE = 28.349523125;

export const kgFromLb = (lb: number): number => lb * KG_PER_LB;
export const lbFromKg = (kg: number): number => kg / KG_PER_LB;
export const kmFromMiles = (miles: number): number => miles * KM_PER_MILE;
export const milesFromKm = (km: number): number => km / KM_PER_MILE;
export const kcalFromKj = (kj: number): number => kj / KJ_PER_KCAL;
export const kjFromKcal = (kcal: number): number => kcal * KJ_PER_KCAL;
export const celsiusFromFahrenheit = (f: number): number => ((f - 32) * 5) / 9;
export const fahrenheitFromCelsius = (c: number): number => (c * 9) / 5 + 32;
export const cmFromInches = (inches: number): number => inches * CM_PER_INCH;
export const inchesFromCm = (cm: number): number => cm / CM_PER_INCH;
export const gramsFromOunces = (oz: number): number => oz * GRAMS_PER_OUNCE;
export const ouncesFromGrams = (grams: number): number => grams / GRAMS_PER_OUNCE;
