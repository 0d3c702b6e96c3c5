import type { RampGoal } from '../../core/training.ts';
import { fill, type Format } from '../format.ts';
import type { OwnerWords } from '../words/words.ts';

/** "run 30 min without a break", "two brisk walks of 30 min in one week", or a distance at a pace. */
export function goalText(
  goal: RampGoal,
  words: Pick<OwnerWords['plan'], 'goalMinutes' | 'goalDistance'>,
  format: Format,
): string {
  if ('continuousMinutes' in goal) {
    return fill(words.goalMinutes, { minutes: format.minutes(goal.continuousMinutes) });
  }
  return fill(words.goalDistance, {
    distance: format.distance(goal.distanceKm),
    pace: format.pace(goal.paceMinPerKm),
  });
}
