import type { ChartDataset } from 'chart.js';
import type { Look } from './look.ts';
import type { BandSeries, BarSeries, ChartSpec, LineSeries, Point, Shape } from './spec.ts';

/** A point of the spec as chart.js takes it; it keeps its place and what it says. */
export interface Datum {
  readonly x: number;
  readonly y: number | null;
  readonly at?: Point;
}
export type Dataset = ChartDataset<'line' | 'bar', Datum[]> & {
  /** Series of the spec whose values can be stopped at. */
  readonly of?: number;
  readonly mark?: Shape | 'line' | 'box';
  readonly hollow?: boolean;
};

/** The part of the x axis in sight; null for all. */
type Window = readonly [number, number] | null;

const STYLES = {
  dot: 'circle',
  ring: 'circle',
  diamond: 'rectRot',
  triangle: 'triangle',
  none: false,
} as const;
const RADIUS = { dot: 4.5, ring: 6.5, diamond: 6, triangle: 7, none: 0 } as const;
const DASHES = { solid: [], steps: [], dashes: [7, 5], none: [] };

/** A colour with some of the ground shining through. */
const faint = (colour: string): string =>
  colour.replace(/^rgba?\(([^)]+)\)$/, (_, parts: string) => {
    const [r, g, b] = parts.split(/[\s,/]+/);
    return `rgb(${r} ${g} ${b} / 16%)`;
  });

/** So many values in sight stand apart at full size (D). */
const ROOMY = 40;
/** How much smaller values are drawn where many are in sight: they would hide the line through them. */
function shrunk(points: readonly Point[], window: Window): number {
  const seen = points.filter(({ x }) => window === null || (x >= window[0] && x <= window[1]));
  return Math.max(0.45, Math.min(1, Math.sqrt(ROOMY / Math.max(1, seen.length))));
}

/** One value without a mark of its own is still to be seen: it gets half a day, or half a count. */
const lengthened = <P extends { readonly x: number }>(points: readonly P[]): readonly P[] =>
  points.length === 1
    ? [-0.25, 0.25].map((off) => ({ ...points[0]!, x: points[0]!.x + off }))
    : points;

function lineSets(series: LineSeries, of: number, look: Look, window: Window): Dataset[] {
  const colour = look[series.ink];
  const points = series.shape === 'none' ? lengthened(series.points) : series.points;
  const size = shrunk(points, window);
  const shapeOf = ({ shape }: Point): Shape => shape ?? series.shape;
  const fillings = points.map((point) =>
    shapeOf(point) === 'ring' ? 'transparent' : point.hollow === true ? look.paper : colour,
  );
  return [
    {
      type: 'line',
      label: series.name,
      of,
      mark: series.shape === 'none' ? 'line' : series.shape,
      hollow: series.hollow === true || series.shape === 'ring',
      data: points.map((point) => ({ x: point.x, y: point.y, at: point })),
      showLine: series.line !== 'none',
      stepped: series.line === 'steps',
      borderDash: DASHES[series.line],
      borderColor: colour,
      borderWidth: series.line === 'dashes' ? 1.5 : 2,
      backgroundColor: colour,
      pointStyle: points.map((point) => STYLES[shapeOf(point)]),
      pointRadius: points.map((point) => size * RADIUS[shapeOf(point)]),
      pointHoverRadius: points.map((point) => size * RADIUS[shapeOf(point)] + 1.5),
      pointHitRadius: 10,
      pointBorderWidth: size < 0.7 ? 1 : 2,
      // Values on the edge of the drawing are drawn whole.
      clip: { left: 6, top: 8, right: 6, bottom: 8 },
      pointBorderColor: colour,
      pointBackgroundColor: fillings,
      // The library would darken what is pointed at.
      pointHoverBackgroundColor: fillings,
      pointHoverBorderColor: colour,
      order: series.shape === 'none' ? 2 : 1,
    },
  ];
}

function bandSets(series: BandSeries, look: Look): Dataset[] {
  const points = lengthened(series.points);
  const edge: Partial<ChartDataset<'line', Datum[]>> = {
    type: 'line',
    pointRadius: 0,
    pointHitRadius: 0,
    borderWidth: series.planned === true ? 1 : 0,
    borderColor: look.soft,
    borderDash: [2, 3],
    order: 3,
  };
  const filling = series.planned === true ? look.sunk : faint(look[series.ink]);
  return [
    {
      ...edge,
      label: series.name,
      mark: 'box',
      data: points.map(({ x, low }) => ({ x, y: low })),
      fill: '+1',
      backgroundColor: filling,
    } as Dataset,
    { ...edge, label: '', data: points.map(({ x, high }) => ({ x, y: high })) } as Dataset,
  ];
}

function barSets(series: BarSeries, of: number, look: Look): Dataset[] {
  const colour = look[series.ink];
  const filling = { outline: 'transparent', wash: look.wash, full: colour }[series.look];
  return [
    {
      type: 'bar',
      label: series.name,
      of,
      mark: 'box',
      data: series.points.map((point) => ({ x: point.x, y: point.y, at: point })),
      grouped: false,
      barPercentage: 0.72,
      categoryPercentage: 1,
      borderColor: colour,
      borderWidth: series.look === 'full' ? 0 : 1.25,
      backgroundColor: filling,
      hoverBackgroundColor: filling,
      hoverBorderColor: colour,
      order: series.look === 'full' ? 4 : 5,
    },
  ];
}

/** The series of a chart as chart.js takes them. */
export const setsOf = (spec: ChartSpec, look: Look, window: Window): Dataset[] =>
  spec.series.flatMap((series, of) =>
    series.kind === 'band'
      ? bandSets(series, look)
      : series.kind === 'bar'
        ? barSets(series, of, look)
        : lineSets(series, of, look, window),
  );
