import { maintenanceEnergy, type EnergyReference } from '../energy/maintenance.ts';
import { metabolicWeight, restingEnergy } from '../energy/resting.ts';
import {
  because,
  GERMAN,
  HAND,
  needOf,
  OWN,
  refer,
  runningReasons,
  type FoodDraft,
} from './foodDraft.ts';
import type { AdjustFoodInput } from './foodTypes.ts';

/** First ration of a plan to gain, × RER at target: middle of the published 1.2–1.8 (S/C). */
export const GAIN_START_RER = 1.5;
/** Usual step and its range, % of the present ration (M). */
export const STEP_PERCENT = { usual: 10, min: 5, max: 20 } as const;

/** First ration of a loss plan: 1.0 × RER at target (Hand p. 532, S); running is not added (D). */
export function startLoss(input: AdjustFoodInput): FoodDraft {
  const kcal = restingEnergy(input.targetWeightKg);
  const { currentKcal = 0 } = input;
  if (currentKcal > 0 && currentKcal <= kcal) {
    return refer(
      'already-low',
      'The dog already eats no more than the loss ration: go through the diet history again, then ask the vet (hormones).',
      HAND,
    );
  }
  const text = 'A weight-loss plan starts at the resting energy requirement of the target weight.';
  return {
    verdict: 'start',
    kcalPerDay: kcal,
    reasons: [because('loss-start', text, HAND), ...runningOnLoss(input)],
    formula: { formula: '70 × target kg^0.75', ...HAND },
  };
}

/** On a loss plan the running deepens the deficit; the weight record corrects for it (D). */
function runningOnLoss(input: AdjustFoodInput) {
  const kcal = Math.round(input.runningKcalPerDay ?? 0);
  if (kcal === 0) return [];
  const text = `The planned running, about ${kcal} kcal a day, is not fed on top: it adds to the loss, and the weighings correct it.`;
  return [because('running-on-loss', text, OWN, { kcal })];
}

/**
 * What is published beside 1.0 × RER: the energy client-owned dogs needed in fact to lose, and the
 * other published start of 60 % of maintenance.
 */
export function lossReferences(input: AdjustFoodInput): EnergyReference[] {
  const body = metabolicWeight(input.targetWeightKg);
  return [
    {
      label: '61 (44–74) × target kg^0.75, needed by dogs losing at home',
      kcalPerDay: 61 * body,
      low: 44 * body,
      high: 74 * body,
      source: 'german2015',
    },
    {
      label: '53.6 ± 15.2 × target kg^0.75, active dogs losing about 2 % a week',
      kcalPerDay: 53.6 * body,
      source: 'wakshlag2012',
    },
    {
      label: '42.2 ± 9.7 × target kg^0.75, inactive dogs losing about 2 % a week',
      kcalPerDay: 42.2 * body,
      source: 'wakshlag2012',
    },
    {
      label: '60 % of maintenance, another published start',
      kcalPerDay: 0.6 * input.maintenance.mid,
      source: 'hand2010',
    },
  ];
}

export function startGain(input: AdjustFoodInput): FoodDraft {
  const running = input.runningKcalPerDay ?? 0;
  const byTarget = GAIN_START_RER * restingEnergy(input.targetWeightKg);
  const kcal = Math.max(byTarget, (input.currentKcal ?? 0) * (1 + STEP_PERCENT.usual / 100));
  const text =
    'A plan to gain starts at 1.5 × resting energy of the target weight (published 1.2–1.8), and 10 % above the present ration at least.';
  return {
    verdict: 'start',
    kcalPerDay: kcal + running,
    reasons: [because('gain-start', text, HAND), ...runningReasons(running)],
    formula: { formula: '1.5 × 70 × target kg^0.75, or the present ration + 10 %', ...HAND },
  };
}

export function startHold(input: AdjustFoodInput): FoodDraft {
  const { kcal, text, provenance } = needOf(input);
  const running = input.runningKcalPerDay ?? 0;
  return {
    verdict: 'start',
    kcalPerDay: kcal + running,
    reasons: [
      because(
        'hold-start',
        `The ration starts at ${text}; the weight record corrects it.`,
        provenance,
      ),
      ...runningReasons(running),
    ],
    formula: { formula: `${text}${running > 0 ? ' + running' : ''}`, ...provenance },
  };
}

/**
 * The target is reached: up in steps of 10 % towards what a slimmed dog needs, 68.1 kcal/kg^0.75,
 * or towards its own record where that tells more.
 */
export function targetReached(input: AdjustFoodInput): FoodDraft {
  const slimmed = maintenanceEnergy({ weightKg: input.weightKg, afterWeightLoss: true });
  const { kcal, own } = needOf(input, slimmed);
  const towards = own ? "the dog's own maintenance energy" : 'what slimmed dogs needed';
  const present = input.currentKcal ?? 0;
  const step = present * (1 + STEP_PERCENT.usual / 100);
  const next = present <= 0 ? kcal : Math.min(Math.max(kcal, present), step);
  const verb = next > present ? 'go up in steps of 10 % towards' : 'keep the ration: it meets';
  return {
    verdict: next > present ? 'change' : 'keep',
    kcalPerDay: next,
    reasons: [
      because(
        'target-reached',
        `The target weight is reached: ${verb} ${towards} (${Math.round(kcal)} kcal a day), and weigh every two weeks.`,
        GERMAN,
        { kcal: Math.round(kcal) },
      ),
    ],
    formula: { formula: 'present ration + 10 %, not above maintenance energy after loss', ...OWN },
  };
}
