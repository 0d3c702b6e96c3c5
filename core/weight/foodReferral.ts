import { OWN } from '../origin.ts';
import { idealWeight } from '../condition/idealWeight.ts';
import { referralFloor } from '../food/floors.ts';
import { LOSS_AIM_PERCENT } from './corridor.ts';
import { aimContradiction, type AimedAt } from './aimAndTarget.ts';
import { UNPLANNED_LOSS_PERCENT, weightDrift } from './drift.ts';
import { because, refer, STEP, type FoodDraft } from './foodDraft.ts';
import { STEP_PERCENT } from './foodStart.ts';
import { growthOf } from './foodGrowth.ts';
import type { AdjustFoodInput } from './foodTypes.ts';

/**
 * A target this far outside the range for the body condition is taken for a slip, % (D): one score
 * point, as a dog near its target is often scored a point apart.
 */
export const TARGET_TOLERANCE_PERCENT = 10;

/** Why no ration is proposed at all, before anything is computed; null when one may be. */
export function referFirst(input: AdjustFoodInput): FoodDraft | null {
  const rule = RULES.find(({ applies }) => applies(input));
  if (rule === undefined) return null;
  const referred = refer(rule.code, rule.text(input), OWN);
  return rule.moreFood === true ? withMoreFood(input, referred) : referred;
}

/** Up to this score a dog has nothing to lose (D). */
const LEAN_UP_TO = 5;

function withMoreFood(input: AdjustFoodInput, referred: FoodDraft): FoodDraft {
  const { currentKcal = 0, bcs, runningKcalPerDay = 0 } = input;
  const lean = bcs !== undefined && bcs <= LEAN_UP_TO;
  if (currentKcal <= 0 || (!lean && runningKcalPerDay <= 0)) return referred;
  const percent = STEP_PERCENT.usual;
  const text = `More food by ${percent} % until then.`;
  return {
    ...referred,
    verdict: 'change',
    kcalPerDay: currentKcal * (1 + percent / 100),
    reasons: [...referred.reasons, because('step', text, STEP, { percent })],
    formula: { formula: `present ration + ${percent} %`, ...STEP },
  };
}

interface ReferralRule {
  readonly code: string;
  readonly applies: (input: AdjustFoodInput) => boolean;
  readonly text: (input: AdjustFoodInput) => string;
  /** A lean or training dog gets more food meanwhile: nobody wants the loss. */
  readonly moreFood?: true;
}

/** In order: the first that applies is the one told. */
const RULES: readonly ReferralRule[] = [
  {
    code: 'unwell',
    applies: ({ unwell }) => unwell === true,
    text: () => 'The dog is not well: the vet has to see it before the food is changed.',
  },
  {
    code: 'unlike-itself',
    applies: ({ unlikeItself }) => unlikeItself === true,
    text: () =>
      'The dog eats less or drinks more than usual, or has loose stool: the vet has to see it before the food is changed.',
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
    code: 'adult-weight-missing',
    applies: (input) => input.growing === true && growthOf(input) === null,
    text: () =>
      'A growing dog is fed by its expected adult weight: enter the expected adult weight. Until then nothing is proposed; ask the vet.',
  },
  {
    code: 'lean-to-lose',
    applies: ({ bcs, goal }) => goal === 'lose' && bcs !== undefined && bcs <= 4,
    text: ({ bcs }) =>
      `Body condition ${bcs} of 9: a lean dog is not put on a weight-loss ration. Look at the aim again, and ask the vet.`,
  },
  {
    code: 'target-below-range',
    applies: (input) => input.goal === 'lose' && targetBelowRange(input),
    text: ({ targetWeightKg, weightKg, bcs }) => {
      const { low, high } = idealWeight({ weightKg, bcs: bcs! });
      const [from, to] = [low.toFixed(1), high.toFixed(1)];
      const range =
        from === to
          ? `weight for this condition score, {${to} kg}`
          : `range for this condition score, {${from} to ${to} kg}`;
      return `The target of {${targetWeightKg} kg} lies below the ${range}: check the target and the score before any ration is proposed, and ask the vet if both stand.`;
    },
  },
  {
    code: 'muscle-loss',
    applies: ({ muscle }) => muscle === 'moderate loss' || muscle === 'severe loss',
    text: ({ muscle }) =>
      `Muscle condition: ${muscle}. The vet has to find the cause before the food is changed.`,
  },
  {
    code: 'unexplained-loss',
    applies: ({ goal, trend }) => goal !== 'lose' && (trend?.high ?? 0) < -LOSS_AIM_PERCENT,
    text: () =>
      'The dog loses more than 1 % a week without a plan to lose: the vet has to find the cause.',
    moreFood: true,
  },
  {
    code: 'unexplained-loss',
    applies: ({ goal, trend }) =>
      goal !== 'lose' && trend !== undefined && weightDrift(trend)?.code === 'drift-vet',
    text: () =>
      `The dog lost ${UNPLANNED_LOSS_PERCENT} % or more without a plan to lose: the vet has to find the cause.`,
    moreFood: true,
  },
];

/**
 * An aim and a target that speak against each other: nothing is built on them. A growing dog is fed
 * for growth, whatever its aim.
 */
export function referContradiction(input: AdjustFoodInput): FoodDraft | null {
  const reason = input.growing === true ? null : aimContradiction(aimedAt(input));
  if (reason === null) return null;
  return { verdict: 'refer', kcalPerDay: null, reasons: [reason], referral: reason.text };
}

/** The aim of a food proposal with the weighings that tell whether its target is reached. */
export function aimedAt(input: AdjustFoodInput): AimedAt {
  const { goal, weightKg, targetWeightKg, initialWeightKg } = input;
  const started = initialWeightKg === undefined ? [] : [initialWeightKg];
  return { goal, weightKg, targetWeightKg, earlierKg: input.earlierKg ?? started };
}

function targetBelowRange({ targetWeightKg, weightKg, bcs }: AdjustFoodInput): boolean {
  if (bcs === undefined) return false;
  const { low } = idealWeight({ weightKg, bcs });
  return targetWeightKg < low * (1 - TARGET_TOLERANCE_PERCENT / 100);
}

/** A told ration below this share of the floor is an incomplete list, not a ration (D). */
const BELIEVED_SHARE_OF_FLOOR = 0.5;

/**
 * Turns a proposal below 0.8 × RER at target weight into a referral (D). On a running plan to lose
 * more food than now is the right direction even from below the floor: such a step stands, with the
 * vet as a warning.
 */
export function heedFloor(input: AdjustFoodInput, draft: FoodDraft): FoodDraft {
  const floor = referralFloor(Math.min(input.targetWeightKg, input.weightKg));
  const next = draft.kcalPerDay;
  if (next === null || next >= floor) return draft;
  const params = { kcal: Math.round(floor) };
  const line = `{${params.kcal} kcal} a day, 0.8 × resting energy of the target weight`;
  const present = input.currentKcal ?? 0;
  const losing = input.goal === 'lose' && input.onPlan === true;
  if (losing && next > present && present >= BELIEVED_SHARE_OF_FLOOR * floor) {
    const more = `Even with more food the ration lies below ${line}. Check that the diet list is whole, and ask the vet.`;
    return { ...draft, warnings: [because('still-below-floor', more, OWN, params)] };
  }
  const text = `${opening(draft, present)} below ${line}. Check that the diet list is whole; nothing is proposed, the vet decides.`;
  return refer('below-floor', text, OWN, params);
}

function opening({ kcalPerDay }: FoodDraft, present: number): string {
  return present > 0 && (kcalPerDay ?? 0) >= present
    ? 'The present ration lies'
    : 'The next step would fall';
}
