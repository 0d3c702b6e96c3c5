import type { Provenance, Reason } from '../figure.ts';
import { redFlagLabel } from '../readiness/signs.ts';
import { isClean, type Done, type DueSession } from './done.ts';
import type { ReviewDecision, ReviewInput, SessionResult } from './reviewTypes.ts';

/** One thing that was seen, and what it asks for. */
export interface Seen {
  readonly decision: ReviewDecision;
  readonly reason: Reason;
}

const SORENESS: Provenance = { evidence: 'B', mark: 'M', sources: ['sorenessRules'] };
/** What ends running rests on practice and our own caution; the human rules only agree with it. */
const STOPPING: Provenance = {
  evidence: 'D',
  mark: 'CP',
  sources: ['commonPractice', 'ownDecision', 'sorenessRules'],
};
const OWN: Provenance = { evidence: 'D', mark: 'D', sources: ['ownDecision'] };
const PRACTICE: Provenance = { evidence: 'D', mark: 'CP', sources: ['commonPractice'] };
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
]);
const WALKING: ReadonlySet<string> = new Set(['review-walking-only', 'review-still-walking']);

/** Everything in results and findings that bears on the decision. */
export function seenIn(input: ReviewInput, done: Done): Seen[] {
  return [
    ...notCleared(input, done),
    ...findingsSeen(input),
    ...done.due.flatMap((due) => resultSeen(input, done, due)),
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

function findingsSeen({ findings = {} }: ReviewInput): Seen[] {
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
  if (findings.screening === 'walking only') {
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
  return [...stopSigns(result, settled), ...responses(result, settled, isRecent(done, due))];
}

function stopSigns(result: SessionResult, settled: boolean): Seen[] {
  if (settled) return [];
  return (result.signs ?? []).map((sign) => {
    const text = `${sign[0]!.toUpperCase()}${sign.slice(1)} on ${result.day}.`;
    return stop('review-stop-sign', text, { sign, day: result.day }, STOPPING);
  });
}

function responses(result: SessionResult, settled: boolean, recent: boolean): Seen[] {
  const { day, nextDay } = result;
  const params = { day, response: nextDay ?? '' };
  const reason = (code: string, text: string): Reason => ({ code, text, params, ...SORENESS });
  if (nextDay === 'stiffness over 48 h' && !settled) {
    return [stop('review-stiff-48', `Stiff for over 48 h after ${day}.`, params, STOPPING)];
  }
  const back = (code: string, text: string): Seen => {
    return { decision: 'back', reason: { ...reason(code, text), rules: ['daysOffAfterBack'] } };
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
    return [{ decision: recent ? 'hold' : 'progress', reason: seen }];
  }
  return [];
}

/** A mild sign, or a session missed, counts until a week's worth of clean sessions followed (D). */
function isRecent(done: Done, due: DueSession): boolean {
  const after = done.due.slice(done.due.indexOf(due) + 1);
  return after.filter(isClean).length < 3;
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
    return [{ decision: isRecent(done, last) ? 'hold' : 'progress', reason }];
  });
}
