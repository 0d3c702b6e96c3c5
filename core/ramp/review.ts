import { addDays, type IsoDay } from '../day.ts';
import type { Provenance, Reason } from '../figure.ts';
import { rampRuleValues, type RampRuleValues } from '../rules/ramp.ts';
import { breakBefore, breakOf, breakSeen } from './breaks.ts';
import { buildRamp } from './build.ts';
import { begunWeeks, lastDueWeek, readDone, weekAsRun, type Done } from './done.ts';
import { seenIn, type Seen } from './judge.ts';
import { backFrom, goOn, repeatFrom, restart, type Standing } from './resume.ts';
import type { Review, ReviewDecision, ReviewInput } from './reviewTypes.ts';
import type { Return } from './slots.ts';
import type { Ramp, RampRequest, RampResume } from './types.ts';
import { walkRamp, weekEnd } from './walk.ts';

/** From mildest to strictest. */
const STRICTNESS: readonly ReviewDecision[] = ['progress', 'hold', 'back', 'stop'];

/**
 * Looks at what came of a plan and draws up its next version.
 *
 * All done, sound and normal within 24 h: progress. Mild stiffness gone within 24 h, a session
 * missed or shortened, a next day of which nothing is told: hold (the week is repeated). Stiffness
 * over 24 h, or one that clears and returns: back one step and 2 days off. Lameness, refusal,
 * collapse, a neurological sign, breathing distress, stiffness over 48 h: stop and vet; the stop
 * stands until `clearedByVetOn`. Missed time: up to 7 days the week is repeated, 8–14 days minus
 * 25 %, 15–28 minus 50 % of the last week really run, longer from the walk base. The strictest
 * wins. A mild sign or a missed session no longer holds the plan once three clean sessions followed.
 *
 * The new version keeps the request (goal, days, event, cap) and begins on `fromDay`. A stop has
 * no weeks. Nothing that was run above the plan raises the next load.
 *
 * @throws RangeError naming the argument: `day`, a result on a day without a session, unknown words.
 * Sources: soreness rules of human rehabilitation (M); missed time: our own choice (D).
 */
export function reviewRamp(input: ReviewInput): Review {
  const done = readDone(input);
  const rules = rampRuleValues(input.rules ?? input.ramp.rules);
  const standing = standingOf(input, done);
  const back = breakBefore(standing, rules);
  const response = seenIn(input, done);
  const seen = [...response, ...breakSeen(back, standing, rules)];
  const decision = strictest(seen);
  const reasons = reasonsOf(decision, seen, input.ramp, done);
  const review = {
    decision,
    reasons,
    fromDay: done.day,
    returnAfterBreak: breakOf(back),
    walkBaseFirst: decision !== 'stop' && back.kind === 'restart',
  };
  if (decision === 'stop') return { ...review, ramp: stopped(standing, reasons) };
  const running = input.ramp.weeks.length > 0;
  if (decision === 'progress' && running && done.asPlanned && sameRules(input.ramp, rules)) {
    return { ...review, ramp: asPlanned(standing) };
  }
  const soreness = response.some((entry) => entry.decision === 'back');
  const resume = resumeFor(decision, soreness, back, standing);
  const earliest = firstDayFor(soreness, back, done.day, rules);
  const firstDay = afterBrokenWeek(standing, earliest);
  const ramp = nextVersion(input, done.day, firstDay, resume);
  return { ...review, ramp };
}

/** A plan may have been kept before a rule existed; that rule then changes nothing. */
function sameRules(ramp: Ramp, rules: RampRuleValues): boolean {
  const kept: Readonly<Record<string, number | undefined>> = ramp.rules;
  return Object.entries(rules).every(([id, value]) => (kept[id] ?? value) === value);
}

function standingOf(input: ReviewInput, done: Done): Standing {
  const begun = { ...input.ramp, weeks: begunWeeks(input.ramp, done) };
  const asRun = { ...begun, weeks: begun.weeks.map((week, index) => weekAsRun(done, index, week)) };
  return { ramp: input.ramp, done, planned: walkRamp(begun), run: walkRamp(asRun) };
}

function strictest(seen: readonly Seen[]): ReviewDecision {
  const rank = Math.max(0, ...seen.map(({ decision }) => STRICTNESS.indexOf(decision)));
  return STRICTNESS[rank]!;
}

const OWN: Provenance = { evidence: 'D', mark: 'D', sources: ['ownDecision'] };

const ALL_CLEAR: Reason = {
  code: 'review-all-clear',
  text: 'All done, sound, and normal within 24 h: go on as planned.',
  params: {},
  evidence: 'B',
  mark: 'M',
  sources: ['sorenessRules'],
};

const NOTHING_DUE: Reason = {
  code: 'review-nothing-due',
  text: 'No session was due since the plan was made: it stands.',
  params: {},
  ...OWN,
};

const SETTLED: Reason = {
  code: 'review-settled',
  text: 'What was seen earlier is settled: three clean sessions followed.',
  params: {},
  ...OWN,
};

function reasonsOf(
  decision: ReviewDecision,
  seen: readonly Seen[],
  ramp: Ramp,
  done: Done,
): Reason[] {
  if (seen.length === 0) return [anyNewlyDue(ramp, done) ? ALL_CLEAR : NOTHING_DUE];
  const rank = (entry: Seen): number => STRICTNESS.indexOf(entry.decision);
  const ordered = [...seen].sort((a, b) => rank(b) - rank(a)).map(({ reason }) => reason);
  return decision === 'progress' ? [SETTLED, ...ordered] : ordered;
}

/** Sessions before the last review were judged then. */
function anyNewlyDue({ request }: Ramp, { due }: Done): boolean {
  const since = request.resume?.reviewedOn;
  return due.some(({ session }) => since === undefined || session.day >= since);
}

function resumeFor(
  decision: ReviewDecision,
  soreness: boolean,
  back: Return,
  standing: Standing,
): RampResume {
  if (back.kind === 'restart') return restart(standing);
  if (decision === 'progress') return goOn(standing);
  if (decision === 'hold') return repeatFrom(standing);
  // A bad response and a break together: the lower load of the two.
  return backFrom(standing, back.kind === 'less' ? back.percent : 0, soreness);
}

/** After a step back the dog has its days off; before the walk base a week for it (D). */
const WALK_BASE_DAYS = 7;

function firstDayFor(soreness: boolean, back: Return, day: IsoDay, rules: RampRuleValues): IsoDay {
  if (back.kind === 'restart') return addDays(day, WALK_BASE_DAYS);
  return soreness ? addDays(day, 1 + rules.daysOffAfterBack) : day;
}

/**
 * A week in which the dog ran already is left to end before a new one begins: two weeks' load must
 * not come into the same seven days. Not where the event would be missed by it.
 */
function afterBrokenWeek({ ramp, run, done }: Standing, earliest: IsoDay): IsoDay {
  const index = lastDueWeek(done);
  if (index === -1 || run.weeks[index]!.week.runMinutes === 0) return earliest;
  const open = ramp.weeks[index]!.sessions.some(({ day }) => day >= done.day);
  const next = weekEnd(ramp, index);
  const { eventDay } = ramp.request;
  if (!open || next <= earliest || (eventDay !== undefined && next >= eventDay)) return earliest;
  return next;
}

function nextVersion(
  { ramp, rules }: ReviewInput,
  fromDay: IsoDay,
  firstDay: IsoDay,
  resume: RampResume,
): Ramp {
  const { eventDay, notBeforeDay, laterStages = [], ...rest } = ramp.request;
  const over = ramp.stages.filter(({ untilDay }) => untilDay !== null && untilDay < fromDay);
  const stages = laterStages.filter((id) => !over.some((stage) => stage.id === id));
  const earliest = notBeforeDay !== undefined && notBeforeDay > firstDay ? notBeforeDay : firstDay;
  const request: RampRequest = {
    ...rest,
    startDay: fromDay,
    ...(earliest > fromDay ? { notBeforeDay: earliest } : {}),
    ...(eventDay !== undefined && eventDay > earliest ? { eventDay } : {}),
    ...(stages.length === 0 ? {} : { laterStages: stages }),
    ...(rules === undefined ? {} : { rules }),
    resume,
  };
  return { ...buildRamp(request), version: ramp.version + 1 };
}

/** The plan goes on as it is: from the week the review falls into. */
function asPlanned(standing: Standing): Ramp {
  const { ramp, done } = standing;
  const next = ramp.weeks.findIndex(({ sessions }) => sessions.some(({ day }) => day >= done.day));
  if (next === -1) {
    const request = { ...ramp.request, resume: goOn(standing) };
    return { ...ramp, request, version: ramp.version + 1, weeks: [], stages: [] };
  }
  const walked = walkRamp(ramp).weeks[next]!;
  const week = ramp.weeks[next]!;
  const { before } = walked;
  const first = next === 0 ? (ramp.request.resume?.firstWeekMinutes ?? null) : null;
  const resume: RampResume = {
    weekNumber: week.number,
    peakMinutes: before.peak,
    previousMinutes: before.previous,
    stepIndex: before.stepIndex,
    sessionsOnStep: before.sessionsOnStep,
    longestMinutes: before.longest,
    fullestMinutes: before.fullest,
    lastRunDay: walked.lastRunBefore,
    firstWeekMinutes: first,
    reviewedOn: done.day,
  };
  const { notBeforeDay: _, ...rest } = ramp.request;
  return {
    ...ramp,
    version: ramp.version + 1,
    request: { ...rest, startDay: week.startDay, resume },
    weeks: ramp.weeks.slice(next),
    stages: ramp.stages.filter(({ untilDay }) => untilDay === null || untilDay >= week.startDay),
  };
}

/** A request from `day` on; an event that is over is dropped. */
function stillAhead({ eventDay, ...rest }: RampRequest, day: IsoDay): RampRequest {
  return {
    ...rest,
    startDay: day,
    ...(eventDay !== undefined && eventDay > day ? { eventDay } : {}),
  };
}

/** No running until the vet has seen the dog; it then goes on from a step back at most. */
function stopped(standing: Standing, reasons: readonly Reason[]): Ramp {
  const { ramp, done } = standing;
  return {
    ...ramp,
    version: ramp.version + 1,
    weeks: [],
    stages: [],
    goalReachedOn: null,
    earliestGoalDay: null,
    earliestEventDay: null,
    withinReach: null,
    reasons,
    request: { ...stillAhead(ramp.request, done.day), resume: backFrom(standing, 0, true) },
  };
}
