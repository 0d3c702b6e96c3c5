import {
  goalDay,
  programmeOf,
  shownMinutes,
  type Ramp,
  type RampSession,
  type ReviewDecision,
} from '../../core/index.ts';
import type { Shown } from '../units/shown.ts';

/** What a review comes to, as a head line and as what to do. */
export const DECISION_HEADS: Readonly<Record<ReviewDecision, string>> = {
  progress: 'Go on as planned',
  hold: 'Hold: repeat the week',
  back: 'Back one step',
  stop: 'Stop: the vet first',
};
export const DECISION_WORDS: Readonly<Record<ReviewDecision, string>> = {
  progress: 'The record holds nothing against the next step.',
  hold: 'The dog repeats where it stands before the load rises again.',
  back: 'Two days without running, then one step back on the path.',
  stop: 'No running until a vet has seen the dog and cleared it in writing.',
};
export const isDecision = (word: string): word is ReviewDecision => word in DECISION_HEADS;

/** How a version of the plan came about. */
export const ORIGIN_WORDS = {
  built: 'made',
  reviewed: 'from a review',
  edited: 'edited by hand',
} as const;

/** Minutes as they are timed: half minutes, rounded down, the same as on paper. */
export function minutes(value: number): string {
  return `${shownMinutes(value)}\u00a0min`;
}

/** One outing in words, as on paper: "6 × (1 min run, 2 min walk)". */
export function sessionText(session: RampSession): string {
  if (session.kind === 'walk') return `${minutes(session.runMin)} brisk walk`;
  const run =
    session.kind === 'continuous'
      ? `${minutes(session.runMin)} run without a break`
      : `${session.repeats} × (${minutes(session.runMin)} run, ${minutes(session.walkMin)} walk)`;
  const { focus = null, dose } = session;
  if (focus === null || dose === undefined) return run;
  const { times, seconds } = dose;
  const time = seconds < 60 ? `${seconds}\u00a0s` : minutes(seconds / 60);
  return `${run}, with ${FOCUS_WORDS[focus](times, time)}`;
}

/** The new thing of a later stage with its dose. */
const FOCUS_WORDS = {
  pull: (_times: number, time: string) => `${time} of pull`,
  hills: (times: number, time: string) => `${times} × ${time} uphill`,
  speed: (times: number, time: string) => `${times} × ${time} faster`,
} as const;

/** What the plan comes to, in one or two sentences. */
export function rampSentence(ramp: Ramp, shown: Shown): string {
  if (ramp.weeks.length === 0) return 'No outing is planned.';
  const length = `${ramp.weeks.length} ${ramp.weeks.length === 1 ? 'week' : 'weeks'}`;
  const goal = goalText(ramp, shown);
  if (ramp.goalReachedOn !== null) {
    return `${length}; ${goal} first on ${shown.weekdayDay(ramp.goalReachedOn)}.`;
  }
  const day = goalDay(ramp);
  const earliest =
    day === null ? '' : ` The earliest day inside the limits is ${shown.weekdayDay(day)}.`;
  return `${length}; ${goal} cannot be reached in that time.${earliest}${reachText(ramp, shown)}`;
}

function goalText(ramp: Ramp, shown: Shown): string {
  const { goal } = ramp.request;
  if ('continuousMinutes' in goal && programmeOf(ramp) === 'walking') {
    return `two brisk walks of ${minutes(goal.continuousMinutes)} in a week`;
  }
  if ('continuousMinutes' in goal) return `${minutes(goal.continuousMinutes)} without a break`;
  return `${shown.amount('distance', goal.distanceKm)} at ${shown.amount('pace', goal.paceMinPerKm)}`;
}

function reachText(ramp: Ramp, shown: Shown): string {
  if (ramp.withinReach === null) return '';
  const { continuousMinutes, distanceKm } = ramp.withinReach;
  const distance = distanceKm === null ? '' : `, about ${shown.amount('distance', distanceKm)}`;
  return ` Within reach by then: ${minutes(continuousMinutes)} without a break${distance}.`;
}
