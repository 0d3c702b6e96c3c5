import type { IsoDay, Weekday } from '../day.ts';
import type { Reason } from '../figure.ts';
import type { RuleChanges } from '../rules/all.ts';
import type { RampRuleId, RampRuleValues } from '../rules/ramp.ts';

/** How the dog comes to the plan. */
export const START_LEVELS = ['conditioned', 'unconditioned', 'post-injury'] as const;
export type StartLevel = (typeof START_LEVELS)[number];

/** What a plan trains: brisk walks up to the walk base, or running. */
export const PROGRAMMES = ['running', 'walking'] as const;
export type Programme = (typeof PROGRAMMES)[number];

/** What the plan builds up to: minutes without a break, or a distance at the owner's pace. */
export type RampGoal =
  | { readonly continuousMinutes: number }
  | { readonly distanceKm: number; readonly paceMinPerKm: number };

/** Stages of a plan, one change at a time: time first, the others afterwards where asked for. */
export type StageId = 'time' | 'pull' | 'hills' | 'speed';

export interface RampRequest {
  /** Running if absent, as in plans of older releases. */
  readonly programme?: Programme;
  readonly startDay: IsoDay;
  readonly start: StartLevel;
  /** 2–4 runs, never on consecutive days; a walking programme goes by the rule `walkDays`. */
  readonly sessionsPerWeek: number;
  readonly goal: RampGoal;
  readonly eventDay?: IsoDay;
  /** Weekly rise in run-minutes over the highest earlier week, 5–30 %; the start's default if absent. */
  readonly capPercent?: number;
  /** Days of the week the owner can run; all seven if absent. Monday = 0. */
  readonly weekdays?: readonly Weekday[];
  /** No running before this day (age gate, end of rest). */
  readonly notBeforeDay?: IsoDay;
  /** Days without running: holidays, away. */
  readonly daysOut?: readonly IsoDay[];
  /** The owner's pace, for the expected distance of a plan whose goal is minutes; 2–20 min/km. */
  readonly paceMinPerKm?: number;
  /** Minutes the owner runs without a break today; not told if absent. */
  readonly ownerMinutes?: number;
  /** A walking programme: minutes the dog walks briskly today; not known if absent. */
  readonly walkMinutesNow?: number;
  /** Stages to add after the goal is reached; none if absent. Not with an event. */
  readonly laterStages?: readonly Exclude<StageId, 'time'>[];
  /** The practice's own values of rules, inside their ranges. */
  readonly rules?: RuleChanges;
  /** Where a reviewed plan goes on from; absent for a new plan. */
  readonly resume?: RampResume;
}

/** How the dog was after a run. */
export type RunResponse = 'clean' | 'mild' | 'setback' | 'other';

/** A run of the last weeks, as it was really run. */
export interface RecentRun {
  readonly day: IsoDay;
  readonly minutes: number;
  readonly response: RunResponse;
}

/** Where a plan stands; what a new version goes on from. */
export interface RampResume {
  /** Number of the first week of the new version. */
  readonly weekNumber: number;
  /** Run-minutes of the highest week that still counts; 0 when running begins anew. */
  readonly peakMinutes: number;
  /** Run-minutes of the week before. */
  readonly previousMinutes: number;
  /** Index on the bout path; its length = continuous. */
  readonly stepIndex: number;
  /** Clean sessions done on this step. */
  readonly sessionsOnStep: number;
  /** Longest continuous run so far, minutes; 0 before the first. */
  readonly longestMinutes: number;
  /** Run-minutes of the fullest session of bouts so far; absent in plans of older releases. */
  readonly fullestMinutes?: number;
  /** The last day the dog ran; null when it has not run. */
  readonly lastRunDay: IsoDay | null;
  /** Plans of older releases: the first week holds exactly so many run-minutes. */
  readonly firstWeekMinutes: number | null;
  /** Which building week of the undisturbed plan comes next, from 0; absent in older plans. */
  readonly rung?: number;
  /** The one that was run last, in part at least; −1 before the first. */
  readonly lastRung?: number;
  /** True while the load comes back after a break, `previousMinutes` at a time. */
  readonly returning?: boolean;
  /** True after an illness: the first week holds `previousMinutes` and does not rise yet. */
  readonly holdsFirst?: boolean;
  /** True where the week before the first of this version was light already. */
  readonly lightWeekBefore?: boolean;
  /** The runs of the last 30 days or more, oldest first. */
  readonly recent?: readonly RecentRun[];
  /** Day of the review that made this version: sessions before it are judged and settled. */
  readonly reviewedOn: IsoDay;
}

export type SessionEffort = 'easy' | 'medium' | 'long';

/** The ground of a session; the text is in `SURFACES`. */
export type SurfaceId = 'soft-flat' | 'soft-trail' | 'soft-hilly';

/** The new thing of a later stage: so many times, so long each. */
export interface FocusDose {
  readonly times: number;
  readonly seconds: number;
}

/** One dated outing. Warm-up and cool-down are walked and are not run-minutes. */
export interface RampSession {
  readonly day: IsoDay;
  /** `walk`: a brisk walk of a walking programme, its minutes in `runMin` and `runMinutes`. */
  readonly kind: 'bouts' | 'continuous' | 'walk';
  readonly repeats: number;
  /** Minutes run in each repeat. */
  readonly runMin: number;
  /** Minutes walked after each repeat; 0 when continuous. */
  readonly walkMin: number;
  /** repeats × runMin. */
  readonly runMinutes: number;
  readonly effort: SessionEffort;
  readonly surface: SurfaceId;
  /** The one new thing of a later stage; null while only time changes. */
  readonly focus: Exclude<StageId, 'time'> | null;
  /** How much of the new thing; absent without one, and in plans of older releases. */
  readonly dose?: FocusDose;
  readonly warmUpMin: number;
  readonly coolDownMin: number;
  /** Kilometres run at the owner's pace, where a pace is known. */
  readonly distanceKm: number | null;
  /** True when the practitioner changed it by hand. */
  readonly edited?: boolean;
}

/** Whose present running limits a week. */
export type PaceSetter = 'dog' | 'owner' | 'both';

export interface RampWeek {
  /** Counted from 1; a later version goes on counting. */
  readonly number: number;
  readonly startDay: IsoDay;
  /** Run-minutes fall, then go on from the earlier peak. */
  readonly recovery: boolean;
  /** In the last, easy days before an event. */
  readonly easyBeforeEvent: boolean;
  readonly stage: StageId;
  /** Which building week of the undisturbed plan this is, from 0; absent in easy and recovery weeks and in older plans. */
  readonly rung?: number;
  /** True in weeks in which the load comes back after a break. */
  readonly returning?: boolean;
  /** Where on the bout path the week stands, e.g. "2 min run, 2 min walk" or "run without a break". */
  readonly step: string;
  /** Index on `boutPath(start)`; its length = continuous. */
  readonly stepIndex: number;
  /** The most run-minutes the rules allow in this week. */
  readonly capMinutes: number;
  readonly runMinutes: number;
  readonly sessions: readonly RampSession[];
  /** Who sets the pace of the week; absent where the owner's running was not told. */
  readonly paceSetBy?: PaceSetter;
  /** True when the practitioner changed a session of it by hand. */
  readonly edited?: boolean;
}

/** A stage of the plan on the calendar. */
export interface RampStage {
  readonly id: StageId;
  readonly fromDay: IsoDay;
  /** The last day of the stage; null while the goal is not reached. */
  readonly untilDay: IsoDay | null;
  readonly text: string;
}

/** Rules whose values leave no way on. */
export interface RuleCollision {
  readonly rules: readonly RampRuleId[];
  readonly text: string;
}

/** A ramp and the rules it was made with. Plain JSON: it is kept in the record as it stands. */
export interface Ramp {
  readonly request: RampRequest;
  /** 1 for a new plan; a review adds 1. */
  readonly version: number;
  readonly rules: RampRuleValues;
  readonly capPercent: number;
  readonly weeks: readonly RampWeek[];
  readonly stages: readonly RampStage[];
  /** The day of the session that first meets the goal; null when it is not met by the event. */
  readonly goalReachedOn: IsoDay | null;
  /** The earliest day a session can meet the goal inside the caps, event or none. */
  readonly earliestGoalDay: IsoDay | null;
  /** The earliest day an event at the goal can follow, an easy week between. */
  readonly earliestEventDay: IsoDay | null;
  /** With an event: what the longest run before it comes to. */
  readonly withinReach: WithinReach | null;
  /** Empty unless the rules' values exclude each other. */
  readonly collisions: readonly RuleCollision[];
  readonly reasons: readonly Reason[];
}

export interface WithinReach {
  /** Longest run without a break; 0 while the plan still runs in bouts. */
  readonly continuousMinutes: number;
  /** That run at the owner's pace, where one is known. */
  readonly distanceKm: number | null;
  /** Run-minutes of the longest session, bouts added up. */
  readonly sessionMinutes: number;
  /** Those minutes at the owner's pace, walks not counted. */
  readonly sessionKm: number | null;
}
