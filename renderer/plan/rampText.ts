import type { Ramp, RampSession, RampWeek } from '../../core/index.ts';
import type { Shown } from '../units/shown.ts';

/** Minutes as they are spoken: at most one digit behind the point. */
export function minutes(value: number): string {
  return `${Number(value.toFixed(1))}\u00a0min`;
}

/** One outing in words: "6 × 1 min run, 2 min walk". */
export function sessionText(session: RampSession): string {
  if (session.kind === 'continuous') return `${minutes(session.runMin)} run without a break`;
  return `${session.repeats} × ${minutes(session.runMin)} run, ${minutes(session.walkMin)} walk`;
}

/** What the plan comes to, in one or two sentences. */
export function rampSentence(ramp: Ramp, shown: Shown): string {
  const length = `${ramp.weeks.length} ${ramp.weeks.length === 1 ? 'week' : 'weeks'}`;
  const goal = goalText(ramp, shown);
  if (ramp.goalReachedOn !== null) {
    return `${length}; ${goal} first on ${shown.weekdayDay(ramp.goalReachedOn)}.`;
  }
  const earliest =
    ramp.earliestGoalDay === null
      ? ''
      : ` The earliest day inside the limits is ${shown.weekdayDay(ramp.earliestGoalDay)}.`;
  return `${length}; ${goal} cannot be reached in that time.${earliest}${reachText(ramp, shown)}`;
}

function goalText(ramp: Ramp, shown: Shown): string {
  const { goal } = ramp.request;
  if ('continuousMinutes' in goal) return `${minutes(goal.continuousMinutes)} without a break`;
  return `${shown.amount('distance', goal.distanceKm)} at ${shown.amount('pace', goal.paceMinPerKm)}`;
}

function reachText(ramp: Ramp, shown: Shown): string {
  if (ramp.withinReach === null) return '';
  const { continuousMinutes, distanceKm } = ramp.withinReach;
  const distance = distanceKm === null ? '' : `, about ${shown.amount('distance', distanceKm)}`;
  return ` Within reach by then: ${minutes(continuousMinutes)} without a break${distance}.`;
}

/** The week of a plan that `day` falls into; null before it starts and after it ends. */
export function weekAt(ramp: Pick<Ramp, 'weeks'>, day: string): RampWeek | null {
  const begun = ramp.weeks.filter((week) => week.startDay <= day);
  const week = begun.at(-1);
  if (week === undefined) return null;
  const last = week.sessions.at(-1)?.day ?? week.startDay;
  return begun.length === ramp.weeks.length && day > last ? null : week;
}
