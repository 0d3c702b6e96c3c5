import { dayNumber } from '../day.ts';
import type { Reason } from '../figure.ts';
import { HAND } from './foodDraft.ts';
import { LOSS_MAX_PERCENT, LOSS_MIN_PERCENT, type CorridorPoint } from './corridor.ts';
import { weighingSd, type Weighing } from './weighing.ts';

/** How many errors of a weighing it must lie outside before it counts: one side of 90 % (D). */
const ERRORS_OUTSIDE = 1.645;

/**
 * Whether the latest weighing of a plan to lose lies outside its corridor by more than the error of
 * one weighing. Null inside it, without a corridor, and on its first day.
 * @example offCorridor(
 *   lossCorridor({ startDay: '2026-03-02', initialKg: 40, targetKg: 34 }),
 *   { day: '2026-04-27', weightKg: 39.9 },
 * )?.code // => 'above-corridor'
 * Source: the corridor's rates Hand et al. 2010 (S); the margin is our own choice (D).
 */
export function offCorridor(
  corridor: readonly CorridorPoint[],
  latest: Weighing | null,
): Reason | null {
  const bounds = latest === null ? null : boundsOn(corridor, latest.day);
  if (latest === null || bounds === null) return null;
  const margin = ERRORS_OUTSIDE * weighingSd(latest);
  if (latest.weightKg > bounds.high + margin) {
    return reason(
      'above-corridor',
      `The weight is above the corridor of the plan: the loss is slower than ${LOSS_MIN_PERCENT} % of the first weight a week.`,
    );
  }
  if (latest.weightKg < bounds.low - margin) {
    return reason(
      'below-corridor',
      `The weight is below the corridor of the plan: the loss is faster than ${LOSS_MAX_PERCENT} % of the first weight a week.`,
    );
  }
  return null;
}

/** Lowest and highest weight planned for a day, between the weeks in proportion. */
function boundsOn(
  corridor: readonly CorridorPoint[],
  day: string,
): Pick<CorridorPoint, 'low' | 'high'> | null {
  const [first] = corridor;
  if (first === undefined || day <= first.day) return null;
  const after = corridor.findIndex((point) => point.day >= day);
  if (after < 0) return corridor.at(-1)!;
  const [from, to] = [corridor[after - 1]!, corridor[after]!];
  const at = (point: CorridorPoint): number => dayNumber(point.day, 'corridor');
  const share = (dayNumber(day, 'weighing') - at(from)) / (at(to) - at(from));
  return {
    low: from.low + share * (to.low - from.low),
    high: from.high + share * (to.high - from.high),
  };
}

function reason(code: string, text: string): Reason {
  return { code, text, params: {}, ...HAND };
}
