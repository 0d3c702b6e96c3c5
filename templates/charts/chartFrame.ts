import { addDays, dayNumber, type IsoDay } from '../../core/day.ts';
import { lbFromKg } from '../../core/units.ts';
import type { CorridorPoint, WeightTrend } from '../../core/nutrition.ts';
import type { Format } from '../format.ts';
import { axis, type Axis } from './scale.ts';

export interface WeightChartData {
  /** The weighings with their errors, the line through them and those set apart. */
  readonly trend: WeightTrend;
  /** Empty when there is no course to hold. */
  readonly corridor: readonly CorridorPoint[];
  readonly targetKg: number | null;
}

/** Height of the whole drawing in points, legend included. */
export const CHART_HEIGHT = 206;
const PLOT = { left: 46, top: 8, right: 12, bottom: 56, inset: 10 } as const;
/** How far past the last weighing the course is drawn. */
const DAYS_AHEAD = 56;
/** Room under the lowest mark, as a share of the range. */
const LOWER_ROOM = 0.06;
/** Shortest time that the axis spans. */
const LEAST_DAYS = 14;

/** Where days and weights lie on the drawing, in points from its top left corner. */
export interface ChartFrame {
  readonly x: (day: IsoDay) => number;
  readonly y: (kg: number) => number;
  /** As `y`, for a value in the unit of the axis. */
  readonly tickY: (value: number) => number;
  readonly axis: Axis;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The corridor up to some weeks ahead: a course of a year would squeeze the record into a corner. */
export function nearCorridor(data: WeightChartData): readonly CorridorPoint[] {
  const last = data.trend.points.at(-1);
  if (last === undefined) return data.corridor;
  const end = addDays(last.day, DAYS_AHEAD);
  return data.corridor.filter((point) => point.day <= end);
}

/** Lays the axes so that every mark of the data fits. */
export function chartFrame(data: WeightChartData, format: Format, width: number): ChartFrame {
  const unit = (kg: number) => (format.weightUnit === 'lb' ? lbFromKg(kg) : kg);
  const days = [...data.trend.points, ...data.corridor].map((item) => dayNumber(item.day));
  const first = Math.min(...days);
  const span = Math.max(Math.max(...days) - first, LEAST_DAYS);
  const values = [
    ...data.trend.points.flatMap((p) => [p.weightKg - p.sdKg, p.weightKg + p.sdKg]),
    ...data.corridor.flatMap((c) => [c.low, c.high]),
    ...(data.targetKg === null ? [] : [data.targetKg]),
  ].map(unit);
  const [lowest, highest] = [Math.min(...values), Math.max(...values)];
  // Room below, so that the target does not lie on the axis.
  const scale = axis(lowest - (highest - lowest) * LOWER_ROOM, highest);
  const [left, right] = [PLOT.left, width - PLOT.right];
  const [top, bottom] = [PLOT.top, CHART_HEIGHT - PLOT.bottom];
  const across = right - left - 2 * PLOT.inset;
  const tickY = (value: number) =>
    bottom - ((value - scale.min) / (scale.max - scale.min)) * (bottom - top);
  return {
    x: (day) => left + PLOT.inset + ((dayNumber(day) - first) / span) * across,
    y: (kg) => tickY(unit(kg)),
    tickY,
    axis: scale,
    left,
    right,
    top,
    bottom,
  };
}
