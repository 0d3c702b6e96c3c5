/** Why a dog stands on the due list. A plan that waits or was stopped is on hold. */
export type DueReason = 'weigh' | 'plan ends' | 'plan on hold' | 'consent ends';

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
  'plan on hold': 7,
  'consent ends': 30,
};

/** What is overdue for longer is no longer listed: the dog has likely left. Our own choice (D). */
export const DUE_PAST_DAYS = 90;
