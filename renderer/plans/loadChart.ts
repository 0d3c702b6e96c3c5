import type { WeekLoad } from '../../core/index.ts';
import type { BarSeries, ChartSpec, Series } from '../chart/spec.ts';
import type { Cell, ChartTable } from '../chart/table.ts';
import type { Shown } from '../units/shown.ts';

/** What stands in the load of a plan beside its weeks. */
export interface LoadFrame {
  /** First day of the week of today; null before and after the plan. */
  readonly current: string | null;
  readonly eventDay: string | null;
  readonly heightPx: number;
}

/**
 * Minutes a week: an outline for what is planned, filled as far as it was done, under the line of
 * the most the rules allow.
 */
export function loadChart(
  load: readonly WeekLoad[],
  { current, eventDay, heightPx }: LoadFrame,
  shown: Shown,
): ChartSpec {
  const now = load.find(({ startDay }) => startDay === current);
  const eventAt =
    eventDay === null ? 0 : load.filter(({ startDay }) => startDay <= eventDay).length;
  const planned = (easy: boolean) =>
    load
      .filter(({ kind }) => (kind !== 'building') === easy)
      .map((week) => ({ x: week.at, y: week.planned, text: weekText(week, shown) }));
  const done = load
    .filter((week) => (week.done ?? 0) > 0)
    .map((week) => ({ x: week.at, y: week.done, text: '' }));
  return {
    label: 'Minutes of each week',
    title: '',
    heightPx,
    x: { kind: 'count', name: 'week' },
    y: { unit: 'min', min: 0 },
    uprights: [
      ...(now === undefined ? [] : [{ x: now.at, words: 'this week' }]),
      ...(eventAt === 0 ? [] : [{ x: eventAt + 0.5, words: 'event' }]),
    ],
    series: [
      ...bars('planned', 'wash', planned(false)),
      ...bars('easy week', 'outline', planned(true)),
      ...bars('done', 'full', done),
      ...capLine(load),
    ],
  };
}

function weekText({ number, startDay, planned, cap, done, kind }: WeekLoad, shown: Shown): string {
  const minutes = (value: number) => shown.figure(value, 'min');
  return [
    `Week ${number}, from ${shown.day(startDay)}${kind === 'building' ? '' : ', easy week'}: ${minutes(planned)} planned`,
    ...(done === null || done === 0 ? [] : [`, ${minutes(done)} done`]),
    ...(cap === null ? [] : [`; at most ${minutes(cap)}`]),
  ].join('');
}

const bars = (name: string, look: BarSeries['look'], points: BarSeries['points']): Series[] =>
  points.length === 0 ? [] : [{ kind: 'bar', name, look, ink: 'accent', points }];

/** Steps from the first week's left edge to the last one's right. */
function capLine(load: readonly WeekLoad[]): Series[] {
  const steps = load.map(({ at, cap }) => ({ x: at - 0.5, y: cap, text: '' }));
  const last = steps.at(-1);
  if (last === undefined || last.y === null) return [];
  const name = 'the most the rules allow';
  const points = [...steps, { ...last, x: last.x + 1 }];
  return [{ kind: 'line', name, ink: 'ink', line: 'steps', shape: 'none', points }];
}

/** The numbers of the load, one line a week; without `told` there is no column of what was done. */
export function loadTable(load: readonly WeekLoad[], told: boolean): ChartTable {
  const minutes = { unit: 'min', kind: 'number', digits: 1 } as const;
  const limited = load.some(({ cap }) => cap !== null);
  return {
    columns: [
      { head: 'Week', unit: '', kind: 'number', digits: 0 },
      { head: 'From', unit: '', kind: 'day' },
      { head: limited ? 'Planned running' : 'Planned walking', ...minutes },
      ...(told ? [{ head: 'Done', ...minutes }] : []),
      ...(limited ? [{ head: 'Limit', ...minutes }] : []),
      { head: 'Kind', unit: '', kind: 'text' },
    ],
    rows: load.map((week): readonly Cell[] => [
      week.number,
      week.startDay,
      week.planned,
      ...(told ? [week.done] : []),
      ...(limited ? [week.cap] : []),
      KIND_WORDS[week.kind],
    ]),
  };
}

const KIND_WORDS = {
  building: '',
  easy: 'easy week',
  'easy before the event': 'easy before the event',
} as const satisfies Record<WeekLoad['kind'], string>;
