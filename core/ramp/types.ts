import type { IsoDay, Weekday } from '../day.ts';
import type { Reason } from '../figure.ts';
import type { RampRuleId, RampRuleValues } from '../rules/ramp.ts';

/** How the dog comes to the plan. */
export type StartLevel = 'conditioned' | 'unconditioned' | 'post-injury';

/** What the plan builds up to: minutes without a break, or a distance at the owner's pace. */
export type RampGoal =
  | { readonly continuousMinutes: number }
  | { readonly distanceKm: number; readonly paceMinPerKm: number };

export interface RampRequest {
  readonly startDay: IsoDay;
  readonly start: StartLevel;
  /** 2–4; running days are never consecutive. */
  readonly sessionsPerWeek: number;
  readonly goal: RampGoal;
  readonly eventDay?: IsoDay;
  /** Weekly rise in run-minutes over the highest earlier week, 5–30 %; the start's default if absent. */
  readonly capPercent?: number;
  /** Days of the week the owner can run; all seven if absent. Monday = 0. */
  readonly weekdays?: readonly Weekday[];
  /** Days without running: holidays, away. */
  readonly daysOut?: readonly IsoDay[];
  /** No running before this day (age gate, end of rest). */
  readonly notBeforeDay?: IsoDay;
  /** The practice's own values of rules, inside their ranges. */
  readonly rules?: Partial<Record<RampRuleId, number>>;
}

export type SessionEffort = 'easy' | 'medium' | 'long';

/** One dated outing. Warm-up and cool-down are walked and are not run-minutes. */
export interface RampSession {
  readonly day: IsoDay;
  readonly kind: 'bouts' | 'continuous';
  readonly repeats: number;
  /** Minutes run in each repeat. */
  readonly runMin: number;
  /** Minutes walked after each repeat; 0 when continuous. */
  readonly walkMin: number;
  /** repeats × runMin. */
  readonly runMinutes: number;
  readonly effort: SessionEffort;
  readonly warmUpMin: number;
  readonly coolDownMin: number;
  /** Kilometres run at the owner's pace, where a pace is known. */
  readonly distanceKm: number | null;
}

export interface RampWeek {
  /** Counted from 1. */
  readonly number: number;
  readonly startDay: IsoDay;
  readonly recovery: boolean;
  /** The last, easy week before an event. */
  readonly easyBeforeEvent: boolean;
  /** Where on the bout path the week stands, e.g. "2 min run, 2 min walk" or "continuous". */
  readonly step: string;
  /** The most run-minutes the rules allow in this week. */
  readonly capMinutes: number;
  readonly runMinutes: number;
  readonly sessions: readonly RampSession[];
}

/** A ramp and the rules it was made with. Plain JSON: it is kept in the record as it stands. */
export interface Ramp {
  readonly request: RampRequest;
  readonly rules: RampRuleValues;
  readonly capPercent: number;
  readonly weeks: readonly RampWeek[];
  /** The day of the session that first meets the goal; null when it is not met by the event. */
  readonly goalReachedOn: IsoDay | null;
  /** The earliest day a session can meet the goal inside the caps, event or none. */
  readonly earliestGoalDay: IsoDay | null;
  /** The earliest day an event at the goal can follow, an easy week between. */
  readonly earliestEventDay: IsoDay | null;
  /** With an event: what the longest continuous run before it comes to. */
  readonly withinReach: {
    readonly continuousMinutes: number;
    readonly distanceKm: number | null;
  } | null;
  readonly reasons: readonly Reason[];
}
