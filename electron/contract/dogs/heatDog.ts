import { isSenior, type Assessment, type HeatDog, type RuleChanges } from '../../../core/index.ts';
import type { DogFile } from '../contract.ts';

/**
 * What makes this dog bear less heat, as far as the record knows: the same for the heat page and
 * for the heat card. Whether the dog is used to warm weather is what the last visit that asked says.
 */
export function heatDogOf(
  { dog, visits }: Pick<DogFile, 'dog' | 'visits'>,
  assessment: Assessment,
  rules: RuleChanges,
): HeatDog {
  const used = visits.findLast(({ usedToWarmth }) => usedToWarmth !== null)?.usedToWarmth ?? null;
  return {
    ...(used === null ? {} : { acclimatised: used === 'yes' }),
    bcs: visits.findLast(({ bcs }) => bcs !== null)?.bcs ?? null,
    weightKg: assessment.weightKg,
    coat: dog.coat,
    senior: isSenior(
      assessment.ageMonths,
      dog.adultWeightKg ?? assessment.weightKg,
      rules,
      dog.shortNosed,
    ),
    shortNosed: dog.shortNosed,
    cleared: visits.at(-1)?.airwayClearance ?? false,
  };
}
