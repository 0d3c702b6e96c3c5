import type { SessionInput } from '../../electron/contract/records.ts';
import { askedOf, inputOf, outcomeOnly, type ToldSession } from './timeline.ts';

/**
 * The results of everything still asked for when all went as planned: done, and normal the next day
 * where that day is over. A session with a sign that stops running is left to be told by itself.
 */
export function allAsPlanned(told: readonly ToldSession[], today: string): readonly SessionInput[] {
  return told.flatMap((entry) => {
    const asked = askedOf(entry, today);
    if (asked === null || (entry.result?.signs.length ?? 0) > 0) return [];
    const { day } = entry.session;
    const result = entry.result === null ? outcomeOnly(day, 'done') : inputOf(entry.result);
    return [{ ...result, nextDay: day < today ? ('normal' as const) : null }];
  });
}
