import { addDays, type IsoDay } from '../day.ts';
import type { Reason } from '../figure.ts';
import { from, OWN } from '../origin.ts';
import type { RampRuleValues } from '../rules/ramp.ts';
import { breakBefore, breakOf, breakSeen } from './breaks.ts';
import { buildRamp } from './build.ts';
import { checkRamp } from './check.ts';
import { resumeOf } from './course.ts';
import { courseOf } from './limits.ts';
import { lastDueWeek, readDone, type Done } from './done.ts';
import { seenIn, type Seen } from './judge.ts';
import { EPSILON } from './load.ts';
import { walkBaseOf } from './outcome.ts';
import { programmeOf } from './outing.ts';
import {
  lowered,
  MOST_UNDONE,
  placeAfter,
  repeated,
  repeatedCalmly,
  restartAt,
  restFits,
  resumeAt,
  steppedBack,
  undoneIn,
  type Followed,
} from './replay.ts';
import { settingOf } from './request.ts';
import type { Review, ReviewDecision, ReviewInput } from './reviewTypes.ts';
import type { Return } from './slots.ts';
import type { Ramp, RampRequest, RampResume } from './types.ts';
import { weekEnd } from './walk.ts';

/** From mildest to strictest. */
const STRICTNESS: readonly ReviewDecision[] = ['progress', 'hold', 'back', 'stop'];

/**
 * Looks at what came of a plan and draws up its next version.
 *
 * All done, sound and normal within 24 h: progress; so with one session missed of a week, or with
 * sessions held back by the weather or the owner, which only cost their days. Mild stiffness gone
 * within 24 h, two sessions of a week missed or shortened, a next day of which nothing is told:
 * hold (the week comes again). Stiffness over 24 h, or one that clears and returns: back one step
 * and 2 days off; a second time in 4 weeks two steps; a third, or mild stiffness after 3 of the
 * last 6 runs: vet. Six clean sessions settle it. Lameness, refusal, collapse, a neurological
 * sign, breathing distress, stiffness over 48 h: stop and vet; the stop stands until
 * `clearedByVetOn`. Missed time: up to 7 days the week is repeated, 8-14 days minus 25 %, 15-28
 * minus 50 % of the last whole week, longer from the walk base; then back by 25 % a week. After an
 * illness 48 h of normal appetite and energy, then half. The strictest wins.
 *
 * The new version keeps the request (goal, days, event, cap) and begins on `fromDay`. A stop has
 * no weeks. Nothing that was run above the plan raises the next load.
 *
 * @throws RangeError naming the argument: `day`, a result on a day without a session, unknown words.
 * @example reviewRamp({
 *   ramp: sample.ramp,
 *   results: [{ day: '2026-03-02', outcome: 'done', nextDay: 'normal' }],
 * }) // => { decision: 'progress', fromDay: '2026-03-03', … }
 * Sources: soreness rules of human rehabilitation (M); missed time and illness: our own choice (D).
 */
export function reviewRamp(input: ReviewInput): Review {
  const done = readDone(input);
  const { rules } = done;
  const followed = followedOf(input, done);
  const back = breakBefore(followed, rules);
  const response = seenIn(input, done);
  const seen = [...response, ...breakSeen(back, followed, rules)];
  const decision = strictest(seen);
  const reasons = reasonsOf(decision, seen, input.ramp, done);
  const review = {
    decision,
    reasons,
    fromDay: done.day,
    returnAfterBreak: breakOf(back),
    walkBaseFirst: decision !== 'stop' && needsWalkBase(back, input.ramp),
  };
  if (decision === 'stop') return { ...review, ramp: stopped(followed, reasons) };
  const from = decision === 'progress' ? keptFrom(followed, input, rules) : null;
  if (from !== null) {
    const kept = asPlanned(input, followed, from);
    if (breaksNothingNew(kept, input.ramp, from)) return { ...review, ramp: kept };
  }
  const steps = stepsBack(response);
  const mild = decision === 'hold' && response.some(isMild);
  const resume = resumeFor(mild ? 'mild' : decision, steps, back, input, followed);
  const earliest = firstDayFor(steps > 0, back, input, done);
  const firstDay = afterBrokenWeek(followed, earliest);
  const ramp = nextVersion(input, done.day, firstDay, resume);
  return { ...review, ramp };
}

const isMild = ({ decision, reason }: Seen): boolean =>
  decision === 'hold' && reason.code === 'review-mild-stiffness';

/** How many steps the responses ask for. */
function stepsBack(response: readonly Seen[]): number {
  const codes = response
    .filter(({ decision }) => decision === 'back')
    .map((seen) => seen.reason.code);
  if (codes.includes('review-again')) return 2;
  return codes.some((code) => code !== 'review-illness') ? 1 : 0;
}

/** A plan may have been kept before a rule existed; that rule then changes nothing. */
function sameRules(ramp: Ramp, rules: RampRuleValues): boolean {
  const kept: Readonly<Record<string, number | undefined>> = ramp.rules;
  return Object.entries(rules).every(([id, value]) => (kept[id] ?? value) === value);
}

function followedOf(input: ReviewInput, done: Done): Followed {
  const { ramp } = input;
  const course = courseOf(
    settingOf({ ...ramp.request, rules: done.rules, capPercent: ramp.capPercent }),
  );
  const place = placeAfter(course, ramp, done, lastDueWeek(done) + 1, input.unplanned);
  return { ramp, done, course, place };
}

function strictest(seen: readonly Seen[]): ReviewDecision {
  const rank = Math.max(0, ...seen.map(({ decision }) => STRICTNESS.indexOf(decision)));
  return STRICTNESS[rank]!;
}

const ALL_CLEAR: Reason = {
  code: 'review-all-clear',
  text: 'All done, sound, and normal within 24 h: go on as planned.',
  params: {},
  ...from('B', 'M', 'sorenessRules'),
};

const NOTHING_DUE: Reason = {
  code: 'review-nothing-due',
  text: 'No session was due since the plan was made: it stands.',
  params: {},
  ...OWN,
};

const SETTLED: Reason = {
  code: 'review-settled',
  text: 'Go on: what was seen or missed earlier no longer holds the plan.',
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
  decision: ReviewDecision | 'mild',
  steps: number,
  back: Return,
  { wellSince }: ReviewInput,
  followed: Followed,
): RampResume {
  const { place, course, done } = followed;
  if (back.kind === 'restart' || place.last === -1) return restartAt(followed);
  if (wellSince !== undefined) {
    const ill = lowered(place, done.rules.illnessPercent);
    const from = steps > 0 ? steppedBack(course, ill, steps) : ill;
    return { ...resumeAt(followed, from), holdsFirst: true };
  }
  if (steps > 0) return resumeAt(followed, steppedBack(course, place, steps));
  if (decision === 'mild') return resumeAt(followed, repeatedCalmly(course, place));
  return resumeAt(followed, decision === 'hold' ? repeated(place) : place);
}

/** A walking programme builds the walk base up itself. */
const needsWalkBase = (back: Return, ramp: Ramp): boolean =>
  back.kind === 'restart' && programmeOf(ramp) === 'running';

/** After a step back the dog has its days off; before the walk base a week for it (D). */
const WALK_BASE_DAYS = 7;

function firstDayFor(
  stepped: boolean,
  back: Return,
  { ramp, wellSince }: ReviewInput,
  { day, rules }: Done,
): IsoDay {
  if (needsWalkBase(back, ramp)) return addDays(day, WALK_BASE_DAYS);
  const rested = stepped ? addDays(day, 1 + rules.daysOffAfterBack) : day;
  if (wellSince === undefined) return rested;
  const well = addDays(wellSince, rules.illnessRestDays);
  return well > rested ? well : rested;
}

/**
 * A week in which the dog ran already is left to end before a new one begins: two weeks' load must
 * not come into the same seven days. Not where the event would be missed by it.
 */
function afterBrokenWeek({ ramp, done }: Followed, earliest: IsoDay): IsoDay {
  const index = lastDueWeek(done);
  const ran = done.due.some(({ weekIndex, minutes }) => weekIndex === index && minutes > 0);
  if (!ran) return earliest;
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

/**
 * The index of the week from which a plan goes on as it stands; its number of weeks where it came
 * to its goal; null where the weeks ahead have to be drawn up anew.
 */
function keptFrom(followed: Followed, input: ReviewInput, rules: RampRuleValues): number | null {
  const { ramp, done, course, place } = followed;
  if (ramp.weeks.length === 0 || !sameRules(ramp, rules)) return null;
  const from = ramp.weeks.findIndex(({ sessions }) => sessions.some(({ day }) => day >= done.day));
  if (from === -1) return goalMet(followed) ? ramp.weeks.length : null;
  if (done.asPlanned && input.unplanned === undefined) return from;
  const under = done.due.filter(({ weekIndex }) => weekIndex === from);
  // Where a plan waited, its weeks ran ahead of the dog: only the ladder tells where it stands.
  const due = under.length > 0 && !done.waited ? undoneIn(under) <= MOST_UNDONE : null;
  const next = ramp.weeks.slice(from).find(({ rung }) => rung !== undefined)?.rung;
  const last = course.ladder.rungs.length - 1;
  const inStep = due ?? (next !== undefined && next === Math.min(place.next, last));
  return inStep && restFits(followed, from, place.recent) ? from : null;
}

/**
 * What was really run may be too little for the weeks ahead, from the index `from` on, though the plan
 * is in step by its days.
 */
function breaksNothingNew(kept: Ramp, before: Ramp, from: number): boolean {
  const found = checkRamp(kept);
  const known = found.length === 0 ? [] : checkRamp(before);
  return found.every(({ code, weekIndex }) =>
    known.some((breach) => breach.code === code && breach.weekIndex === weekIndex + from),
  );
}

/** True once a run met the goal; of a walking programme, once the walk base was walked. */
function goalMet({ ramp, done, course }: Followed): boolean {
  if (programmeOf(ramp) === 'walking') return walkBaseOf(done, course.setting.goal) !== null;
  return done.due.some(
    ({ session, minutes }) =>
      session.kind === 'continuous' && minutes >= course.setting.goal - EPSILON,
  );
}

/** The plan goes on as it is: from the week the review falls into. */
function asPlanned(input: ReviewInput, followed: Followed, from: number): Ramp {
  const { ramp, done, course } = followed;
  const week = ramp.weeks[from];
  const before = placeAfter(course, ramp, done, from, input.unplanned);
  const earlier = done.due.findLast(({ weekIndex, minutes }) => weekIndex < from && minutes > 0);
  const resume = resumeOf(course, before, {
    weekNumber: week?.number ?? (ramp.weeks.at(-1)?.number ?? 0) + 1,
    lastRunDay: earlier?.session.day ?? ramp.request.resume?.lastRunDay ?? null,
    reviewedOn: done.day,
  });
  const { notBeforeDay: _, ...rest } = ramp.request;
  const startDay = week?.startDay ?? ramp.request.startDay;
  return {
    ...ramp,
    version: ramp.version + 1,
    request: { ...rest, startDay, resume },
    weeks: ramp.weeks.slice(from),
    stages: ramp.stages.filter(
      ({ untilDay }) => week !== undefined && (untilDay === null || untilDay >= startDay),
    ),
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
function stopped(followed: Followed, reasons: readonly Reason[]): Ramp {
  const { ramp, done } = followed;
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
    request: { ...stillAhead(ramp.request, done.day), resume: stoppedAt(followed) },
  };
}

/** Once the vet has cleared the dog, it goes on from a step before the last whole week. */
function stoppedAt(followed: Followed): RampResume {
  const { place, course } = followed;
  return place.last === -1
    ? restartAt(followed)
    : resumeAt(followed, steppedBack(course, place, place.last === place.next ? 2 : 1));
}
