import {
  LOSS_MAX_PERCENT,
  LOSS_MIN_PERCENT,
  type PracticeYear,
  type YearMonth,
} from '../../core/index.ts';
import type { BandSeries, ChartSpec, Series } from '../chart/spec.ts';
import type { ChartColumn, ChartTable } from '../chart/table.ts';
import { counted } from '../words.ts';

/** The name of a dog by its id. */
type NameOf = (dogId: string) => string;

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

export const monthName = (day: string): string =>
  `${MONTHS[Number(day.slice(5, 7)) - 1]} ${day.slice(0, 4)}`;
const shortMonth = (day: string): string => (MONTHS[Number(day.slice(5, 7)) - 1] ?? '').slice(0, 3);

/** What is counted each month, with its words in the course of a sentence. */
export const COUNTED = [
  { key: 'started', title: 'Began a programme', words: 'began a programme' },
  { key: 'reached', title: 'Reached the goal', words: 'reached the goal' },
  { key: 'stopped', title: 'Were stopped', words: 'were stopped' },
  { key: 'lost', title: 'Last heard of, then lost from sight', words: 'were last heard of' },
] as const;

export const dogs = (count: number): string => counted(count, 'dog');

/** One small chart for each thing that is counted, all to the same scale. */
export function monthCharts(months: readonly YearMonth[], nameOf: NameOf): ChartSpec[] {
  const most = Math.max(
    4,
    ...months.flatMap((month) => COUNTED.map(({ key }) => month[key].length)),
  );
  return COUNTED.map(({ key, title, words }) => ({
    label: `${title}, dogs a month`,
    title,
    heightPx: 190,
    x: { kind: 'count', name: '', words: (count) => shortMonth(months[count]?.day ?? '') },
    y: { unit: 'dogs', min: 0, max: most * 1.1, whole: true },
    series: [
      {
        kind: 'bar',
        name: '',
        ink: key === 'stopped' || key === 'lost' ? 'ochre' : 'accent',
        look: 'full',
        points: months.map((month, index) => ({
          x: index,
          y: month[key].length,
          text: `${monthName(month.day)}: ${dogs(month[key].length)} ${words}${month[key].length === 0 ? '' : `; ${month[key].map(nameOf).join(', ')}`}`,
        })),
      },
    ],
  }));
}

export function monthTable(months: readonly YearMonth[]): ChartTable {
  return {
    columns: [
      { head: 'Month', unit: '', kind: 'text' },
      ...COUNTED.map(({ title }): ChartColumn => ({
        head: title,
        unit: 'dogs',
        kind: 'number',
        digits: 0,
      })),
    ],
    rows: months.map((month) => [
      monthName(month.day),
      ...COUNTED.map(({ key }) => month[key].length),
    ]),
  };
}

const weeks = (days: number): number => days / 7;

interface Timed {
  readonly dogIds: readonly string[];
  readonly plannedDays: number;
  readonly takenDays: number;
}

/** The goals with a planned day: how long they took and how long was planned; the same are one. */
export function timed({ times }: PracticeYear): readonly Timed[] {
  const found = new Map<string, Timed>();
  for (const { dogId, plannedDays, takenDays } of times) {
    if (plannedDays === null) continue;
    const key = `${plannedDays} ${takenDays}`;
    const dogIds = [...(found.get(key)?.dogIds ?? []), dogId];
    found.set(key, { dogIds, plannedDays, takenDays });
  }
  return [...found.values()].sort((a, b) => a.plannedDays - b.plannedDays);
}

export function timeChart(year: PracticeYear, nameOf: NameOf): ChartSpec {
  const points = timed(year);
  const longest =
    Math.max(4, ...points.map(({ plannedDays }) => Math.ceil(weeks(plannedDays)))) + 1;
  return {
    label: 'Weeks to the goal, against the plan',
    title: '',
    heightPx: 260,
    x: { kind: 'count', name: 'weeks planned' },
    y: { unit: 'weeks taken', min: 0 },
    series: [
      {
        kind: 'line',
        name: 'a dog, or several with the same times',
        ink: 'accent',
        line: 'none',
        shape: 'dot',
        points: points.map(({ dogIds, plannedDays, takenDays }) => ({
          x: weeks(plannedDays),
          y: weeks(takenDays),
          text: `${dogIds.map(nameOf).join(', ')}: ${weeks(takenDays).toFixed(0)} weeks to the goal, ${weeks(plannedDays).toFixed(0)} planned`,
        })),
      },
      {
        kind: 'line',
        name: 'as planned',
        ink: 'ink',
        line: 'dashes',
        shape: 'none',
        points: [0, longest].map((x) => ({ x, y: x, text: '' })),
      },
    ],
  };
}

export function timeTable(year: PracticeYear, nameOf: NameOf): ChartTable {
  const column = (head: string): ChartColumn => ({
    head,
    unit: 'weeks',
    kind: 'number',
    digits: 1,
  });
  return {
    columns: [{ head: 'Dogs', unit: '', kind: 'text' }, column('Planned'), column('Taken')],
    rows: timed(year).map(({ dogIds, plannedDays, takenDays }) => [
      dogIds.map(nameOf).join(', '),
      weeks(plannedDays),
      weeks(takenDays),
    ]),
  };
}

const rate = (value: number): string => value.toFixed(1).replace('-', '−');

export function lossChart({ losses }: PracticeYear, nameOf: NameOf): ChartSpec {
  const ends = [-0.6, losses.length - 0.4];
  const corridor: BandSeries = {
    kind: 'band',
    name: `corridor, ${LOSS_MIN_PERCENT} to ${LOSS_MAX_PERCENT} % a week`,
    ink: 'soft',
    planned: true,
    points: ends.map((x) => ({ x, low: LOSS_MIN_PERCENT, high: LOSS_MAX_PERCENT })),
  };
  const rates: Series = {
    kind: 'line',
    name: 'a dog, with the 90 % interval of its rate',
    ink: 'ink',
    line: 'none',
    shape: 'dot',
    points: losses.map(({ dogId, percentPerWeek, low, high, flagged, against }, index) => ({
      x: index,
      y: percentPerWeek,
      error: (high - low) / 2,
      hollow: flagged,
      text: `${nameOf(dogId)}: ${rate(percentPerWeek)} % a week, between ${rate(low)} and ${rate(high)}; ${against === 'inside' ? 'inside the corridor' : `${against} than the corridor`}${flagged ? '; a weighing stands out' : ''}`,
    })),
  };
  return {
    label: 'Loss of weight against the corridor',
    title: '',
    heightPx: 280,
    x: { kind: 'count', name: 'dogs, the slowest loss first', words: () => '' },
    y: { unit: '% a week' },
    series: [rates, corridor],
  };
}

export function lossTable({ losses }: PracticeYear, nameOf: NameOf): ChartTable {
  const percent = { unit: '% a week', digits: 1 } as const;
  return {
    columns: [
      { head: 'Dog', unit: '', kind: 'text' },
      { head: 'From', unit: '', kind: 'day' },
      { head: 'To', unit: '', kind: 'day' },
      { head: 'Loss', kind: 'number', ...percent },
      { head: '90 % interval', kind: 'range', ...percent },
      { head: 'Corridor', unit: '', kind: 'text' },
    ],
    rows: losses.map(({ dogId, fromDay, toDay, percentPerWeek, low, high, against, flagged }) => [
      nameOf(dogId),
      fromDay,
      toDay,
      percentPerWeek,
      [low, high],
      `${against}${flagged ? '; a weighing stands out' : ''}`,
    ]),
  };
}
