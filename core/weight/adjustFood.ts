import { inRange, oneOf, weightInRange, wholeInRange } from '../check.ts';
import { addDays, dayNumber } from '../day.ts';
import { maintenanceEnergy } from '../energy/maintenance.ts';
import { figure, type Figure, type Reason } from '../figure.ts';
import { OWN } from '../origin.ts';
import { rationOrNull, TREAT_SHARE } from '../food/ration.ts';
import { aimState } from './aimAndTarget.ts';
import { LOSS_AIM_PERCENT, LOSS_TYPICAL_PERCENT } from './corridor.ts';
import { because, type FoodDraft } from './foodDraft.ts';
import { follow, noMoreIfHeavy } from './foodFollow.ts';
import { steer } from './foodSteer.ts';
import { feedGrowth, growthOf } from './foodGrowth.ts';
import { aimedAt, heedFloor, referContradiction, referFirst } from './foodReferral.ts';
import { warningsFor } from './foodWarnings.ts';
import {
  gainReached,
  lossReferences,
  startGain,
  startHold,
  startLoss,
  targetReached,
} from './foodStart.ts';
import type { AdjustFoodInput, FoodCase, FoodProposal } from './foodTypes.ts';

/** Days to the next weighing: until the rate is set, and after (S); of a growing dog (D). */
export const WEIGH_IN_DAYS = { settling: 14, settled: 28, growing: 7 } as const;

/**
 * What the dog should eat now: the first ration of a plan, a change, no change, or the vet.
 *
 * A change needs the whole 90 % interval of the trend outside the corridor, never the point alone;
 * until then the answer is `wait` and says what for. Steps are 10 % of the ration, sized by the
 * dog's own estimate within 5–20 % once its record tells more than the formula. Below 0.8 × RER at
 * target weight nothing is proposed but more food than now. A growing dog gets the energy of growth,
 * whatever its trend. Without `maintenance` the formula for the weight alone stands in.
 *
 * @throws RangeError for weights outside 0.1–150 kg, energies outside 0–20000 kcal/day, a score
 *   that is not 1–9, or an unknown goal
 * @example
 * adjustFood({ day: '2026-03-01', goal: 'lose', weightKg: 40, targetWeightKg: 31, bcs: 8 })
 *   // => { verdict: 'start', kcalPerDay: 919.6, nextWeighInDay: '2026-03-15', … }
 * Sources: start and corridor of loss Hand et al. 2010 (S), step from memory, nutrient floor Linder
 * 2012 (S), referral floor and gain corridor our own choice (D).
 */
export function adjustFood(input: AdjustFoodInput): FoodProposal {
  check(input);
  const maintenance = input.maintenance ?? maintenanceEnergy({ weightKg: input.weightKg });
  const asked = { ...input, maintenance };
  return finish(
    asked,
    heedFloor(
      asked,
      referFirst(input) ?? referContradiction(input) ?? noMoreIfHeavy(asked, draftFor(asked)),
    ),
  );
}

const KCAL = { min: 0, max: 20000 };

function check(input: AdjustFoodInput): void {
  dayNumber(input.day, 'day');
  oneOf('goal', input.goal, ['lose', 'hold', 'gain']);
  weightInRange('weightKg', input.weightKg);
  weightInRange('targetWeightKg', input.targetWeightKg);
  if (input.initialWeightKg !== undefined) weightInRange('initialWeightKg', input.initialWeightKg);
  if (input.adultWeightKg !== undefined) {
    inRange('adultWeightKg', input.adultWeightKg, 'kg', { min: 0.5, max: 150 });
  }
  const { maintenance } = input;
  if (maintenance !== undefined) inRange('maintenance.mid', maintenance.mid, 'kcal/day', KCAL);
  if (input.bcs !== undefined) wholeInRange('bcs', input.bcs, 'of 9', { min: 1, max: 9 });
  const { currentKcal, runningKcalPerDay, runningInRationKcalPerDay } = input;
  const energies = { currentKcal, runningKcalPerDay, runningInRationKcalPerDay };
  for (const [name, value] of Object.entries(energies)) {
    if (value !== undefined) inRange(name, value, 'kcal/day', KCAL);
  }
}

function draftFor(input: FoodCase): FoodDraft {
  const growth = input.growing === true ? growthOf(input) : null;
  if (growth !== null) return feedGrowth(input, growth);
  const steered = input.onPlan === true ? steer(input) : null;
  if (steered !== null) return steered;
  if (aimState(aimedAt(input)) === 'reached') {
    return input.goal === 'lose' ? targetReached(input) : gainReached(input);
  }
  if (input.onPlan === true) return follow(input);
  if (input.goal === 'lose') return startLoss(input);
  return input.goal === 'gain' ? startGain(input) : startHold(input);
}

function finish(input: FoodCase, draft: FoodDraft): FoodProposal {
  const kcal = draft.kcalPerDay;
  const { foods = [], mealsPerDay } = input;
  const meals = mealsPerDay === undefined ? {} : { mealsPerDay };
  const bowl = kcal === null ? null : rationOrNull({ kcalPerDay: kcal, foods, ...meals });
  return {
    verdict: draft.verdict,
    kcalPerDay: kcal,
    ration: bowl,
    treatAllowanceKcal: kcal === null ? null : TREAT_SHARE * kcal,
    reasons: [...draft.reasons, ...anewAfter(input, draft)],
    warnings: kcal === null ? [] : [...(draft.warnings ?? []), ...warningsFor(input, kcal, bowl)],
    referral: draft.referral ?? null,
    waitingFor: draft.waitingFor ?? null,
    nextWeighInDay: addDays(input.day, daysToWeighing(input, draft)),
    references: input.goal === 'lose' ? lossReferences(input) : [],
    figure: kcal === null ? null : proposalFigure(input, kcal, draft),
    ...(draft.forecast === undefined ? {} : { forecast: draft.forecast }),
  };
}

/** After neutering a dog gains easily: two weeks at most, for 4–5 months (S). */
function daysToWeighing({ growing, neuteredLately }: FoodCase, { settled }: FoodDraft): number {
  if (growing === true) return WEIGH_IN_DAYS.growing;
  return settled === true && neuteredLately !== true
    ? WEIGH_IN_DAYS.settled
    : WEIGH_IN_DAYS.settling;
}

function anewAfter({ afterGapDays }: FoodCase, { verdict }: FoodDraft): Reason[] {
  if (afterGapDays === undefined || verdict !== 'start') return [];
  const text = `The dog was not weighed for ${afterGapDays} days: the plan starts anew.`;
  return [because('plan-anew', text, OWN, { days: afterGapDays })];
}

/** Set beside the aim of 1 %, so that nobody is disappointed by the usual (SciELO 2005, S). */
const TYPICAL_LOSS = `Dogs losing weight at home typically lost ${LOSS_TYPICAL_PERCENT} % a week; the plan aims at ${LOSS_AIM_PERCENT} %.`;

function proposalFigure(input: AdjustFoodInput, kcal: number, draft: FoodDraft): Figure {
  const { currentKcal, goal } = input;
  const given = draft.formula ?? { formula: 'present ration', ...OWN };
  const typical = goal === 'lose' && draft.verdict === 'start';
  return figure(kcal, {
    id: 'ration',
    label: 'Ration, treats included',
    unit: 'kcal/day',
    ...given,
    sources: typical ? [...given.sources, 'scielo2005'] : given.sources,
    inputs: [
      { label: 'Body weight', value: input.weightKg, unit: 'kg' },
      { label: 'Target weight', value: input.targetWeightKg, unit: 'kg' },
      ...(currentKcal === undefined
        ? []
        : [{ label: 'Present ration', value: Math.round(currentKcal), unit: 'kcal/day' }]),
    ],
    notes: [
      ...draft.reasons.map(({ text, said = text }) => said),
      ...(typical ? [TYPICAL_LOSS] : []),
    ],
  });
}
