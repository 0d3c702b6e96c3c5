import type { IsoDay } from '../day.ts';
import type { Reason } from '../figure.ts';
import type { LimbGrades } from '../readiness/types.ts';
import type { RuleChanges } from '../rules/all.ts';
import type { Ramp } from './types.ts';

/** `held`: held back by the weather or by the owner. It counts for nothing, the days aside. */
export const SESSION_OUTCOMES = ['done', 'shortened', 'missed', 'held'] as const;
export type SessionOutcome = (typeof SESSION_OUTCOMES)[number];

/** How the dog was afterwards and on the next day, mildest first. */
export const NEXT_DAY_RESPONSES = [
  'normal',
  'mild stiffness gone within 24 h',
  'stiffness over 24 h',
  'stiffness cleared and returned',
  'stiffness over 48 h',
] as const;
export type NextDayResponse = (typeof NEXT_DAY_RESPONSES)[number];

/** What ends running until a vet has seen the dog. */
export const STOP_SIGNS = [
  'lameness',
  'refusal',
  'collapse',
  'neurological sign',
  'breathing distress',
] as const;
export type StopSign = (typeof STOP_SIGNS)[number];

/** What the owner tells about one planned session. */
export interface SessionResult {
  /** The planned day of the session. */
  readonly day: IsoDay;
  readonly outcome: SessionOutcome;
  /** Run-minutes really run, where they were timed or read from a track. */
  readonly runMinutes?: number;
  /** Run-minutes of the longest outing of that day, where there were several. */
  readonly longestRunMinutes?: number | null;
  /** Absent or null: not told. */
  readonly nextDay?: NextDayResponse | null;
  readonly signs?: readonly StopSign[];
  readonly note?: string;
}

/** What the practitioner finds on the day of the review. */
export interface ReviewFindings {
  readonly lameness?: {
    readonly walk?: Partial<LimbGrades>;
    readonly trot?: Partial<LimbGrades>;
  };
  /** Ids from `RED_FLAGS`. */
  readonly signs?: readonly string[];
  /** The outcome of today's screening, where one was made. */
  readonly screening?: 'ready to start' | 'walking only' | 'vet first';
}

/** A run that the plan did not ask for, as a record or a track tells of it. */
export interface UnplannedRun {
  readonly day: IsoDay;
  readonly minutes: number;
}

export interface ReviewInput {
  /** The plan in force. */
  readonly ramp: Ramp;
  /** Day of the review; the new version begins on it. The day after the last result if absent. */
  readonly day?: IsoDay;
  readonly results?: readonly SessionResult[];
  readonly findings?: ReviewFindings;
  /** The practice's present rules; those of the plan if absent. */
  readonly rules?: RuleChanges;
  /** Since the last running the vet saw the dog and cleared it: earlier stop signs are settled. */
  readonly clearedByVetOn?: IsoDay;
  /** The first day of normal appetite and energy after an illness since the last running. */
  readonly wellSince?: IsoDay;
  /** Runs beside the plan: they count for the longest of the last 30 days. */
  readonly unplanned?: readonly UnplannedRun[];
  /** Days on which the plan waited: no session was asked for, and none counts unless it was run. */
  readonly unasked?: readonly IsoDay[];
}

/** Go on as planned, repeat, back one step, or stop and refer. */
export type ReviewDecision = 'progress' | 'hold' | 'back' | 'stop';

export interface Review {
  readonly decision: ReviewDecision;
  /** The decision's own reasons first, then what else was seen. */
  readonly reasons: readonly Reason[];
  /** The first day of the new version; nothing before it changes. */
  readonly fromDay: IsoDay;
  /** The new version, from `fromDay` on. After a stop it has no weeks. */
  readonly ramp: Ramp;
  /** A break that was found, and by how much the load falls for it. */
  readonly returnAfterBreak: { readonly days: number; readonly lessPercent: number } | null;
  /** True when the walk base has to be passed again before running. */
  readonly walkBaseFirst: boolean;
}

/** One session that differs between two versions. */
export interface RampDifference {
  readonly day: IsoDay;
  readonly kind: 'added' | 'removed' | 'changed' | 'moved';
  /** For a moved session, where it was. */
  readonly fromDay?: IsoDay;
  readonly before: string | null;
  readonly after: string | null;
  readonly minutesBefore: number;
  readonly minutesAfter: number;
}

export interface RampDiff {
  /** Sessions from this day on are compared. */
  readonly fromDay: IsoDay;
  readonly sessions: readonly RampDifference[];
  readonly goalReachedOn: { readonly before: IsoDay | null; readonly after: IsoDay | null };
  readonly capPercent: { readonly before: number; readonly after: number };
  /** Run-minutes of calendar weeks from `fromDay`. */
  readonly weeks: readonly {
    readonly startDay: IsoDay;
    readonly before: number;
    readonly after: number;
  }[];
  readonly rules: readonly {
    readonly id: string;
    readonly before: number;
    readonly after: number;
  }[];
}
