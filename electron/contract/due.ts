import { addDays, WEIGH_IN_DAYS } from '../../core/index.ts';

/** Why a dog stands on the due list. */
export type DueReason = 'weigh' | 'plan ends' | 'consent ends';

/** One line of the due list; a dog may stand on it for several reasons. */
export interface DueLine {
  readonly dogId: string;
  readonly name: string;
  readonly clientName: string;
  readonly reason: DueReason;
  /** The day of the weigh-in, of the plan's last session, or the last day of the vet's consent. */
  readonly day: string;
}

/** How many days ahead each reason is shown. Our own choice (D). */
export const DUE_AHEAD_DAYS: Readonly<Record<DueReason, number>> = {
  weigh: 7,
  'plan ends': 7,
  'consent ends': 30,
};

/** What is overdue for longer is no longer listed: the dog has likely left. Our own choice (D). */
export const DUE_PAST_DAYS = 90;

/**
 * The day of the next weighing; null before there is any. A weighing on or after the day the food
 * asks for answers it; the next is then due by the usual rhythm.
 */
export function weighDay(known: {
  readonly lastWeighedDay: string | null;
  readonly proposedWeighDay: string | null;
}): string | null {
  const { lastWeighedDay, proposedWeighDay } = known;
  if (lastWeighedDay === null) return proposedWeighDay;
  if (proposedWeighDay !== null && lastWeighedDay < proposedWeighDay) return proposedWeighDay;
  return addDays(lastWeighedDay, WEIGH_IN_DAYS.settled);
}
