import { inRange } from '../check.ts';

/** Lowest ages for running in harness, months (CP; sport rules 12–18 months). */
export const AGE_SMALL_MONTHS = 12;
export const AGE_LARGE_MONTHS = 18;
/** Adult weight from which the later age counts (size classes of Hart et al. 2020; D). */
export const LARGE_FROM_KG = 20;
/** From this adult weight the advice is to wait up to 24 months (D). */
export const GIANT_FROM_KG = 40;
export const ADVISED_GIANT_MONTHS = 24;
/** Extra months advised after early neutering, to at most 24 (D, after Salmeri et al. 1991). */
export const EARLY_NEUTER_EXTRA_MONTHS = 6;
export const EARLY_NEUTER_BEFORE_MONTHS = 12;

export interface AgeGate {
  /** Below this age the dog walks only. */
  readonly requiredMonths: number;
  /** Below this age waiting is advised. */
  readonly advisedMonths: number;
}

/**
 * The lowest age for running in harness, months, by expected adult weight in kg (0.5–150).
 * @throws RangeError when a number is out of range.
 */
export function ageGate(adultWeightKg: number, neuteredAtMonths?: number): AgeGate {
  inRange('adultWeightKg', adultWeightKg, 'kg', { min: 0.5, max: 150 });
  const requiredMonths = adultWeightKg >= LARGE_FROM_KG ? AGE_LARGE_MONTHS : AGE_SMALL_MONTHS;
  let advisedMonths = adultWeightKg >= GIANT_FROM_KG ? ADVISED_GIANT_MONTHS : requiredMonths;
  if (neuteredAtMonths !== undefined) {
    inRange('neuteredAtMonths', neuteredAtMonths, 'months', { min: 1, max: 240 });
    if (neuteredAtMonths < EARLY_NEUTER_BEFORE_MONTHS) {
      advisedMonths = Math.min(
        24,
        Math.max(advisedMonths, requiredMonths + EARLY_NEUTER_EXTRA_MONTHS),
      );
    }
  }
  return { requiredMonths, advisedMonths };
}

/**
 * Expected life span in years by adult weight, for "senior = last quarter of it".
 * A rough line by size class (D): no published table was at hand.
 */
export function expectedLifeYears(adultWeightKg: number): number {
  if (adultWeightKg < 10) return 14;
  if (adultWeightKg < 20) return 13;
  if (adultWeightKg < 40) return 12;
  return 10;
}

/** True in the last quarter of the expected life span (AAHA 2019 life stages; the span itself D). */
export function isSenior(ageMonths: number, adultWeightKg: number): boolean {
  return ageMonths >= expectedLifeYears(adultWeightKg) * 12 * 0.75;
}
