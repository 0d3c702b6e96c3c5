import {
  goalDay,
  isBeginning,
  isSetback,
  programmeOf,
  shownMinutes,
  type Ramp,
  type RampSession,
  type Reason,
} from '../../core/index.ts';
import type { Shown } from '../units/shown.ts';
import { counted } from '../words.ts';

/** What a review comes to, as a head line and as what to do. */
const DECISIONS = {
  progress: ['Go on as planned', 'The record holds nothing against the next step.'],
  begin: ['Begin with the first week', 'The days move on; the steps stay as planned.'],
  hold: ['Hold: repeat the week', 'The dog repeats where it stands before the load rises again.'],
  back: ['Back one step', 'Two days without running, then one step back on the path.'],
  lower: ['Back: start lower', 'The load starts lower, then rises again inside the limits.'],
  stop: [
    'Stop: the vet first',
    'No running until a vet has seen the dog and cleared it in writing.',
  ],
} as const;

/** A decision as a record keeps it. */
export interface Decided {
  readonly decision: string;
  readonly reasons: readonly Reason[];
}

/**
 * A plan of which nothing was done begins; a way back for time missed, or after an illness, asks for
 * no days off and no step.
 */
function toldAs({ decision, reasons }: Decided): keyof typeof DECISIONS | null {
  if (decision === 'hold' && isBeginning(reasons)) return 'begin';
  if (decision === 'back' && !isSetback(reasons)) return 'lower';
  return decision in DECISIONS ? (decision as keyof typeof DECISIONS) : null;
}

/** The head line of a decision; empty for a word that is none. */
export function decisionHead(decided: Decided): string {
  const key = toldAs(decided);
  return key === null ? '' : DECISIONS[key][0];
}

/** What a decision asks for, in a sentence. */
export function decisionWords(decided: Decided): string {
  const key = toldAs(decided);
  return key === null ? '' : DECISIONS[key][1];
}

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
  const length = counted(ramp.weeks.length, 'week');
  return `${length}; ${goalSentence(ramp, shown)}`;
}

/** When the goal of a plan with outings is reached, as the end of a sentence. */
export function goalSentence(ramp: Ramp, shown: Shown): string {
  const goal = goalText(ramp, shown);
  if (ramp.goalReachedOn !== null) {
    return `${goal} first on ${shown.weekdayDay(ramp.goalReachedOn)}.`;
  }
  const day = goalDay(ramp);
  const earliest =
    day === null ? '' : ` The earliest day inside the limits is ${shown.weekdayDay(day)}.`;
  return `${goal} cannot be reached in that time.${earliest}${reachText(ramp, shown)}`;
}

/** How the owner runs without the dog; empty where it was not told. */
export const ownerSentence = ({ request: { ownerMinutes } }: Ramp): string =>
  ownerMinutes === undefined ? '' : `The owner runs ${minutes(ownerMinutes)} without a break.`;

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
