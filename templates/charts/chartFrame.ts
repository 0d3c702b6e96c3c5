import { dayNumber, type IsoDay } from '../../core/day.ts';
import type { WeightSeries } from '../../core/nutrition.ts';
import { lbFromKg } from '../../core/units.ts';
import type { Format } from '../format.ts';
import { axis, type Axis } from './scale.ts';

/** Height of the whole drawing in points, legend included. */
export const CHART_HEIGHT = 206;
const PLOT = { left: 46, top: 8, right: 12, bottom: 56, inset: 10 } as const;
/** Room under the lowest mark, as a share of the range. */
const LOWER_ROOM = 0.06;

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

/** Lays the axes so that every mark of the series fits, which holds one weighing at least. */
export function chartFrame(series: WeightSeries, format: Format, width: number): ChartFrame {
  const unit = (kg: number) => (format.weightUnit === 'lb' ? lbFromKg(kg) : kg);
  const [first, last] = [dayNumber(series.days![0]), dayNumber(series.days![1])];
  const values = [
    ...series.points.flatMap(({ kg, errorKg }) => [kg - errorKg, kg + errorKg]),
    ...[...series.corridor, series.hold].flatMap((band) =>
      band === null ? [] : [band.low, band.high],
    ),
    ...(series.targetKg === null ? [] : [series.targetKg]),
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
    x: (day) => left + PLOT.inset + ((dayNumber(day) - first) / (last - first)) * across,
    y: (kg) => tickY(unit(kg)),
    tickY,
    axis: scale,
    left,
    right,
    top,
    bottom,
  };
}
