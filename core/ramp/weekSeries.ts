import type { IsoDay } from '../day.ts';
import { shownWeekMinutes } from './shownMinutes.ts';
import type { RampWeek } from './types.ts';

/** The load of one week as charts, tables and sheets show it, min. */
export interface WeekLoad {
  /** Its place in the series, from 1: a week of an earlier version keeps its own number. */
  readonly at: number;
  readonly number: number;
  readonly startDay: IsoDay;
  readonly planned: number;
  /** The most the rules allow; null for brisk walks, which have no such limit. */
  readonly cap: number | null;
  /** Null where nothing was told of the week. */
  readonly done: number | null;
  readonly kind: 'building' | 'easy' | 'easy before the event';
}

/**
 * The load of a plan week by week: one series for the screen and for paper.
 * @param weeks oldest first
 * @param done minutes done, by the first day of their week
 * @example
 * weekSeries(sample.ramp.weeks)[3]
 *   // => { number: 4, startDay: '2026-03-23', planned: 12, kind: 'easy', … }
 */
export function weekSeries(
  weeks: readonly RampWeek[],
  done: ReadonlyMap<IsoDay, number> = new Map(),
): readonly WeekLoad[] {
  const walks = onlyWalks(weeks);
  return weeks.map((week, index) => ({
    at: index + 1,
    number: week.number,
    startDay: week.startDay,
    planned: shownWeekMinutes(week),
    cap: walks ? null : week.capMinutes,
    done: done.get(week.startDay) ?? null,
    kind: kindOf(week),
  }));
}

/**
 * True for a walking programme: its outings are brisk walks.
 * @example onlyWalks(sample.walks.weeks) // => true
 */
export const onlyWalks = (weeks: readonly Pick<RampWeek, 'sessions'>[]): boolean =>
  weeks.every(({ sessions }) => sessions.every(({ kind }) => kind === 'walk'));

function kindOf({ recovery, easyBeforeEvent }: RampWeek): WeekLoad['kind'] {
  if (recovery) return 'easy';
  return easyBeforeEvent ? 'easy before the event' : 'building';
}
