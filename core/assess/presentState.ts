import type { IsoDay } from '../day.ts';
import type { Reason } from '../figure.ts';
import { minutesRun, wasRun } from '../ramp/done.ts';
import { programmeOf as trainedBy } from '../ramp/outing.ts';
import { reviewRamp } from '../ramp/review.ts';
import type { Review } from '../ramp/reviewTypes.ts';
import type { Programme, Ramp, RampSession, RampWeek } from '../ramp/types.ts';
import { onPlan } from '../readiness/screen.ts';
import type { Gate, Screening, ScreeningOutcome } from '../readiness/types.ts';
import type { FoodGoal } from '../weight/foodTypes.ts';
import { assess } from './assess.ts';
import { presentLine, type PresentLine } from './presentLine.ts';
import { plannedSessions, weekAt, type PlanVersion } from './plannedWeeks.ts';
import { asResult, reviewInput, type ToldResult } from './planReview.ts';
import type { AssessedDecision, AssessedVisit, Assessment, AssessInput } from './types.ts';
import { askedSessions, mayRunOn, unaskedDays, waitsFor } from './unasked.ts';

/** A version of the running plan as the record keeps it. */
export interface PresentPlan extends PlanVersion {
  readonly ramp: Ramp;
  /** The version in force. */
  readonly current: boolean;
  /** The visit it was made at; null when made between visits. */
  readonly visitId: string | null;
  readonly createdAt: string;
  readonly review: { readonly decision: string; readonly reasons: readonly Reason[] } | null;
}

/** A food decision as the record keeps it. */
export interface PresentDecision extends AssessedDecision {
  readonly visitId: string;
  readonly proposal: { readonly nextWeighInDay: IsoDay };
}

export interface PresentInput<P extends PresentPlan, D extends PresentDecision> {
  /** What `assess` takes; the visits with their ids. */
  readonly record: Omit<AssessInput, 'visits' | 'foodDecisions'> & {
    readonly visits: readonly (AssessedVisit & { readonly id: string })[];
    readonly foodDecisions: readonly D[];
  };
  /** All versions that count, oldest first. */
  readonly plans: readonly P[];
  readonly results: readonly ToldResult[];
}

/** What the dog is on. Only a plan under way, `running` or `walking`, announces outings. */
export type PresentProgramme<P> =
  /** No plan was made. */
  | { readonly kind: 'none' }
  /** A plan is in force, and something has to be settled before the next outing. */
  | {
      readonly kind: 'waiting';
      /** `outings`: the plan's days are over, and not all that became of them is told. */
      readonly for: 'vet' | 'walking' | 'walk base' | 'outings';
      readonly plan: P;
      readonly reasons: readonly Reason[];
    }
  /** Running ended until a vet has seen the dog. */
  | {
      readonly kind: 'stopped';
      readonly since: IsoDay;
      readonly plan: P;
      readonly reasons: readonly Reason[];
    }
  | UnderWay<P>
  | { readonly kind: 'finished'; readonly plan: P };

/** A plan that goes on: of runs, or of brisk walks up to the walk base. */
export interface UnderWay<P> {
  readonly kind: Programme;
  readonly plan: P;
  /** The week of today as it is numbered on paper; null before the first. */
  readonly week: RampWeek | null;
  /** Number of the last week. */
  readonly lastWeek: number;
  readonly next: RampSession | null;
}

/**
 * The programme, where it announces outings; null where none was made, it waits, stopped or ended.
 * @example
 * underWay(sample.state.programme)?.lastWeek // => 14
 * underWay({ kind: 'none' }) // => null
 */
export function underWay<P>(programme: PresentProgramme<P>): UnderWay<P> | null {
  return programme.kind === 'running' || programme.kind === 'walking' ? programme : null;
}

/**
 * The programme, where its plan waits or was stopped; null where there is none, it goes on or ended.
 * @example
 * heldBack(sample.state.programme) // => null
 */
export const heldBack = <P>(programme: PresentProgramme<P>) =>
  programme.kind === 'waiting' || programme.kind === 'stopped' ? programme : null;

/** What was told of the outings of a stretch of time. */
export interface OutingsTold {
  readonly planned: number;
  readonly done: number;
  readonly shortened: number;
  readonly missed: number;
  /** Held back by the weather or by the owner; they count for nothing. */
  readonly held: number;
  /** Over, and nothing was told of them. */
  readonly untold: number;
  /** Longest run without a break, min; null where none was run. */
  readonly longestRunMinutes: number | null;
}

export type DueWhat = 'weigh' | 'outing' | 'last outing' | 'consent ends';

/** Where a dog stands on a day: what every screen and sheet says of it, and nothing else. */
export interface PresentState<P = PresentPlan, D = PresentDecision> extends PresentLine {
  readonly day: IsoDay;
  /** The visit it rests on. */
  readonly visitDay: IsoDay;
  readonly assessment: Assessment;
  /** Of the screening, of what was told since, and of what stands in the way of the plan. */
  readonly mayRun: ScreeningOutcome;
  /** The screening with `mayRun` as its outcome, and every reason that leads to it. */
  readonly screening: Screening;
  readonly programme: PresentProgramme<P>;
  /** What the record makes of the plan in force today; null without one, or before it begins. */
  readonly review: Review | null;
  /** Outings since the visit before the last; since the plan began where there is none. */
  readonly outings: OutingsTold | null;
  /** Days of planned outings that nobody was asked for: the plan waited. */
  readonly unasked: readonly IsoDay[];
  /** All outings of the plan's versions so far; null without a plan. */
  readonly soFar: OutingsTold | null;
  /** What it is fed: the latest decision. Null before the first: then nothing is decided. */
  readonly ration: D | null;
  /** Of the last visit; a decision of an earlier one still feeds the dog. */
  readonly decidedAtLastVisit: boolean;
  readonly weight: NonNullable<PresentLine['weight']>;
  readonly aim: FoodGoal;
  /** Null without a plan. `day` is the one earliest day the goal is reached, null where it is not. */
  readonly goal: { readonly day: IsoDay | null; readonly reached: boolean } | null;
  /** The last outing of the plan in force, whatever it waits for; null without one or once stopped. */
  readonly planEndsOn: IsoDay | null;
  /** In order of days; what is overdue stands first. */
  readonly due: readonly { readonly what: DueWhat; readonly day: IsoDay }[];
}

/**
 * Puts together where a dog stands on `input.record.day`. Null before the first visit or weighing.
 * @throws RangeError when a stored quantity is out of range
 * @example
 * presentState(sample.runner)
 *   // => { mayRun: 'ready to start', aim: 'hold', planEndsOn: '2026-06-05', … }
 */
export function presentState<P extends PresentPlan, D extends PresentDecision>(
  input: PresentInput<P, D>,
): PresentState<P, D> | null {
  const { record, plans } = input;
  const assessment = assess(record);
  if (assessment === null) return null;
  const { day } = record;
  const visits = record.visits.filter((visit) => visit.day <= day);
  const latest = visits.at(-1)!;
  const plan = plans.find(({ current }) => current) ?? null;
  const unasked = unaskedDays(input);
  const review = plan === null ? null : reviewOf(input, plan, latest, assessment, unasked);
  const screened = mayRunOn(assessment.screening, plan);
  const soFar = outingsOf(input, unasked, '');
  const programme = untoldAtTheEnd(
    programmeOf(plan, review, screened, assessment, day),
    soFar,
    day,
  );
  const screening = screeningOf(assessment.screening, screened, programme);
  const decisions = record.foodDecisions.filter(({ decidedOn }) => decidedOn <= day);
  const ration = decisions.at(-1) ?? null;
  const line = presentLine(record);
  return {
    ...line,
    weight: line.weight!,
    aim: latest.foodGoal,
    day,
    visitDay: latest.day,
    assessment,
    mayRun: screening.outcome,
    screening,
    programme,
    review,
    outings: outingsOf(input, unasked, visits.at(-2)?.day ?? ''),
    unasked,
    soFar,
    ration,
    decidedAtLastVisit: ration !== null && ration.visitId === latest.id,
    goal: plan === null ? null : goalOf(plan.ramp, day),
    planEndsOn: plan === null ? null : lastOuting(plan),
    due: dueOf(programme, line, day),
  };
}

/**
 * What the record says of the plan in force. The last visit counts until a version was made at it or
 * since; null before the plan begins.
 */
function reviewOf<P extends PresentPlan, D extends PresentDecision>(
  { record, plans, results }: PresentInput<P, D>,
  plan: P,
  latest: AssessedVisit & { readonly id: string },
  assessment: Assessment,
  unasked: readonly IsoDay[],
): Review | null {
  const first = plannedSessions(plans)[0]?.day;
  if (plan.madeOn > record.day || (first !== undefined && first > record.day)) return null;
  const answered = plan.visitId === latest.id || plan.madeOn > latest.day;
  return reviewRamp(
    reviewInput({
      plan,
      sessions: results.filter(({ day }) => day <= record.day),
      rules: record.rules ?? {},
      day: record.day,
      clearedByVetOn: null,
      visit: answered ? null : latest,
      screening: answered ? null : assessment.screening.found,
      unasked,
    }),
  );
}

/** Where the plan waits or stopped by what was told, that is the outcome, with its reasons. */
function screeningOf(
  screening: Screening,
  screened: ScreeningOutcome,
  programme: PresentProgramme<unknown>,
): Screening {
  const isOnPlan = screened !== screening.outcome;
  const reasons = isOnPlan ? onPlan(screening.reasons) : screening.reasons;
  const gate = gateOf(programme);
  if (gate === null || screened !== 'ready to start') {
    return { ...screening, outcome: screened, reasons };
  }
  const added = (heldBack(programme)?.reasons ?? []).map((reason) => ({
    ...reason,
    gate,
    unseen: false,
    overriddenBecause: null,
  }));
  return {
    ...screening,
    outcome: gate,
    recommendedStart: null,
    reasons: [...added, ...reasons],
  };
}

function gateOf(programme: PresentProgramme<unknown>): Exclude<Gate, 'note'> | null {
  if (programme.kind === 'stopped') return 'vet first';
  if (programme.kind !== 'waiting') return null;
  return programme.for === 'walk base' || programme.for === 'outings' ? 'walking only' : null;
}

/** After a plan's last day the break that asks for the walk base may only be one of telling. */
function untoldAtTheEnd<P extends PresentPlan>(
  programme: PresentProgramme<P>,
  soFar: OutingsTold | null,
  day: IsoDay,
): PresentProgramme<P> {
  if (programme.kind !== 'waiting' || programme.for !== 'walk base') return programme;
  const endsOn = lastOuting(programme.plan);
  const isOver = endsOn !== null && endsOn < day;
  return isOver && soFar !== null && soFar.untold > 0
    ? { ...programme, for: 'outings' }
    : programme;
}

function programmeOf<P extends PresentPlan>(
  plan: P | null,
  review: Review | null,
  mayRun: ScreeningOutcome,
  { screening }: Assessment,
  day: IsoDay,
): PresentProgramme<P> {
  if (plan === null) return { kind: 'none' };
  if (plan.ramp.weeks.length === 0 && plan.review?.decision === 'stop') {
    return { kind: 'stopped', since: plan.madeOn, plan, reasons: plan.review.reasons };
  }
  const gates = screening.reasons.filter(
    ({ gate, overriddenBecause }) => gate !== 'note' && overriddenBecause === null,
  );
  const kind = trainedBy(plan.ramp);
  const waits = waitsFor(mayRun, kind);
  if (waits !== null) return { kind: 'waiting', for: waits, plan, reasons: gates };
  if (review?.decision === 'stop') {
    return { kind: 'stopped', since: day, plan, reasons: review.reasons };
  }
  if (review?.walkBaseFirst === true) {
    return { kind: 'waiting', for: 'walk base', plan, reasons: review.reasons };
  }
  const { weeks } = plan.ramp;
  const sessions = weeks.flatMap((week) => week.sessions);
  const next = sessions.find((session) => session.day >= day) ?? null;
  const lastWeek = weeks.at(-1)?.number ?? 0;
  if (next === null && (weeks.length === 0 || weekAt(plan.ramp, day) === null)) {
    return { kind: 'finished', plan };
  }
  return { kind, plan, week: weekAt(plan.ramp, day), lastWeek, next };
}

function outingsOf<P extends PresentPlan, D extends PresentDecision>(
  { plans, results, record }: PresentInput<P, D>,
  unasked: readonly IsoDay[],
  since: string,
): OutingsTold | null {
  if (plans.length === 0) return null;
  const { day: today } = record;
  const told = new Map(results.map((result) => [result.day, result]));
  // What is told of today counts; what is planned for it may still be ahead.
  const over = askedSessions(plannedSessions(plans), unasked, results).filter(
    ({ day }) => day >= since && (day < today || (day === today && told.has(day))),
  );
  const entries = over.map((session) => ({ session, result: told.get(session.day) ?? null }));
  const count = (outcome: ToldResult['outcome'] | null): number =>
    entries.filter(({ result }) => (result?.outcome ?? null) === outcome).length;
  const ran = entries.filter(({ result }) => result !== null && wasRun(result.outcome));
  return {
    planned: entries.length,
    done: count('done'),
    shortened: count('shortened'),
    missed: count('missed'),
    held: count('held'),
    untold: count(null),
    longestRunMinutes:
      ran.length === 0
        ? null
        : Math.max(...ran.map(({ session, result }) => longest(session, result!))),
  };
}

/** The longest run of an outing, min: as recorded, else as planned, but no more than was run. */
function longest(session: RampSession, result: ToldResult): number {
  return (
    result.longestRunMinutes ?? Math.min(session.runMin, minutesRun(session, asResult(result)))
  );
}

/**
 * The one day a plan names for its goal: when it is reached, else the earliest it can be; where an
 * event comes too early, the earliest an event can follow.
 * @example goalDay(sample.ramp) // => '2026-06-05'
 */
export function goalDay({
  goalReachedOn,
  earliestGoalDay,
  earliestEventDay,
  request,
}: Ramp): IsoDay | null {
  const earliest = request.eventDay === undefined ? earliestGoalDay : earliestEventDay;
  return goalReachedOn ?? earliest;
}

function goalOf(ramp: Ramp, day: IsoDay): NonNullable<PresentState['goal']> {
  const { goalReachedOn } = ramp;
  return { day: goalDay(ramp), reached: goalReachedOn !== null && goalReachedOn <= day };
}

/** The day of the last outing of a plan; null for one that was stopped. */
const lastOuting = ({ ramp }: PresentPlan): IsoDay | null =>
  // Days out can leave the last week without an outing.
  ramp.weeks.flatMap(({ sessions }) => sessions).at(-1)?.day ?? null;

function dueOf(
  programme: PresentProgramme<PresentPlan>,
  { weighDay, consent }: PresentLine,
  day: IsoDay,
): PresentState['due'] {
  const due: { what: DueWhat; day: IsoDay }[] = [];
  if (weighDay !== null) due.push({ what: 'weigh', day: weighDay });
  const going = underWay(programme);
  if (going !== null && going.next !== null) {
    due.push({ what: 'outing', day: going.next.day });
    const last = lastOuting(going.plan)!;
    if (last !== going.next.day) due.push({ what: 'last outing', day: last });
  }
  if (consent.endsOn !== null && consent.endsOn >= day) {
    due.push({ what: 'consent ends', day: consent.endsOn });
  }
  return due.sort((a, b) => a.day.localeCompare(b.day));
}
