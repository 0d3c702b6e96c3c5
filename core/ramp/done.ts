import { ArgumentError, inRange, oneOf } from '../check.ts';
import { addDays, dayNumber, type IsoDay } from '../day.ts';
import { rampRuleValues, type RampRuleValues } from '../rules/ramp.ts';
import {
  NEXT_DAY_RESPONSES,
  SESSION_OUTCOMES,
  STOP_SIGNS,
  type ReviewInput,
  type SessionOutcome,
  type SessionResult,
} from './reviewTypes.ts';
import type { Ramp, RampSession } from './types.ts';

/** A shortened session whose minutes were not told counts for this part of the plan (D). */
const SHORTENED_SHARE = 0.5;

/** A session that was due, with what came of it; `result` is null where nothing was told. */
export interface DueSession {
  readonly session: RampSession;
  readonly weekIndex: number;
  readonly result: SessionResult | null;
  /** Run-minutes really run. */
  readonly minutes: number;
}

/** What the plan asked for up to the review, and what was done. */
export interface Done {
  readonly day: IsoDay;
  readonly due: readonly DueSession[];
  /** The last day on which the dog ran; null when it has not run. */
  readonly lastRunDay: IsoDay | null;
  /** The rules in force at the review. */
  readonly rules: RampRuleValues;
  /** True when every due session was done as planned, and none waited. */
  readonly asPlanned: boolean;
  /** True where sessions are past that nobody was asked for. */
  readonly waited: boolean;
}

/** The day of the review: as given, else the day after the last result, else the plan's first. */
export function reviewDay({ day, results = [], ramp }: ReviewInput): IsoDay {
  if (day !== undefined) {
    dayNumber(day, 'day');
    return day;
  }
  const last = results
    .map((result) => result.day)
    .sort()
    .at(-1);
  return last === undefined ? (ramp.weeks[0]?.startDay ?? ramp.request.startDay) : addDays(last, 1);
}

/**
 * Lays the owner's results over the plan. A session without a result counts as missed, unless nobody
 * was asked for it.
 * @throws RangeError for a result on a day without a session, or a word that is not on the lists.
 */
export function readDone(input: ReviewInput): Done {
  const day = reviewDay(input);
  const results = new Map((input.results ?? []).map((result) => [result.day, result]));
  const planned = new Set<IsoDay>();
  const unasked = new Set(input.unasked);
  const due: DueSession[] = [];
  let waited = false;
  input.ramp.weeks.forEach((week, weekIndex) => {
    for (const session of week.sessions) {
      planned.add(session.day);
      const result = results.get(session.day) ?? settled(input.ramp, session);
      if (session.day >= day && result === null) continue;
      if (unasked.has(session.day) && !tellsMore(result)) {
        waited = true;
        continue;
      }
      due.push({ session, weekIndex, result, minutes: minutesRun(session, result) });
    }
  });
  for (const result of results.values()) checkResult(result, planned);
  const ran = due.filter(({ minutes }) => minutes > 0);
  return {
    day,
    due,
    rules: rampRuleValues(input.rules ?? input.ramp.rules),
    lastRunDay: ran.at(-1)?.session.day ?? input.ramp.request.resume?.lastRunDay ?? null,
    asPlanned:
      !waited &&
      due.every(
        ({ result, session, minutes }) =>
          result?.outcome === 'done' && minutes >= session.runMinutes,
      ),
    waited,
  };
}

/** True where more is told of a session than that it did not take place. */
function tellsMore(result: SessionResult | null): boolean {
  if (result === null) return false;
  return wasRun(result.outcome) || (result.signs ?? []).length > 0;
}

/** A session before the review that made this version was judged then, and counts as clean; what is told since counts. */
function settled({ request }: Ramp, { day }: RampSession): SessionResult | null {
  const reviewedOn = request.resume?.reviewedOn;
  return reviewedOn !== undefined && day < reviewedOn
    ? { day, outcome: 'done', nextDay: 'normal' }
    : null;
}

function checkResult(result: SessionResult, planned: ReadonlySet<IsoDay>): void {
  dayNumber(result.day, 'results.day');
  if (!planned.has(result.day)) {
    throw new ArgumentError(
      'results.day',
      'YYYY-MM-DD',
      undefined,
      `results.day must be that of a session of the plan, but ${result.day} has none`,
    );
  }
  oneOf('results.outcome', result.outcome, SESSION_OUTCOMES);
  if (result.nextDay) oneOf('results.nextDay', result.nextDay, NEXT_DAY_RESPONSES);
  for (const sign of result.signs ?? []) oneOf('results.signs', sign, STOP_SIGNS);
  if (result.runMinutes !== undefined) {
    inRange('results.runMinutes', result.runMinutes, 'min', { min: 0, max: 600 });
  }
}

/** What was timed counts; of a session held back nothing is guessed. */
export function minutesRun(session: RampSession, result: SessionResult | null): number {
  if (result === null || result.outcome === 'missed') return 0;
  if (result.runMinutes !== undefined) return result.runMinutes;
  if (result.outcome === 'held') return 0;
  return result.outcome === 'done' ? session.runMinutes : session.runMinutes * SHORTENED_SHARE;
}

/**
 * True where the dog ran, if only in part.
 * @example
 * wasRun('shortened') // => true
 * wasRun('held') // => false
 */
export function wasRun(outcome: SessionOutcome): boolean {
  return outcome === 'done' || outcome === 'shortened';
}

/** Done in full, normal on the next day, and without a sign. */
export function isClean({ result }: DueSession): boolean {
  if (result?.outcome !== 'done' || result.nextDay !== 'normal') return false;
  return (result.signs ?? []).length === 0;
}

/** The index of the last week with a session that was due; −1 before the first. */
export function lastDueWeek(done: Done): number {
  return done.due.at(-1)?.weekIndex ?? -1;
}

/** The index of the last week in which the dog ran; −1 before the first. */
export function lastRunWeek(done: Done): number {
  return done.due.findLast(({ minutes }) => minutes > 0)?.weekIndex ?? -1;
}
