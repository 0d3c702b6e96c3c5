import { leastDifference } from '../../core/index.ts';
import { dayNumber } from '../../core/day.ts';
import type { Visit } from '../../electron/contract/contract.ts';
import type { ChartSpec } from '../chart/spec.ts';
import type { ChartTable } from '../chart/table.ts';
import type { Shown } from '../units/shown.ts';

/** The totals of one questionnaire, oldest first. */
export interface TotalCourse {
  readonly name: string;
  readonly points: readonly { readonly day: string; readonly total: number }[];
}

/** By name; the same day told at two visits stands once, as told last. */
export function totalCourses(visits: readonly Visit[]): readonly TotalCourse[] {
  const all = visits.flatMap(({ questionnaires }) => questionnaires);
  return [...Map.groupBy(all, ({ name }) => name)].map(([name, entries]) => {
    const byDay = new Map(entries.map(({ day, total }) => [day, { day, total }]));
    return { name, points: [...byDay.values()].sort((a, b) => (a.day < b.day ? -1 : 1)) };
  });
}

/** Totals over time, with what the last could not be told apart from. */
export function questionnaireChart({ name, points }: TotalCourse, shown: Shown): ChartSpec {
  const least = leastDifference(name);
  const last = points.at(-1)!.total;
  const ends = [dayNumber(points[0]!.day) - 1, dayNumber(points.at(-1)!.day) + 1];
  return {
    label: `Totals of ${name}`,
    title: name,
    heightPx: 230,
    x: { kind: 'day', format: (day) => shown.day(day) },
    y: { unit: 'points', span: 2 * (least ?? 5) },
    series: [
      {
        kind: 'line',
        name: 'total',
        ink: 'accent',
        line: 'solid',
        shape: 'dot',
        points: points.map(({ day, total }, at) => ({
          x: dayNumber(day),
          y: total,
          text: `${name}, ${shown.day(day)}: ${total} points${changeText(total, points[at - 1]?.total, least)}`,
        })),
      },
      ...(least === null
        ? []
        : [
            {
              kind: 'band' as const,
              name: 'less than the least important difference from the last',
              ink: 'soft' as const,
              planned: true,
              points: ends.map((x) => ({ x, low: last - least, high: last + least })),
            },
          ]),
    ],
  };
}

function changeText(total: number, before: number | undefined, least: number | null): string {
  if (before === undefined || least === null) return '';
  const change = total - before;
  if (Math.abs(change) < least) return '; no important change';
  return change < 0
    ? '; better, by an important difference'
    : '; worse, by an important difference';
}

export const totalTable = (courses: readonly TotalCourse[]): ChartTable => ({
  columns: [
    { head: 'Day', unit: '', kind: 'day' },
    { head: 'Questionnaire', unit: '', kind: 'text' },
    { head: 'Total', unit: 'points', kind: 'number', digits: 0 },
  ],
  rows: courses.flatMap(({ name, points }) => points.map(({ day, total }) => [day, name, total])),
});
