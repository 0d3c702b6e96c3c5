import type { IsoDay } from '../day.ts';
import type { Reason } from '../figure.ts';
import type { RampSession } from './types.ts';

/** What the practitioner may change in a session by hand. */
export interface SessionChange {
  readonly day?: IsoDay;
  readonly kind?: RampSession['kind'];
  readonly repeats?: number;
  readonly runMin?: number;
  readonly walkMin?: number;
}

/** One edit by hand. */
export type RampEdit =
  | { readonly kind: 'change'; readonly day: IsoDay; readonly to: SessionChange }
  | { readonly kind: 'remove'; readonly day: IsoDay }
  | { readonly kind: 'add'; readonly session: Required<SessionChange> }
  /** Scales the sessions of a week to so many run-minutes. */
  | { readonly kind: 'week'; readonly number: number; readonly runMinutes: number };

export const BREACH_CODES = [
  'session-too-long',
  'over-cap',
  'two-week-rise',
  'consecutive-days',
  'too-many-days',
  'no-rest-day',
  'recovery-missing',
  'bout-path',
  'step-too-soon',
  'first-run-too-long',
  'longest-not-followed-by-easy',
  'event-week-not-easy',
  'after-event',
  'before-allowed-day',
  'day-out',
  'weekday',
] as const;
export type BreachCode = (typeof BREACH_CODES)[number];

/** A rule that a plan does not keep. */
export interface Breach extends Reason {
  readonly code: BreachCode;
  /** Index in `ramp.weeks`. */
  readonly weekIndex: number;
  /** The session it is about; null for the week as a whole. */
  readonly day: IsoDay | null;
  /** `note` warns and forbids nothing. */
  readonly gravity: 'breach' | 'note';
  /** The practitioner's written reason for keeping it; null where none is given. */
  readonly keptBecause: string | null;
}

/** A written reason for a breach; without a day it covers the whole week. */
export interface KeptBreach {
  readonly code: BreachCode;
  readonly weekIndex: number;
  readonly day?: IsoDay | null;
  readonly reason: string;
}
