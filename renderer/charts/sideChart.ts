import { compareSides } from '../../core/index.ts';
import { dayNumber } from '../../core/day.ts';
import type { Visit } from '../../electron/contract/contract.ts';
import type { RuleChange } from '../../electron/contract/records.ts';
import { toRuleChanges } from '../../electron/contract/plans/request.ts';
import type { ChartSpec, LineSeries } from '../chart/spec.ts';
import { shownCell, type ChartTable } from '../chart/table.ts';
import { trendScale, type TrendScale } from '../gait/trendTable.ts';
import type { Shown, ShownChoices } from '../units/shown.ts';

type Sides = ReturnType<typeof compareSides>[number];

/** One thing measured on both sides, visit by visit, oldest first. */
export interface SideCourse {
  readonly label: string;
  readonly unit: string;
  readonly points: readonly (Sides & { readonly day: string })[];
}

/** The course of everything that was measured on both sides at a visit. */
export function sideCourses(
  visits: readonly Visit[],
  rules: readonly RuleChange[],
): readonly SideCourse[] {
  const all = visits.flatMap(({ day, measurements }) =>
    compareSides(measurements, toRuleChanges(rules)).map((sides) => ({ ...sides, day })),
  );
  return [...Map.groupBy(all, ({ label }) => label)].map(([label, points]) => ({
    label,
    unit: points[0]!.unit,
    points,
  }));
}

/** Left and right over the visits; inside the band they cannot be told apart. */
export function sideChart(course: SideCourse, choices: ShownChoices, shown: Shown): ChartSpec {
  const scale = trendScale(course.unit, choices);
  return {
    label: `${course.label}, left and right, ${scale.unit}`,
    title: `${course.label}, ${scale.unit}`,
    heightPx: 230,
    x: { kind: 'day', format: (day) => shown.day(day) },
    y: { unit: scale.unit, span: 1 },
    series: [
      side(course, 'left', scale, shown),
      side(course, 'right', scale, shown),
      {
        kind: 'band',
        name: 'sides in here cannot be told apart',
        ink: 'soft',
        planned: true,
        points: bandOf(course, scale),
      },
    ],
  };
}

const LOOKS = {
  left: { name: 'left', ink: 'accent', line: 'solid', shape: 'dot' },
  right: { name: 'right', ink: 'ink', line: 'dashes', shape: 'diamond' },
} as const satisfies Record<string, Omit<LineSeries, 'kind' | 'points'>>;

const side = (
  { label, points }: SideCourse,
  which: 'left' | 'right',
  scale: TrendScale,
  shown: Shown,
): LineSeries => ({
  kind: 'line',
  ...LOOKS[which],
  points: points.map((point) => {
    const y = scale.of(point[which]);
    const said = `${label}, ${which}, ${shown.day(point.day)}: ${shownCell(y, scale.digits)} ${scale.unit}`;
    return {
      x: dayNumber(point.day),
      y,
      text: `${said}; sides ${point.withinError ? 'alike within error' : 'differ beyond error'}`,
    };
  }),
});

/** Half the error to both sides of their middle; a single visit gets a day to be seen in. */
function bandOf({ points }: SideCourse, scale: TrendScale) {
  const band = points.map(({ day, left, right, error }) => {
    const middle = (left + right) / 2;
    const x = dayNumber(day);
    return { x, low: scale.of(middle - error / 2), high: scale.of(middle + error / 2) };
  });
  const [only] = band;
  return band.length > 1 || only === undefined
    ? band
    : [only.x - 1, only.x + 1].map((x) => ({ ...only, x }));
}

export function sideTable(courses: readonly SideCourse[], choices: ShownChoices): ChartTable {
  return {
    columns: [
      { head: 'Day', unit: '', kind: 'day' },
      { head: 'What', unit: '', kind: 'text' },
      { head: 'Left', unit: '', kind: 'number', digits: 1 },
      { head: 'Right', unit: '', kind: 'number', digits: 1 },
      { head: 'Unit', unit: '', kind: 'text' },
      { head: 'Symmetry index', unit: '%', kind: 'number', digits: 1 },
    ],
    rows: courses.flatMap(({ label, unit, points }) => {
      const scale = trendScale(unit, choices);
      return points.map(({ day, left, right, symmetryIndex }) => [
        day,
        label,
        scale.of(left),
        scale.of(right),
        scale.unit,
        symmetryIndex,
      ]);
    }),
  };
}
