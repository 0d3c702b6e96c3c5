import type { RampWeek } from '../../core/index.ts';
import type { Cell, ChartTable } from '../chart/table.ts';

/**
 * The numbers of the load of a plan, one line a week, in run-minutes. `done` holds what was told of
 * each week by its first day; without it there is no such column.
 */
export function loadTable(
  weeks: readonly RampWeek[],
  done: ReadonlyMap<string, number> | undefined,
): ChartTable {
  const minutes = { unit: 'min', kind: 'number', digits: 1 } as const;
  return {
    columns: [
      { head: 'Week', unit: '', kind: 'number', digits: 0 },
      { head: 'From', unit: '', kind: 'day' },
      { head: 'Planned running', ...minutes },
      ...(done === undefined ? [] : [{ head: 'Done', ...minutes }]),
      { head: 'Limit', ...minutes },
      { head: 'Kind', unit: '', kind: 'text' },
    ],
    rows: weeks.map((week): readonly Cell[] => [
      week.number,
      week.startDay,
      week.runMinutes,
      ...(done === undefined ? [] : [done.get(week.startDay) ?? null]),
      week.capMinutes,
      kindOf(week),
    ]),
  };
}

function kindOf({ recovery, easyBeforeEvent }: RampWeek): string {
  if (recovery) return 'easy week';
  return easyBeforeEvent ? 'easy before the event' : '';
}
