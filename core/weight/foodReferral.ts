import type { Reason } from '../figure.ts';
import { referralFloor } from '../food/floors.ts';
import { LOSS_AIM_PERCENT } from './corridor.ts';
import { UNPLANNED_LOSS_PERCENT, weightDrift } from './drift.ts';
import { OWN, refer, type FoodDraft } from './foodDraft.ts';
import type { AdjustFoodInput } from './foodTypes.ts';

/** Why no ration is proposed at all, before anything is computed; null when one may be. */
export function referFirst(input: AdjustFoodInput): FoodDraft | null {
  const rule = RULES.find(({ applies }) => applies(input));
  return rule === undefined ? null : refer(rule.code, rule.text(input), OWN);
}

interface ReferralRule {
  readonly code: string;
  readonly applies: (input: AdjustFoodInput) => boolean;
  readonly text: (input: AdjustFoodInput) => string;
}

/** In order: the first that applies is the one told. */
const RULES: readonly ReferralRule[] = [
  {
    code: 'unwell',
    applies: ({ unwell }) => unwell === true,
    text: () => 'The dog is not well: the vet has to see it before the food is changed.',
  },
  {
    code: 'pregnant',
    applies: ({ pregnantOrNursing }) => pregnantOrNursing === true,
    text: () => 'A pregnant or nursing bitch is fed by the vet’s advice: nothing is proposed here.',
  },
  {
    code: 'too-thin',
    applies: ({ bcs }) => bcs !== undefined && bcs <= 2,
    text: ({ bcs }) =>
      `Body condition ${bcs} of 9: the vet has to find the cause before the food is changed.`,
  },
  {
    code: 'growing',
    applies: ({ growing, goal }) => growing === true && goal === 'lose',
    text: () => 'A growing dog is not put on a weight-loss ration: ask the vet.',
  },
  {
    code: 'lean-to-lose',
    applies: ({ bcs, goal }) => goal === 'lose' && bcs !== undefined && bcs <= 4,
    text: ({ bcs }) =>
      `Body condition ${bcs} of 9: a lean dog is not put on a weight-loss ration. Look at the aim again, and ask the vet.`,
  },
  {
    code: 'muscle-loss',
    applies: ({ muscle, goal }) =>
      goal === 'lose' && (muscle === 'moderate loss' || muscle === 'severe loss'),
    text: ({ muscle }) =>
      `Muscle condition: ${muscle}. Less food would cost more muscle: the vet has to find the cause first.`,
  },
  {
    code: 'unexplained-loss',
    applies: ({ goal, trend }) => goal !== 'lose' && (trend?.high ?? 0) < -LOSS_AIM_PERCENT,
    text: () =>
      'The dog loses more than 1 % a week without a plan to lose: the vet has to find the cause.',
  },
  {
    code: 'unexplained-loss',
    applies: ({ goal, trend }) =>
      goal !== 'lose' && trend !== undefined && weightDrift(trend)?.code === 'drift-vet',
    text: () =>
      `The dog lost ${UNPLANNED_LOSS_PERCENT} % or more without a plan to lose: the vet has to find the cause.`,
  },
];

/** Turns a proposal below 0.8 × RER at target weight into a referral; null when it stands (D). */
export function referBelowFloor(input: AdjustFoodInput, draft: FoodDraft): FoodDraft | null {
  const floor = referralFloor(Math.min(input.targetWeightKg, input.weightKg));
  if (draft.kcalPerDay === null || draft.kcalPerDay >= floor) return null;
  const kcal = Math.round(floor);
  const text = `${opening(draft)} below ${kcal} kcal a day, 0.8 × resting energy of the target weight. Check that the diet list is whole; nothing is proposed, the vet decides.`;
  const referred = refer('below-floor', text, OWN);
  const params = { kcal };
  return {
    ...referred,
    reasons: referred.reasons.map((reason): Reason => ({ ...reason, params })),
  };
}

function opening({ verdict }: FoodDraft): string {
  return verdict === 'keep' || verdict === 'wait'
    ? 'The present ration lies'
    : 'The next step would fall';
}
