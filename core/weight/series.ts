import { addDays, type IsoDay } from '../day.ts';
import type { CorridorPoint } from './corridor.ts';
import { HOLD_BAND_PERCENT } from './steer.ts';
import type { WeightTrend } from './trend.ts';

/** How far past the last weighing the corridor is drawn: a year of it would squeeze the record (D). */
const DAYS_AHEAD = 56;
/** The least time drawn, so that one weighing has something to stand in (D). */
const LEAST_DAYS = 28;

/** One weighing with the scale's own error, kg. */
export interface WeighedPoint {
  readonly day: IsoDay;
  readonly kg: number;
  readonly errorKg: number;
  /** Why it is looked at twice (another scale, an outlier); empty when it is not. */
  readonly flag: string;
}

/** A stretch between two weights on a day, kg. */
export interface WeightBand {
  readonly day: IsoDay;
  readonly low: number;
  readonly mid: number;
  readonly high: number;
}

/** All that the chart of the weight draws, whatever draws it. */
export interface WeightSeries {
  /** Oldest first. */
  readonly points: readonly WeighedPoint[];
  /** The line with its 90 % band; empty before there is a rate. */
  readonly trend: readonly WeightBand[];
  /** Some weeks ahead; empty without a course to hold. */
  readonly corridor: readonly WeightBand[];
  /** Where the weight may move while it is to be held; null with another aim. */
  readonly hold: { readonly low: number; readonly high: number } | null;
  readonly targetKg: number | null;
  /** First and last day drawn: from end to end stands what holds all the time. Null without a weighing. */
  readonly days: readonly [first: IsoDay, last: IsoDay] | null;
}

/**
 * The weight record as one set of series, for the screen and for paper.
 * @param of `holdKg` is the weight to be held, null with another aim
 * @example weightSeries({ trend: sample.trend, corridor: [], targetKg: 36, holdKg: null }).days
 *   // => ['2026-03-02', '2026-03-30']
 */
export function weightSeries(of: {
  readonly trend: Pick<WeightTrend, 'points' | 'line' | 'flagged'>;
  readonly corridor: readonly CorridorPoint[];
  readonly targetKg: number | null;
  readonly holdKg: number | null;
}): WeightSeries {
  const points = of.trend.points.map(({ day, weightKg, sdKg }): WeighedPoint => {
    const flagged = of.trend.flagged.find((one) => one.day === day && one.weightKg === weightKg);
    return { day, kg: weightKg, errorKg: sdKg, flag: flagged?.why ?? '' };
  });
  const weighed = points.at(-1)?.day;
  const end = weighed === undefined ? '' : addDays(weighed, DAYS_AHEAD);
  const corridor = of.corridor
    .filter(({ day }) => day <= end)
    .map(({ day, low, aim, high }): WeightBand => ({ day, low, mid: aim, high }));
  return {
    points,
    trend: of.trend.line.map(({ day, kg, low, high }) => ({ day, low, mid: kg, high })),
    corridor,
    hold: of.holdKg === null ? null : heldAround(of.holdKg),
    targetKg: of.targetKg,
    days: daysOf([...points, ...corridor]),
  };
}

/** The ration stays while the weight is inside; outside it is steered back. */
const heldAround = (kg: number): WeightSeries['hold'] => ({
  low: kg * (1 - HOLD_BAND_PERCENT.under / 100),
  high: kg * (1 + HOLD_BAND_PERCENT.above / 100),
});

function daysOf(drawn: readonly { readonly day: IsoDay }[]): WeightSeries['days'] {
  const days = drawn.map(({ day }) => day).sort();
  const [first] = days;
  if (first === undefined) return null;
  const [least, last] = [addDays(first, LEAST_DAYS), days.at(-1)!];
  return [first, last > least ? last : least];
}
