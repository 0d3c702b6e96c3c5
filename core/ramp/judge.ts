import { addDays } from '../day.ts';
import type { Provenance, Reason } from '../figure.ts';
import { from, OWN, PRACTICE } from '../origin.ts';
import { redFlagLabel } from '../readiness/signs.ts';
import { isClean, type Done, type DueSession } from './done.ts';
import { programmeOf } from './outing.ts';
import { MOST_UNDONE, runsOf, undoneIn } from './replay.ts';
import type { ReviewDecision, ReviewInput, SessionResult } from './reviewTypes.ts';
import type { RecentRun } from './types.ts';
import { RAMP_RULES } from '../rules/ramp.ts';
import { provenanceOf } from '../rules/provenance.ts';

/** One thing that was seen, and what it asks for. */
export interface Seen {
  readonly decision: ReviewDecision;
  readonly reason: Reason;
}

const SORENESS: Provenance = from('B', 'M', 'sorenessRules');
/** What ends running rests on practice and our own caution; the human rules only agree with it. */
const STOPPING: Provenance = from('D', 'CP', 'commonPractice', 'ownDecision', 'sorenessRules');
const VET = 'The vet examines the dog and clears it in writing.';

/** Codes of what ends running until the vet clears the dog. */
const STOPS: ReadonlySet<string> = new Set([
  'review-stop-sign',
  'review-stiff-48',
  'review-lameness-walk',
  'review-lameness-trot',
  'review-sign',
  'review-vet-first',
  'review-not-cleared',
  'review-third',
]);
/** Codes of what asks for days off and a step back; a break or an illness asks for less alone. */
const SETBACKS: ReadonlySet<string> = new Set([
  'review-stiff-24',
  'review-stiff-returned',
  'review-again',
]);
const WALKING: ReadonlySet<string> = new Set(['review-walking-only', 'review-still-walking']);

/**
 * True where a review goes back for what the dog showed, not for time missed.
 * @example isSetback(reviewRamp({
 *   ramp: sample.ramp,
 *   results: [{ day: '2026-03-02', outcome: 'done', nextDay: 'stiffness over 24 h' }],
 * }).reasons) // => true
 */
export const isSetback = (reasons: readonly Reason[]): boolean =>
  reasons.some(({ code }) => SETBACKS.has(code));

/**
 * True where a review holds a plan because none of it was done: it begins, and repeats nothing.
 * @example isBeginning(reviewRamp({ ramp: sample.ramp, results: [] }).reasons) // => false
 */
export const isBeginning = (reasons: readonly Reason[]): boolean =>
  reasons.some(({ code }) => code === 'review-not-begun');

/** Everything in results and findings that bears on the decision. */
export function seenIn(input: ReviewInput, done: Done): Seen[] {
  return [
    ...notCleared(input, done),
    ...findingsSeen(input),
    ...done.due.flatMap((due) => resultSeen(input, done, due)),
    ...setbacksSeen(input, done),
    ...illnessSeen(input, done),
    ...missedSeen(done),
  ];
}

/** A stop stands until the vet, or for "walking only" a new screening, lifts it. */
function notCleared({ ramp, clearedByVetOn, findings }: ReviewInput, { day }: Done): Seen[] {
  if (ramp.weeks.length > 0) return [];
  const codes = ramp.reasons.map(({ code }) => code);
  const stopped = codes.some((code) => STOPS.has(code));
  if (!stopped && !codes.some((code) => WALKING.has(code))) return [];
  const since = ramp.request.startDay;
  if (clearedByVetOn !== undefined && clearedByVetOn >= since && clearedByVetOn <= day) return [];
  const params = { day: since };
  if (stopped) {
    const text = `Running was stopped on ${since}, and no vet has cleared the dog since.`;
    return [stop('review-not-cleared', text, params, PRACTICE)];
  }
  if (findings?.screening === 'ready to start') return [];
  const text = `Walking only since ${since}, and no screening has said otherwise.`;
  return [{ decision: 'stop', reason: walkingReason('review-still-walking', text, params) }];
}

function walkingReason(code: string, text: string, params: Reason['params']): Reason {
  const change = 'The reasons of the screening are settled.';
  return { code, text, params, change, ...PRACTICE };
}

function findingsSeen({ ramp, findings = {} }: ReviewInput): Seen[] {
  const seen: Seen[] = [];
  for (const gait of ['walk', 'trot'] as const) {
    const grades = Object.values(findings.lameness?.[gait] ?? {});
    const worst = Math.max(0, ...grades.map((grade) => grade ?? 0));
    if (worst === 0) continue;
    const text = `Lame at ${gait} on the day of the review, grade ${worst} of 5.`;
    seen.push(stop(`review-lameness-${gait}`, text, { grade: worst }, PRACTICE));
  }
  for (const sign of findings.signs ?? []) {
    const text = `${redFlagLabel(sign) ?? sign}.`;
    seen.push(stop('review-sign', text, { sign }, PRACTICE));
  }
  if (findings.screening === 'vet first') {
    const text = 'Today’s screening says: vet first.';
    seen.push(stop('review-vet-first', text, {}, PRACTICE));
  }
  if (findings.screening === 'walking only' && programmeOf(ramp) === 'running') {
    const text = 'Today’s screening says: walking only.';
    seen.push({ decision: 'stop', reason: walkingReason('review-walking-only', text, {}) });
  }
  return seen;
}

function stop(code: string, text: string, params: Reason['params'], from: Provenance): Seen {
  return { decision: 'stop', reason: { code, text, params, change: VET, ...from } };
}

function resultSeen(input: ReviewInput, done: Done, due: DueSession): Seen[] {
  const { result } = due;
  if (result === null) return [];
  const settled = input.clearedByVetOn !== undefined && input.clearedByVetOn > result.day;
  return [...stopSigns(result, settled), ...responses(done, due, settled)];
}

function stopSigns(result: SessionResult, settled: boolean): Seen[] {
  if (settled) return [];
  return (result.signs ?? []).map((sign) => {
    const text = `${sign[0]!.toUpperCase()}${sign.slice(1)} on ${result.day}.`;
    return stop('review-stop-sign', text, { sign, day: result.day }, STOPPING);
  });
}

function responses(done: Done, due: DueSession, settled: boolean): Seen[] {
  const { day, nextDay } = due.result!;
  const params = { day, response: nextDay ?? '' };
  const reason = (code: string, text: string): Reason => ({ code, text, params, ...SORENESS });
  if (nextDay === 'stiffness over 48 h' && !settled) {
    return [stop('review-stiff-48', `Stiff for over 48 h after ${day}.`, params, STOPPING)];
  }
  const clean = cleanAfter(done, due);
  const over = settled || clean >= done.rules.settledAfter;
  const back = (code: string, text: string): Seen => {
    const seen: Reason = { ...reason(code, text), rules: ['daysOffAfterBack', 'settledAfter'] };
    return { decision: over ? 'progress' : 'back', reason: seen };
  };
  if (nextDay === 'stiffness over 24 h') {
    return [back('review-stiff-24', `Stiff for over 24 h after ${day}.`)];
  }
  if (nextDay === 'stiffness cleared and returned') {
    return [back('review-stiff-returned', `Stiffness after ${day} cleared and came back.`)];
  }
  if (nextDay === 'mild stiffness gone within 24 h') {
    const text = `Mild stiffness after ${day}, gone within 24 h.`;
    const seen = reason('review-mild-stiffness', text);
    return [{ decision: clean < HELD_FOR ? 'hold' : 'progress', reason: seen }];
  }
  return [];
}

/** A mild sign, or a session missed, counts until a week's worth of clean sessions followed (D). */
const HELD_FOR = 3;

function cleanAfter(done: Done, due: DueSession): number {
  return done.due.slice(done.due.indexOf(due) + 1).filter(isClean).length;
}

/** Mild stiffness so often in the last runs is for the vet (D). */
const MILD = { times: 3, ofLast: 6 } as const;

/** Setbacks that come again: the second goes back two steps, the third to the vet. */
function setbacksSeen({ clearedByVetOn, ramp }: ReviewInput, done: Done): Seen[] {
  const { rules } = done;
  const since = addDays(done.day, -rules.setbackDays);
  const runs = [...(ramp.request.resume?.recent ?? []), ...runsOf(done.due)].filter(
    ({ day }) => clearedByVetOn === undefined || day >= clearedByVetOn,
  );
  const open = runs.filter(
    ({ day, response }, index) =>
      response === 'setback' && day >= since && cleanIn(runs.slice(index + 1)) < rules.settledAfter,
  );
  const mild = runs.slice(-MILD.ofLast).filter(({ response }) => response === 'mild');
  const isNew = (run: RecentRun | undefined): boolean =>
    done.due.some(({ session }) => session.day === run?.day);
  const from: Provenance = { ...SORENESS, rules: ['setbackDays', 'settledAfter'] };
  if (open.length >= 3 && isNew(open.at(-1))) {
    const text = `Stiff for over 24 h, or again, after ${open.length} runs in ${rules.setbackDays} days.`;
    return [stop('review-third', text, { count: open.length }, from)];
  }
  if (mild.length >= MILD.times && isNew(mild.at(-1))) {
    const text = `Mild stiffness after ${mild.length} of the last ${MILD.ofLast} runs.`;
    return [stop('review-third', text, { count: mild.length }, from)];
  }
  if (open.length < 2 || !isNew(open.at(-1))) return [];
  const text = `The second setback in ${rules.setbackDays} days: back two steps.`;
  return [
    { decision: 'back', reason: { code: 'review-again', text, params: { count: 2 }, ...from } },
  ];
}

const cleanIn = (runs: readonly RecentRun[]): number =>
  runs.filter(({ response }) => response === 'clean').length;

/** After an illness half the load, once the dog has been well for two days. */
function illnessSeen({ wellSince }: ReviewInput, { rules }: Done): Seen[] {
  if (wellSince === undefined) return [];
  const { illnessPercent: percent, illnessRestDays: days } = rules;
  const text = `Ill, well again since ${wellSince}: ${days} days of normal appetite and energy first, then ${percent} % less than before.`;
  const from = provenanceOf(RAMP_RULES.illnessPercent, percent, ['illnessRestDays']);
  const params = { day: wellSince, days, percent };
  return [{ decision: 'back', reason: { code: 'review-illness', text, params, ...from } }];
}

const UNDONE = [
  {
    code: 'review-not-told',
    verb: 'Nothing is told of',
    is: ({ result }: DueSession) => result === null,
  },
  {
    code: 'review-missed',
    verb: 'Missed:',
    is: ({ result }: DueSession) => result?.outcome === 'missed',
  },
  {
    code: 'review-shortened',
    verb: 'Shortened:',
    is: ({ result }: DueSession) => result?.outcome === 'shortened',
  },
  {
    code: 'review-held',
    verb: 'Held back by the weather or the owner:',
    is: ({ result }: DueSession) => result?.outcome === 'held',
  },
  {
    code: 'review-next-day-not-told',
    verb: 'Nothing is told of the next day after',
    is: ({ result, minutes }: DueSession) => minutes > 0 && (result?.nextDay ?? null) === null,
  },
] as const;

function missedSeen(done: Done): Seen[] {
  return UNDONE.flatMap(({ code, verb, is }): Seen[] => {
    const found = done.due.filter(is);
    const last = found.at(-1);
    if (last === undefined) return [];
    const day = last.session.day;
    const days =
      found.length > 3
        ? `${found.length} sessions, the last on ${day}`
        : found.map(({ session }) => session.day).join(', ');
    const params = { count: found.length, day };
    const reason: Reason = { code, text: `${verb} ${days}.`, params, ...OWN };
    const holds = code === 'review-next-day-not-told' || againNeeded(done, last);
    const neutral = code === 'review-held' || cleanAfter(done, last) >= HELD_FOR;
    return [{ decision: holds && !neutral ? 'hold' : 'progress', reason }];
  });
}

/** One session missed of a week goes on; of two or more the week comes again. */
function againNeeded({ due }: Done, { weekIndex }: DueSession): boolean {
  const ofWeek = due.filter((entry) => entry.weekIndex === weekIndex);
  return undoneIn(ofWeek) > MOST_UNDONE;
}
