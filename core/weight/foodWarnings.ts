import { idealWeight } from '../condition/idealWeight.ts';
import { restingEnergy } from '../energy/resting.ts';
import type { Reason } from '../figure.ts';
import { OWN } from '../origin.ts';
import { nutrientFloorWarning } from '../food/floors.ts';
import { intakeEnergy, TREAT_SHARE, type Ration } from '../food/ration.ts';
import { because, HAND } from './foodDraft.ts';
import { TARGET_TOLERANCE_PERCENT } from './foodReferral.ts';
import type { AdjustFoodInput } from './foodTypes.ts';

/** End of the published rations for gain, × RER at target; above it the cause is asked for (S). */
export const GAIN_MOST_RER = 1.8;

/** What to watch with a ration of `kcal`, beside what its own draft warns of. */
export function warningsFor(input: AdjustFoodInput, kcal: number, bowl: Ration | null): Reason[] {
  return [
    ...goalAgainstScore(input),
    ...floorWarning(input, kcal),
    ...treatWarning(input, kcal),
    ...(input.onMedicine === true ? [ON_MEDICINE] : []),
    ...(input.goal === 'lose' && input.muscle === 'mild loss' ? [MUSCLE_WARNING] : []),
    ...gainWarnings(input, kcal),
    ...(bowl === null && (input.foods ?? []).length > 0 ? [NO_ROOM] : []),
  ];
}

const ON_MEDICINE = because(
  'food-on-medicine',
  'The dog is on medicine, which can change appetite and weight: ask the vet about the food.',
  OWN,
);

/** Growing dogs are fed far above the floor of adults, and by another standard. */
function floorWarning(input: AdjustFoodInput, kcalPerDay: number): Reason[] {
  if (input.growing === true) return [];
  const { targetWeightKg, weightLossDiet = false } = input;
  const floor = nutrientFloorWarning({ kcalPerDay, targetWeightKg, weightLossDiet });
  return floor === null ? [] : [floor];
}

/** An aim that the body condition speaks against; the practitioner decides. */
function goalAgainstScore({ goal, bcs }: AdjustFoodInput): Reason[] {
  if (bcs === undefined) return [];
  const score = `Body condition ${bcs} of 9`;
  const warn = (code: string, text: string) => [because(code, `${score}: ${text}`, OWN, { bcs })];
  if (goal === 'gain' && bcs >= 6) {
    return warn(
      'heavy-to-gain',
      'the dog is heavy already, yet the aim is to gain. Look at it again.',
    );
  }
  if (goal === 'hold' && bcs >= 6) {
    return warn(
      'heavy-to-hold',
      'the dog is heavy, yet the aim is to hold weight. Look at it again.',
    );
  }
  if (goal === 'hold' && bcs <= 3) {
    return warn(
      'thin-to-hold',
      'the dog is thin, yet the aim is to hold weight. Look at it again, and ask the vet for the cause.',
    );
  }
  return [];
}

function gainWarnings(input: AdjustFoodInput, kcal: number): Reason[] {
  const { goal, growing, targetWeightKg, weightKg, bcs } = input;
  if (goal !== 'gain' || growing === true) return [];
  const high = bcs === undefined ? Infinity : idealWeight({ weightKg, bcs }).high;
  return [
    ...(targetWeightKg > high * (1 + TARGET_TOLERANCE_PERCENT / 100) ? [TARGET_HIGH] : []),
    ...(kcal > GAIN_MOST_RER * restingEnergy(targetWeightKg) ? [GAIN_WARNING] : []),
  ];
}

const TARGET_HIGH = because(
  'target-above-range',
  'The target weight lies above the range for this condition score: check the target and the score.',
  OWN,
);
const MUSCLE_WARNING = because(
  'muscle-mild-loss',
  'Some muscle is already lost: score it again at every weighing, and ask the vet before less is fed.',
  OWN,
);
const GAIN_WARNING = because(
  'gain-high',
  'This is above 1.8 × resting energy of the target weight, the most that is published for gaining: ask the vet for the cause if the weight does not follow.',
  HAND,
);
const NO_ROOM = because(
  'no-free-food',
  'No grams are given: at least one food must be free to change, and the fixed foods must leave room for it.',
  OWN,
);

function treatWarning(input: AdjustFoodInput, kcal: number): Reason[] {
  const treats = (input.foods ?? []).filter(({ treat }) => treat === true);
  const treatKcal = intakeEnergy(treats);
  const allowed = TREAT_SHARE * kcal;
  // Weighed out in whole grams, what just fits may come to half a gram more.
  const rounding = treats.reduce((sum, { kcalPer100g }) => sum + kcalPer100g / 100 / 2, 0);
  if (treatKcal <= allowed + Math.max(0.5, rounding)) return [];
  const text = `Treats come to {${Math.round(treatKcal)} kcal} a day; at most {${Math.round(allowed)} kcal} (10 %) fit the ration.`;
  return [because('treats', text, HAND, { kcal: Math.round(treatKcal) })];
}
