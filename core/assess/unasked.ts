import type { IsoDay } from '../day.ts';
import { wasRun } from '../ramp/done.ts';
import { programmeOf } from '../ramp/outing.ts';
import type { SessionOutcome } from '../ramp/reviewTypes.ts';
import type { Programme, Ramp, RampSession } from '../ramp/types.ts';
import type { Screening, ScreeningOutcome } from '../readiness/types.ts';
import { weighingsUpTo } from './course.ts';
import { firstDayOf, plannedSessions, type PlanVersion } from './plannedWeeks.ts';
import { screenRecord } from './screening.ts';
import type { AssessInput } from './types.ts';

type Version = PlanVersion & { readonly ramp: Ramp };

/**
 * What a screening lets a dog with a plan do. A dog on a running plan is not sent walking by what a
 * follow-up did not look at.
 */
export function mayRunOn(screening: Screening, plan: { ramp: Ramp } | null): ScreeningOutcome {
  const onPlan =
    plan !== null && plan.ramp.weeks.length > 0 && programmeOf(plan.ramp) === 'running';
  return onPlan && screening.found === 'ready to start' ? 'ready to start' : screening.outcome;
}

/**
 * What a plan waits for by a screening: the vet, or the end of "walking only" where it is of runs;
 * null where it is in force.
 * @example
 * waitsFor('vet first', 'walking') // => 'vet'
 * waitsFor('walking only', 'running') // => 'walking'
 * waitsFor('walking only', 'walking') // => null
 */
export function waitsFor(
  outcome: ScreeningOutcome,
  programme: Programme,
): 'vet' | 'walking' | null {
  if (outcome === 'vet first') return 'vet';
  return outcome === 'walking only' && programme === 'running' ? 'walking' : null;
}

/**
 * The days with a session on which the plan was not in force: by the last visit before, it waited
 * for the vet or for the end of "walking only". The owner got no outings on paper, so none of them
 * may be asked for or count as missed.
 * @example unaskedDays(sample.runner) // => []
 */
export function unaskedDays({
  record,
  plans,
}: {
  readonly record: Omit<AssessInput, 'foodDecisions'>;
  readonly plans: readonly Version[];
}): IsoDay[] {
  const screenings = new Map<IsoDay, Screening>();
  const screeningAt = (visits: AssessInput['visits']): Screening => {
    const latest = visits.at(-1)!;
    const known = screenings.get(latest.day);
    if (known !== undefined) return known;
    const { day } = latest;
    const weightKg = weighingsUpTo(day, visits, record.weighings).at(-1)?.weightKg ?? null;
    const made = screenRecord({ ...record, foodDecisions: [], day }, visits, latest, weightKg);
    screenings.set(day, made);
    return made;
  };
  return plannedSessions(plans)
    .map(({ day }) => day)
    .filter((day) => {
      const plan = plans.findLast((version) => firstDayOf(version) <= day);
      // A visit speaks for its own day only where the session was planned at it.
      const visits = record.visits.filter((visit) =>
        plan?.madeOn === day ? visit.day <= day : visit.day < day,
      );
      if (plan === undefined || visits.length === 0) return false;
      return waitsFor(mayRunOn(screeningAt(visits), plan), programmeOf(plan.ramp)) !== null;
    });
}

/**
 * The sessions that the owner was asked for, and those that were run although nobody asked.
 * @example
 * askedSessions([sample.session], [sample.session.day], []) // => []
 * askedSessions([sample.session], [sample.session.day], [sample.told]).length // => 1
 */
export function askedSessions(
  sessions: readonly RampSession[],
  unasked: readonly IsoDay[],
  results: readonly { readonly day: IsoDay; readonly outcome: SessionOutcome }[],
): RampSession[] {
  const waited = new Set(unasked);
  const ran = new Set(results.filter(({ outcome }) => wasRun(outcome)).map(({ day }) => day));
  return sessions.filter(({ day }) => !waited.has(day) || ran.has(day));
}
