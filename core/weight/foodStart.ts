import { maintenanceEnergy, type EnergyReference } from '../energy/maintenance.ts';
import { referralFloor } from '../food/floors.ts';
import { metabolicWeight, restingEnergy } from '../energy/resting.ts';
import type { Provenance } from '../figure.ts';
import { from, OWN } from '../origin.ts';
import { because, HAND, needOf, refer, runningReasons, STEP, type FoodDraft } from './foodDraft.ts';
import { KCAL_PER_KG_CHANGE } from './balance.ts';
import type { AdjustFoodInput, FoodCase } from './foodTypes.ts';

/** First ration of a plan to gain, × RER at target: middle of the published 1.2–1.8 (S/C). */
export const GAIN_START_RER = 1.5;
/** Usual step and its range, % of the present ration (M). */
export const STEP_PERCENT = { usual: 10, min: 5, max: 20 } as const;

/**
 * First ration of a loss plan: by the dog's own record where it tells more than the formula, else
 * 1.0 × RER at target (Hand p. 532, S); running is then not added (D).
 */
export function startLoss(input: FoodCase): FoodDraft {
  if (input.own?.informative === true) return startLossByRecord(input);
  const kcal = restingEnergy(input.targetWeightKg);
  const { currentKcal = 0 } = input;
  const falling = (input.trend?.high ?? 0) < 0;
  if (currentKcal > 0 && currentKcal <= kcal && !falling) {
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

/** Predicted loss a plan starts at by the own record, and the most it may be, % a week (D). */
const START_RATE_PERCENT = { aim: 1.2, most: 2 } as const;

/** Own need and running, less the energy of 1.2 % a week; never under the floor, nor more than is eaten unless that loses over 2 % a week. */
function startLossByRecord(input: FoodCase): FoodDraft {
  const spent = needOf(input).kcal + (input.runningKcalPerDay ?? 0);
  const atRate = (percent: number) => spent - (percent * KCAL_PER_KG_CHANGE * input.weightKg) / 700;
  const wanted = Math.max(atRate(START_RATE_PERCENT.aim), referralFloor(input.targetWeightKg));
  const present = input.currentKcal ?? 0;
  const slowEnough = present >= atRate(START_RATE_PERCENT.most);
  const kcalPerDay = present > 0 && present < wanted && slowEnough ? present : wanted;
  const percent = Math.round((7000 * (spent - kcalPerDay)) / (KCAL_PER_KG_CHANGE * input.weightKg));
  const text = `By its own record the dog is expected to lose about ${(percent / 10).toFixed(1)} % a week on this ration.`;
  return {
    verdict: 'start',
    kcalPerDay,
    reasons: [because('expected-rate', text, OWN, { percent: -percent / 10 })],
    formula: { formula: 'the dog’s own need and running − 7920 kcal per kg to lose', ...OWN },
  };
}

/** On a loss plan the running deepens the deficit; the weight record corrects for it (D). */
function runningOnLoss(input: AdjustFoodInput) {
  const kcal = Math.round(input.runningKcalPerDay ?? 0);
  if (kcal === 0) return [];
  const text = `The planned running, about {${kcal} kcal} a day, is not fed on top: it adds to the loss, and the weighings correct it.`;
  return [because('running-on-loss', text, OWN, { kcal })];
}

/**
 * What is published beside 1.0 × RER: the energy client-owned dogs needed in fact to lose, and the
 * other published start of 60 % of maintenance.
 */
export function lossReferences(input: FoodCase): EnergyReference[] {
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

/** The middle of the published multiples, our arithmetic. */
const GAIN_BY_TARGET: Provenance = from('C', 'C', 'hand2010', 'arithmetic');

/** More than this above the present ration is no start, % (D). */
const GAIN_START_MOST_PERCENT = 25;

/** 10 % above what the dog needs and above what it eats at least, and 25 % above what it eats at most. */
export function startGain(input: FoodCase): FoodDraft {
  const running = input.runningKcalPerDay ?? 0;
  const byTarget = GAIN_START_RER * restingEnergy(input.targetWeightKg);
  const eatenOrNeeded = Math.max(needOf(input).kcal, input.currentKcal ?? 0);
  const wanted = Math.max(byTarget, eatenOrNeeded * (1 + STEP_PERCENT.usual / 100));
  const present = input.currentKcal ?? 0;
  const most = present > 0 ? present * (1 + GAIN_START_MOST_PERCENT / 100) : Infinity;
  const kcal = Math.min(wanted, most);
  const provenance = kcal === byTarget ? GAIN_BY_TARGET : STEP;
  const text =
    'A plan to gain starts at 1.5 × resting energy of the target weight (published 1.2–1.8), 10 % above maintenance energy and above the present ration at least, and 25 % above the present ration at most.';
  return {
    verdict: 'start',
    kcalPerDay: kcal + running,
    reasons: [because('gain-start', text, provenance), ...runningReasons(running)],
    formula: {
      formula:
        '1.5 × 70 × target kg^0.75, or maintenance energy or the present ration + 10 %; at most the present ration + 25 %',
      ...provenance,
    },
  };
}

/**
 * The first ration to hold weight. A ration told and found to fit the dog says more of it than a
 * formula, so it stands while it lies inside the estimate's 90 % range; outside, either the log or
 * the formula is wrong, and the ration moves by 10 % at most (D).
 */
export function startHold(input: FoodCase): FoodDraft {
  if (input.rationFromLossPlan === true) return targetReached(input);
  const need = needOf(input);
  const planned = input.runningKcalPerDay ?? 0;
  const fed = input.runningInRationKcalPerDay ?? planned;
  const present = input.currentKcal ?? 0;
  if (present > 0 && present - fed < need.low) return towardsNeed(input, need.kcal + planned, 1);
  if (present > 0 && present - fed > need.high) return towardsNeed(input, need.kcal + planned, -1);
  if (present > 0 && fitsAsItIs(input)) return keepPresent(present, planned - fed);
  const { kcal, text, provenance } = need;
  return {
    verdict: 'start',
    kcalPerDay: byCondition(kcal + planned, input),
    reasons: [
      because(
        'hold-start',
        `The ration starts at ${text}; the weight record corrects it.`,
        provenance,
      ),
      ...runningReasons(planned),
    ],
    formula: { formula: `${text}${planned > 0 ? ' + running' : ''}`, ...provenance },
  };
}

/** A thin dog gets no less than it eats, a heavy one, from 6, no more (D). */
function byCondition(kcal: number, { bcs = 5, currentKcal: present = 0 }: FoodCase): number {
  if (present <= 0 || bcs === 4 || bcs === 5) return kcal;
  return bcs <= 3 ? Math.max(kcal, present) : Math.min(kcal, present);
}

/** In ideal condition and not known to change, or stable by its record. */
function fitsAsItIs({ bcs, trend }: FoodCase): boolean {
  const status = trend?.status ?? 'cannot tell yet';
  if (status === 'stable') return true;
  return (bcs === 4 || bcs === 5) && status === 'cannot tell yet';
}

function keepPresent(present: number, newRunning: number): FoodDraft {
  const text =
    'The present ration lies inside the range expected for this dog and suits its condition: it stays, and the weight record corrects it.';
  return {
    verdict: 'start',
    kcalPerDay: Math.max(0, present + newRunning),
    reasons: [because('hold-present', text, OWN), ...runningReasons(newRunning)],
    formula: { formula: `present ration${newRunning > 0 ? ' + running' : ''}`, ...OWN },
  };
}

/** Too far from the estimate to believe either: the diet history first, and a small step. */
function towardsNeed(input: FoodCase, need: number, direction: 1 | -1): FoodDraft {
  const present = input.currentKcal!;
  const eaten = Math.round(present);
  const text = `The diet told, {${eaten} kcal} a day, lies outside the range expected for this dog: recheck the diet history. Until then the ration moves by 10 % at most.`;
  return {
    verdict: 'start',
    kcalPerDay: oneStep(input, need, direction),
    reasons: [because('diet-outside-range', text, OWN, { kcal: eaten })],
    formula: { formula: 'present ration, moved by 10 % at most', ...OWN },
  };
}

/** At most 10 %, not past the need; a thin dog gets no less than it eats. */
function oneStep(input: FoodCase, need: number, direction: 1 | -1): number {
  const moved = (input.currentKcal ?? 0) * (1 + (direction * STEP_PERCENT.usual) / 100);
  return byCondition(direction > 0 ? Math.min(need, moved) : Math.max(need, moved), input);
}

/**
 * The target is reached: up in steps of 10 % towards what a slimmed dog needs, 68.1 kcal/kg^0.75,
 * or towards its own record where that tells more, with the planned running on top of either.
 */
export function targetReached(input: FoodCase): FoodDraft {
  const slimmed = maintenanceEnergy({ weightKg: input.weightKg, afterWeightLoss: true });
  const need = needOf(input, slimmed);
  const running = input.runningKcalPerDay ?? 0;
  const kcal = need.kcal + running;
  const towards = need.own ? 'the dog’s own maintenance energy' : 'what slimmed dogs needed';
  const present = input.currentKcal ?? 0;
  const step = present * (1 + STEP_PERCENT.usual / 100);
  const next = present <= 0 ? kcal : Math.min(Math.max(kcal, present), step);
  const verb = next > present ? 'go up in steps of 10 % towards' : 'keep the ration: it meets';
  const withRunning = running > 0 ? ', the planned running in it' : '';
  return {
    verdict: next > present ? 'change' : 'keep',
    kcalPerDay: next,
    reasons: [
      because(
        'target-reached',
        `The target weight is reached: ${verb} ${towards} ({${Math.round(kcal)} kcal} a day${withRunning}), and weigh every two weeks.`,
        need.provenance,
        { kcal: Math.round(kcal) },
      ),
    ],
    formula: {
      formula: 'present ration + 10 %, not above maintenance energy after loss and the running',
      ...OWN,
    },
  };
}

/**
 * A dog that was to gain has reached its target: down in steps of 10 % towards what it needs at this
 * weight. A dog that eats no more than that, or is still thin by its score, keeps its ration (D).
 */
export function gainReached(input: FoodCase): FoodDraft {
  const need = needOf(input);
  const running = input.runningKcalPerDay ?? 0;
  const kcal = need.kcal + running;
  const present = input.currentKcal ?? 0;
  const next = present <= 0 ? kcal : present <= kcal ? present : oneStep(input, kcal, -1);
  const verb = next < present ? 'go down in steps of 10 % towards' : 'keep the ration, beside';
  const text = `The target weight is reached: ${verb} ${need.text} ({${Math.round(kcal)} kcal} a day${running > 0 ? ', the planned running in it' : ''}), and weigh every two weeks.`;
  return {
    verdict: next === present ? 'keep' : 'change',
    kcalPerDay: next,
    reasons: [because('gain-target-reached', text, need.provenance, { kcal: Math.round(kcal) })],
    formula: {
      formula: 'present ration − 10 %, not below maintenance energy and the running',
      ...OWN,
    },
  };
}
