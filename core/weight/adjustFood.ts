import { inRange, oneOf, weightInRange, wholeInRange } from '../check.ts';
import { addDays, dayNumber } from '../day.ts';
import { restingEnergy } from '../energy/resting.ts';
import { figure, type Figure, type Reason } from '../figure.ts';
import { nutrientFloorWarning } from '../food/floors.ts';
import { intakeEnergy, ration, TREAT_SHARE, type Ration } from '../food/ration.ts';
import { because, HAND, OWN, type FoodDraft } from './foodDraft.ts';
import { follow } from './foodFollow.ts';
import { referBelowFloor, referFirst } from './foodReferral.ts';
import { lossReferences, startGain, startHold, startLoss, targetReached } from './foodStart.ts';
import type { AdjustFoodInput, FoodProposal } from './foodTypes.ts';

/** Days to the next weighing: until the rate is set, and after (S). */
export const WEIGH_IN_DAYS = { settling: 14, settled: 28 } as const;
/** End of the published rations for gain, × RER at target; above it the cause is asked for (S). */
export const GAIN_MOST_RER = 1.8;

/**
 * What the dog should eat now: the first ration of a plan, a change, no change, or the vet.
 *
 * A change needs the whole 90 % interval of the trend outside the corridor, never the point alone;
 * until then the answer is `wait` and says what for. Steps are 10 % of the ration, sized by the
 * dog's own estimate within 5–20 % once its record tells more than the formula. Nothing is proposed
 * below 0.8 × RER at target weight.
 *
 * @throws RangeError for weights outside 0.1–150 kg, energies outside 0–20000 kcal/day, a score
 *   that is not 1–9, or an unknown goal
 * @example adjustFood({ day: '2026-03-01', goal: 'lose', weightKg: 40, targetWeightKg: 31, bcs: 8,
 *   maintenance: maintenanceEnergy({ weightKg: 40 }) })
 *   // { verdict: 'start', kcalPerDay: 919.6, warnings: [nutrient-floor], … }
 * Sources: start and corridor of loss Hand et al. 2010 (S), step from memory, nutrient floor Linder
 * 2012 (S), referral floor and gain corridor our own choice (D).
 */
export function adjustFood(input: AdjustFoodInput): FoodProposal {
  check(input);
  const draft = referFirst(input) ?? draftFor(input);
  return finish(input, referBelowFloor(input, draft) ?? draft);
}

const KCAL = { min: 0, max: 20000 };

function check(input: AdjustFoodInput): void {
  dayNumber(input.day, 'day');
  oneOf('goal', input.goal, ['lose', 'hold', 'gain']);
  weightInRange('weightKg', input.weightKg);
  weightInRange('targetWeightKg', input.targetWeightKg);
  if (input.initialWeightKg !== undefined) weightInRange('initialWeightKg', input.initialWeightKg);
  if (input.bcs !== undefined) wholeInRange('bcs', input.bcs, 'of 9', { min: 1, max: 9 });
  const { currentKcal, runningKcalPerDay, runningInRationKcalPerDay } = input;
  const energies = { currentKcal, runningKcalPerDay, runningInRationKcalPerDay };
  for (const [name, value] of Object.entries(energies)) {
    if (value !== undefined) inRange(name, value, 'kcal/day', KCAL);
  }
}

function draftFor(input: AdjustFoodInput): FoodDraft {
  if (input.goal === 'lose' && input.weightKg <= input.targetWeightKg) return targetReached(input);
  if (input.onPlan === true) return follow(input);
  if (input.goal === 'lose') return startLoss(input);
  return input.goal === 'gain' ? startGain(input) : startHold(input);
}

function finish(input: AdjustFoodInput, draft: FoodDraft): FoodProposal {
  const kcal = draft.kcalPerDay;
  const bowl = kcal === null ? null : rationOrNull(input, kcal);
  const days = draft.settled === true ? WEIGH_IN_DAYS.settled : WEIGH_IN_DAYS.settling;
  return {
    verdict: draft.verdict,
    kcalPerDay: kcal,
    ration: bowl,
    treatAllowanceKcal: kcal === null ? null : TREAT_SHARE * kcal,
    reasons: draft.reasons,
    warnings: kcal === null ? [] : warningsFor(input, kcal, bowl),
    referral: draft.referral ?? null,
    waitingFor: draft.waitingFor ?? null,
    nextWeighInDay: addDays(input.day, days),
    references: input.goal === 'lose' ? lossReferences(input) : [],
    figure: kcal === null ? null : proposalFigure(input, kcal, draft),
  };
}

/** Null while no food is listed whose amount could follow; a warning says so where foods are listed. */
function rationOrNull(input: AdjustFoodInput, kcalPerDay: number): Ration | null {
  const foods = (input.foods ?? []).filter(({ gramsPerDay }) => gramsPerDay > 0);
  const free = foods.some((food) => food.treat !== true && food.fixedGrams !== true);
  const fixed = foods.filter((food) => food.treat !== true && food.fixedGrams === true);
  if (!free || intakeEnergy(fixed) >= kcalPerDay * (1 - TREAT_SHARE)) return null;
  const meals = input.mealsPerDay === undefined ? {} : { mealsPerDay: input.mealsPerDay };
  return ration({ kcalPerDay, foods, ...meals });
}

function warningsFor(input: AdjustFoodInput, kcal: number, bowl: Ration | null): Reason[] {
  const { targetWeightKg, weightLossDiet = false } = input;
  const floor =
    input.goal === 'lose'
      ? nutrientFloorWarning({ kcalPerDay: kcal, targetWeightKg, weightLossDiet })
      : null;
  return [
    ...(floor === null ? [] : [floor]),
    ...treatWarning(input, kcal),
    ...(input.goal === 'lose' && input.muscle === 'mild loss' ? [MUSCLE_WARNING] : []),
    ...(input.goal === 'gain' && kcal > GAIN_MOST_RER * restingEnergy(targetWeightKg)
      ? [GAIN_WARNING]
      : []),
    ...(bowl === null && (input.foods ?? []).length > 0 ? [NO_ROOM] : []),
  ];
}

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
  const treatKcal = intakeEnergy((input.foods ?? []).filter(({ treat }) => treat === true));
  const allowed = TREAT_SHARE * kcal;
  if (treatKcal <= allowed + 0.5) return [];
  const text = `Treats come to ${Math.round(treatKcal)} kcal a day; at most ${Math.round(allowed)} kcal (10 %) fit the ration.`;
  return [because('treats', text, HAND, { kcal: Math.round(treatKcal) })];
}

function proposalFigure(input: AdjustFoodInput, kcal: number, draft: FoodDraft): Figure {
  const { currentKcal } = input;
  return figure(kcal, {
    id: 'ration',
    label: 'Ration, treats included',
    unit: 'kcal/day',
    ...(draft.formula ?? { formula: 'present ration', ...OWN }),
    inputs: [
      { label: 'Body weight', value: input.weightKg, unit: 'kg' },
      { label: 'Target weight', value: input.targetWeightKg, unit: 'kg' },
      ...(currentKcal === undefined
        ? []
        : [{ label: 'Present ration', value: Math.round(currentKcal), unit: 'kcal/day' }]),
    ],
    notes: draft.reasons.map(({ text }) => text),
  });
}
