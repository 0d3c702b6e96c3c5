import { monthsBetween, type IsoDay } from '../day.ts';
import { AGE_LARGE_MONTHS, AGE_SMALL_MONTHS, LARGE_FROM_KG } from '../readiness/age.ts';

/**
 * True while a dog is fed for growth: under 12 months always; from 20 kg of adult weight on to 18
 * months, the published size classes (D). Age decides, never the present weight against the adult
 * weight: an obese puppy is heavy, not grown. Only where no adult weight is known does a dog between
 * 12 and 18 months count by its present weight as of the large class.
 */
export function isGrowing(dog: {
  readonly ageMonths: number;
  readonly adultWeightKg: number | null;
  readonly weightKg: number;
}): boolean {
  const { ageMonths, adultWeightKg, weightKg } = dog;
  const large = (adultWeightKg ?? weightKg) >= LARGE_FROM_KG;
  return ageMonths < (large ? AGE_LARGE_MONTHS : AGE_SMALL_MONTHS);
}

/** The same of a record, on a day. */
export const growsOn = (
  dog: { readonly birthDay: IsoDay; readonly adultWeightKg: number | null },
  weightKg: number,
  day: IsoDay,
): boolean =>
  isGrowing({
    ageMonths: Math.max(0, monthsBetween(dog.birthDay, day)),
    adultWeightKg: dog.adultWeightKg,
    weightKg,
  });
