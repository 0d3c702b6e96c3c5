import { addDays, type IsoDay } from '../day.ts';
import { WEIGH_IN_DAYS } from '../weight/adjustFood.ts';

/**
 * The day of the next weighing; null before there is any. A weighing on or after the day the food
 * asks for answers it; the next is then due by the usual rhythm.
 * @example
 * nextWeighIn({ lastWeighedDay: '2026-03-02', proposedWeighDay: '2026-03-16' }) // => '2026-03-16'
 */
export function nextWeighIn(known: {
  /** Of the weighings that answer a weigh-in. */
  readonly lastWeighedDay: IsoDay | null;
  readonly proposedWeighDay: IsoDay | null;
}): IsoDay | null {
  const { lastWeighedDay, proposedWeighDay } = known;
  if (lastWeighedDay === null) return proposedWeighDay;
  if (proposedWeighDay !== null && lastWeighedDay < proposedWeighDay) return proposedWeighDay;
  return addDays(lastWeighedDay, WEIGH_IN_DAYS.settled);
}
