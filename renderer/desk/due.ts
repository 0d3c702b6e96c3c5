import { daysBetween } from '../../core/day.ts';
import type { DueLine, DueReason } from '../../electron/contract/dogs/due.ts';
import { counted } from '../words.ts';

const DEEDS: Readonly<Record<DueReason, (name: string) => string>> = {
  weigh: (name) => `Weigh ${name}`,
  'plan ends': (name) => `Review the plan of ${name}`,
  'plan on hold': (name) => `Settle what the plan of ${name} waits for`,
  'consent ends': (name) => `Ask the vet again about ${name}`,
};

const PAST: Readonly<Record<DueReason, string>> = {
  weigh: 'weigh-in was due',
  'plan ends': 'plan ended',
  'plan on hold': 'on hold; was to end',
  'consent ends': 'the vet’s consent ended',
};

const AHEAD: Readonly<Record<DueReason, string>> = {
  weigh: 'weigh-in',
  'plan ends': 'last session',
  'plan on hold': 'on hold; was to end',
  'consent ends': 'last day of the vet’s consent',
};

/** What to do, e.g. "Weigh Rusk". */
export function dueDeed({ reason, name }: DueLine): string {
  return DEEDS[reason](name);
}

/** How near it is, e.g. "weigh-in was due 3 days ago" or "last session today". */
export function dueWhen({ reason, day }: DueLine, today: string): string {
  const days = daysBetween(today, day);
  if (days === 0) return `${AHEAD[reason]} today`;
  const count = counted(Math.abs(days), 'day');
  return days < 0 ? `${PAST[reason]} ${count} ago` : `${AHEAD[reason]} in ${count}`;
}
