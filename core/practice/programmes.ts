import { goalDay, type PresentPlan, type PresentProgramme } from '../assess/presentState.ts';
import { firstDayOf, plannedSessions } from '../assess/plannedWeeks.ts';
import type { ToldResult } from '../assess/planReview.ts';
import { addDays, daysBetween, type IsoDay } from '../day.ts';
import type { Reason } from '../figure.ts';

/** How a running programme stands or ended. */
export type ProgrammeEnd =
  /** The owner told that the outing that meets the goal was done. */
  | { readonly kind: 'reached'; readonly day: IsoDay }
  | { readonly kind: 'stopped'; readonly day: IsoDay; readonly reasons: readonly Reason[] }
  /** Its last outing is past, and nobody told whether the goal was met. */
  | { readonly kind: 'not told'; readonly day: IsoDay }
  /** Something is to be settled before the next outing. */
  | { readonly kind: 'waiting' }
  | { readonly kind: 'under way' };

/** One running programme of a dog, from its first outing through all versions of its plan. */
export interface ProgrammeCourse {
  readonly startedOn: IsoDay;
  /** Days from the first outing to the goal as the plan stood then; null where it named no day. */
  readonly plannedDays: number | null;
  readonly end: ProgrammeEnd;
}

type Version = Omit<PresentPlan, 'visitId' | 'createdAt' | 'current'>;
type Told = Pick<ToldResult, 'day' | 'outcome'>;

const isRunning = ({ ramp }: Version): boolean => ramp.request.programme !== 'walking';
const isStop = ({ ramp, review }: Version): boolean =>
  ramp.weeks.length === 0 && review?.decision === 'stop';
const lastDay = ({ ramp, madeOn }: Version): IsoDay =>
  ramp.weeks.flatMap(({ sessions }) => sessions).at(-1)?.day ?? madeOn;

/**
 * The running programmes of a dog that have begun by `day`, oldest first. A programme goes on
 * through every version of its plan, and ends where it was stopped, where its goal was met, or
 * where a plan built anew follows one whose last outing is past. What `present` says of the plan in
 * force goes before what its version says: a stop that was told and not reviewed yet is one.
 * @example programmeCourses(sample.runner.plans, [], sample.state.programme, '2026-03-04')
 *   // => [{ startedOn: '2026-03-02', plannedDays: 95, end: { kind: 'under way' } }]
 */
export function programmeCourses(
  plans: readonly Version[],
  results: readonly Told[],
  present: PresentProgramme<Pick<PresentPlan, 'version'>>,
  day: IsoDay,
): ProgrammeCourse[] {
  const told = results.filter((result) => result.day <= day);
  const all = programmes(plans, told);
  return all.flatMap((versions, index): ProgrammeCourse[] => {
    const next = all[index + 1]?.[0];
    const until = next === undefined ? addDays(day, 1) : firstDayOf(next);
    const startedOn = plannedSessions(versions)[0]?.day;
    if (startedOn === undefined || startedOn > day) return [];
    const end = endOf(versions, told, until, next === undefined ? present : null, day);
    return [{ startedOn, plannedDays: plannedDays(versions, startedOn), end }];
  });
}

/** The versions of running plans, parted into programmes. */
function programmes(plans: readonly Version[], told: readonly Told[]): Version[][] {
  const found: Version[][] = [];
  for (const version of [...plans].sort((a, b) => a.version - b.version)) {
    if (!isRunning(version)) continue;
    const current = found.at(-1);
    const goesOn = current !== undefined && !isOver(current, told, version);
    if (goesOn) current.push(version);
    else if (!isStop(version)) found.push([version]);
  }
  return found;
}

function isOver(versions: readonly Version[], told: readonly Told[], next: Version): boolean {
  const last = versions.at(-1)!;
  if (isStop(last)) return true;
  const builtAnew = next.ramp.request.resume === undefined;
  return (
    builtAnew && (lastDay(last) < next.madeOn || goalMet(versions, told, firstDayOf(next)) !== null)
  );
}

/** The day the goal was met and told of, before `until`; null while it was not. */
function goalMet(
  versions: readonly Version[],
  told: readonly Told[],
  until: IsoDay,
): IsoDay | null {
  const days = versions.flatMap(({ ramp }, index) => {
    const next = versions[index + 1];
    const end = next === undefined ? until : firstDayOf(next);
    return ramp.goalReachedOn !== null && ramp.goalReachedOn < end ? [ramp.goalReachedOn] : [];
  });
  const [from] = days;
  if (from === undefined) return null;
  const met = told
    .filter((result) => result.outcome === 'done' && result.day >= from && result.day < until)
    .map((result) => result.day);
  return met.sort()[0] ?? null;
}

function endOf(
  versions: readonly Version[],
  told: readonly Told[],
  until: IsoDay,
  present: PresentProgramme<unknown> | null,
  day: IsoDay,
): ProgrammeEnd {
  const met = goalMet(versions, told, until);
  if (met !== null) return { kind: 'reached', day: met };
  const last = versions.at(-1)!;
  if (isStop(last)) return { kind: 'stopped', day: last.madeOn, reasons: last.review!.reasons };
  if (present === null) return { kind: 'not told', day: lastDay(last) };
  if (present.kind === 'stopped') {
    return {
      kind: 'stopped',
      day: toldOn(present.reasons) ?? present.since,
      reasons: present.reasons,
    };
  }
  if (lastDay(last) < day) return { kind: 'not told', day: lastDay(last) };
  return { kind: present.kind === 'waiting' ? 'waiting' : 'under way' };
}

/** The day that the first of the reasons names, the decision's own; null where it names none. */
function toldOn([first]: readonly Reason[]): IsoDay | null {
  const day = first?.params['day'];
  return typeof day === 'string' ? day : null;
}

function plannedDays(versions: readonly Version[], startedOn: IsoDay): number | null {
  const asBegun = versions.findLast(({ madeOn }) => madeOn <= startedOn) ?? versions[0]!;
  const goal = goalDay(asBegun.ramp);
  return goal === null ? null : daysBetween(startedOn, goal);
}
