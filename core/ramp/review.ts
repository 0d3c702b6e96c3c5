import { addDays, daysBetween, type IsoDay } from '../day.ts';
import type { Reason } from '../figure.ts';
import { RAMP_RULES, rampRuleValues, type RampRuleId } from '../rules/ramp.ts';
import { changeNote, provenanceOf, type Rule } from '../rules/rule.ts';
import { buildRamp } from './build.ts';
import { begunWeeks, readDone, weekAsRun, type Done } from './done.ts';
import { seenIn, type Seen } from './judge.ts';
import { backFrom, goOn, repeatFrom, restart, type Standing } from './resume.ts';
import type { Review, ReviewDecision, ReviewInput } from './reviewTypes.ts';
import { returnAfter, type Return } from './slots.ts';
import type { Ramp, RampRequest, RampResume } from './types.ts';
import { walkRamp } from './walk.ts';

/** From mildest to strictest. */
const STRICTNESS: readonly ReviewDecision[] = ['progress', 'hold', 'back', 'stop'];

/**
 * Looks at what came of a plan and draws up its next version.
 *
 * All done, sound and normal within 24 h: progress. Mild stiffness gone within 24 h, a session
 * missed or shortened: hold (the week is repeated). Stiffness over 24 h, or one that clears and
 * returns: back one step and 2 days off. Lameness, refusal, collapse, a neurological sign,
 * breathing distress, stiffness over 48 h: stop and vet. Missed time: up to 7 days the week is
 * repeated, 8–14 days minus 25 %, 15–28 minus 50 %, longer from the walk base. The strictest wins.
 * A mild sign or a missed session no longer holds the plan once three clean sessions followed.
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
  const missed = missedDays(standing, done);
  const back = returnAfter(missed, rules);
  const response = seenIn(input, done);
  const seen = [...response, ...breakSeen(back, input, rules)];
  const decision = strictest(seen);
  const reasons = reasonsOf(decision, seen);
  const review = {
    decision,
    reasons,
    fromDay: done.day,
    returnAfterBreak: breakOf(back),
    walkBaseFirst: decision !== 'stop' && back.kind === 'restart',
  };
  if (decision === 'stop') return { ...review, ramp: stopped(input.ramp, reasons) };
  if (decision === 'progress' && done.asPlanned && input.rules === undefined) {
    return { ...review, ramp: asPlanned(input.ramp, done) };
  }
  const soreness = response.some((entry) => entry.decision === 'back');
  const resume = resumeFor(decision, soreness, back, standing);
  const ramp = nextVersion(input, done.day, firstDayFor(soreness, back, done.day, rules), resume);
  return { ...review, ramp };
}

function standingOf(input: ReviewInput, done: Done): Standing {
  const begun = { ...input.ramp, weeks: begunWeeks(input.ramp, done) };
  const asRun = { ...begun, weeks: begun.weeks.map((week, index) => weekAsRun(done, index, week)) };
  return { ramp: input.ramp, done, planned: walkRamp(begun), run: walkRamp(asRun) };
}

/** Days without running beyond the ordinary rest, up to the day of the review. */
function missedDays({ planned, ramp }: Standing, { day, lastRunDay, due }: Done): number {
  if (lastRunDay !== null) return daysBetween(lastRunDay, day) - 1 - planned.rhythm.restDays;
  const first = due[0]?.session.day ?? ramp.weeks[0]?.sessions[0]?.day;
  return first === undefined ? 0 : Math.max(0, daysBetween(first, day));
}

function breakOf(back: Return): Review['returnAfterBreak'] {
  if (back.kind === 'none' || back.kind === 'repeat') return null;
  const lessPercent = back.kind === 'less' ? back.percent : 100;
  return { days: back.missedDays, lessPercent };
}

function breakSeen(
  back: Return,
  { ramp }: ReviewInput,
  rules: Readonly<Record<RampRuleId, number>>,
): Seen[] {
  if (back.kind === 'none') return [];
  const days = back.missedDays;
  const seen = (decision: ReviewDecision, id: RampRuleId, code: string, text: string): Seen => {
    const rule: Rule = RAMP_RULES[id];
    const reason: Reason = {
      code,
      text: `${text}${changeNote(rule, rules[id])}.`,
      params: { days, version: ramp.version },
      ...provenanceOf(rule, rules[id]),
    };
    return { decision, reason };
  };
  if (back.kind === 'repeat') {
    const text = `${days} days missed: the week is repeated`;
    return [seen('hold', 'breakRepeatDays', 'review-break-repeat', text)];
  }
  if (back.kind === 'restart') {
    const text = `${days} days missed: back to the walk base, then from the start`;
    return [seen('back', 'breakLongDays', 'review-break-restart', text)];
  }
  const short = back.percent === rules.breakShortPercent && days <= rules.breakShortDays;
  const text = `${days} days missed: ${back.percent} % less than before`;
  const id = short ? 'breakShortPercent' : 'breakLongPercent';
  return [seen('back', id, 'review-break-less', text)];
}

function strictest(seen: readonly Seen[]): ReviewDecision {
  const rank = Math.max(0, ...seen.map(({ decision }) => STRICTNESS.indexOf(decision)));
  return STRICTNESS[rank]!;
}

const ALL_CLEAR: Reason = {
  code: 'review-all-clear',
  text: 'All done, sound, and normal within 24 h: go on as planned.',
  params: {},
  evidence: 'B',
  mark: 'M',
  sources: ['sorenessRules'],
};

function reasonsOf(decision: ReviewDecision, seen: readonly Seen[]): Reason[] {
  if (seen.length === 0) return [ALL_CLEAR];
  const rank = (entry: Seen): number => STRICTNESS.indexOf(entry.decision);
  const ordered = [...seen].sort((a, b) => rank(b) - rank(a)).map(({ reason }) => reason);
  return decision === 'progress' ? [SETTLED, ...ordered] : ordered;
}

const SETTLED: Reason = {
  code: 'review-settled',
  text: 'What was seen earlier is settled: three clean sessions followed.',
  params: {},
  evidence: 'D',
  mark: 'D',
  sources: ['ownDecision'],
};

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

function firstDayFor(
  soreness: boolean,
  back: Return,
  day: IsoDay,
  rules: Readonly<Record<RampRuleId, number>>,
): IsoDay {
  if (back.kind === 'restart') return addDays(day, WALK_BASE_DAYS);
  return soreness ? addDays(day, 1 + rules.daysOffAfterBack) : day;
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
function asPlanned(ramp: Ramp, done: Done): Ramp {
  const next = ramp.weeks.findIndex(({ sessions }) => sessions.some(({ day }) => day >= done.day));
  if (next === -1) {
    return { ...ramp, version: ramp.version + 1, weeks: [], stages: [] };
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

/** No running until the vet has seen the dog. */
function stopped(ramp: Ramp, reasons: readonly Reason[]): Ramp {
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
  };
}
