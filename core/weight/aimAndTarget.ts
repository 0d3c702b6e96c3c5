import type { Reason } from '../figure.ts';
import { OWN } from '../origin.ts';
import { because } from './foodDraft.ts';
import type { FoodGoal } from './foodTypes.ts';

/** An aim, the target it is to lead to, and where the dog stands. Weights in kg. */
export interface AimedAt {
  readonly goal: FoodGoal;
  readonly weightKg: number;
  readonly targetWeightKg: number;
  /** Weighings before the present one, in any order; none at an intake. */
  readonly earlierKg?: readonly number[];
}

/** Where a dog stands between its aim and its target. */
export type AimState =
  /** The target is still ahead, or weight is to be held. */
  | 'ahead'
  /** An earlier weighing lay on the other side of the target: the dog has come to it. */
  | 'reached'
  /** The target was never ahead: aim and target speak against each other. */
  | 'contradictory';

/**
 * Tells a target that has been reached from one that was never ahead. A dog losing towards 25 kg that
 * now weighs 24.9 kg has reached it if it once weighed more than 25 kg; with no such weighing, "lose"
 * and 25 kg cannot both be meant (D).
 * @example
 * aimState({ goal: 'lose', weightKg: 24.9, targetWeightKg: 25, earlierKg: [27] })
 *   // => 'reached'
 * aimState({ goal: 'lose', weightKg: 24.9, targetWeightKg: 25 }) // => 'contradictory'
 */
export function aimState({ goal, weightKg, targetWeightKg, earlierKg = [] }: AimedAt): AimState {
  if (goal === 'hold') return 'ahead';
  const side = goal === 'lose' ? 1 : -1;
  const ahead = (kg: number): boolean => side * (kg - targetWeightKg) > 0;
  if (ahead(weightKg)) return 'ahead';
  return earlierKg.some(ahead) ? 'reached' : 'contradictory';
}

/**
 * What is wrong where aim and target speak against each other; null where they do not.
 * @example
 * aimContradiction({ goal: 'lose', weightKg: 20, targetWeightKg: 25 })?.code
 *   // => 'target-not-below'
 * aimContradiction({ goal: 'lose', weightKg: 27, targetWeightKg: 25 }) // => null
 */
export function aimContradiction(aimed: AimedAt): Reason | null {
  if (aimState(aimed) !== 'contradictory') return null;
  const { goal, weightKg, targetWeightKg } = aimed;
  const [code, side, aim] =
    goal === 'lose'
      ? (['target-not-below', 'below', 'lose'] as const)
      : (['target-not-above', 'above', 'gain'] as const);
  const text = `Target weight must be ${side} the present weight of {${weightKg.toFixed(1)} kg} while the aim is to ${aim}, but is {${targetWeightKg.toFixed(1)} kg}: change the target or the aim. Until then no food is proposed.`;
  return because(code, text, OWN, { weightKg, targetWeightKg });
}
