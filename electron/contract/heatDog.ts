import { isSenior, type Assessment, type HeatDog, type RuleChanges } from '../../core/index.ts';
import type { DogFile } from './contract.ts';

/**
 * What makes this dog bear less heat, as far as the record knows: the same for the heat page and
 * for the heat card. Whether the dog is used to the weather is not on record.
 */
export function heatDogOf(
  { dog, visits }: Pick<DogFile, 'dog' | 'visits'>,
  assessment: Assessment,
  rules: RuleChanges,
): HeatDog {
  return {
    bcs: visits.findLast(({ bcs }) => bcs !== null)?.bcs ?? null,
    weightKg: assessment.weightKg,
    coat: dog.coat,
    senior: isSenior(assessment.ageMonths, dog.adultWeightKg ?? assessment.weightKg, rules),
    shortNosed: dog.shortNosed,
    cleared: visits.at(-1)?.airwayClearance ?? false,
  };
}
