import { listOf } from '../check.ts';
import { dayFromNumber, type IsoDay } from '../day.ts';
import { Z90 } from '../energy/maintenance.ts';
import { figure, type Figure } from '../figure.ts';
import { from } from '../origin.ts';
import { fitLine, lineAt, type LineFit } from './line.ts';
import { flagWeighings, type FlaggedWeighing } from './flagWeighings.ts';
import { measured, toObservation, type MeasuredWeight, type Weighing } from './weighing.ts';

/** Stable: under this change, %, over more than `STABLE_DAYS` (German 2011, S). */
export const STABLE_PERCENT = 1;
export const STABLE_DAYS = 14;
/** The same as a rate: 1 % in two weeks (C). */
export const STABLE_PERCENT_PER_WEEK = STABLE_PERCENT / (STABLE_DAYS / 7);

export type TrendStatus = 'losing' | 'gaining' | 'stable' | 'cannot tell yet';

/** The trend line on a day with its 90 % band, kg. */
export interface TrendPoint {
  readonly day: IsoDay;
  readonly kg: number;
  readonly low: number;
  readonly high: number;
}

/** A rate of weight change, % per week, with its 90 % interval. */
export interface TrendRate {
  readonly percentPerWeek: number;
  readonly low: number;
  readonly high: number;
}

/** The line behind a trend, for projections: weight against day numbers. */
export type TrendFit = LineFit;

export interface WeightTrend {
  /** % of the weight at the start of the line per week, negative when losing; null before a rate exists. */
  readonly percentPerWeek: number | null;
  /** 90 % interval of the rate. */
  readonly low: number | null;
  readonly high: number | null;
  readonly kgPerWeek: number | null;
  /** Change over the time spanned, % of the weight at its start, with its 90 % interval. */
  readonly change: { readonly mid: number; readonly low: number; readonly high: number } | null;
  readonly status: TrendStatus;
  /** Its amounts are marked. */
  readonly sentence: string;
  /** Weighings used, oldest first, with the standard deviation of each, kg. */
  readonly points: readonly MeasuredWeight[];
  readonly spanDays: number;
  /** The line with its band on the day of each weighing; empty before a rate exists. */
  readonly line: readonly TrendPoint[];
  readonly flagged: readonly FlaggedWeighing[];
  /** The rate as it would be without the outliers, set beside it; null when there are none. */
  readonly withoutOutliers: TrendRate | null;
  readonly fit: TrendFit | null;
  readonly figure: Figure | null;
}

/**
 * Rate of weight change with a 90 % interval, % per week of the weight at the start of the line.
 *
 * A line by generalised least squares with each weighing's own error: 1 % of weight, the scale's
 * step d / √12, more for a wet coat, and an unknown offset shared by all weighings on another scale
 * or in the harness. Where the weighings scatter more than that explains, the interval widens; it is
 * never narrowed. Weighings that stand out are flagged and stay in, with the rate without them
 * beside. Fewer than two days give `cannot tell yet`.
 *
 * `losing` and `gaining` need the whole interval on one side of nothing; `stable` needs more than
 * 14 days and the whole interval inside ±0.5 % a week (1 % in two weeks).
 *
 * @throws RangeError without a list of weighings, or naming the weighing whose weight, step, method or day is out of range
 * @example
 * weightTrend([{ day: '2026-03-01', weightKg: 40 }, { day: '2026-03-15', weightKg: 39.2 }])
 *   // => { percentPerWeek: -1.0, status: 'cannot tell yet', … }
 * Sources: rate by the AAHA monitoring page (S), stable by German 2011 (S), scale error ours (D).
 */
export function weightTrend(weighings: readonly Weighing[]): WeightTrend {
  const points = measured(listOf('weighings', weighings));
  const observations = points.map(toObservation);
  const fit = fitLine(observations);
  if (fit === null) return withoutRate(points);
  const rate = rateOf(points, fit);
  const spanDays = points.at(-1)!.dayNumber - points[0]!.dayNumber;
  const weeks = spanDays / 7;
  const flagged = flagWeighings(points, observations);
  const status = statusOf(rate, spanDays);
  return {
    ...rate,
    kgPerWeek: 7 * fit.slope,
    change: { mid: rate.percentPerWeek * weeks, low: rate.low * weeks, high: rate.high * weeks },
    status,
    sentence: sentenceFor(status, rate, spanDays, flagged),
    points,
    spanDays,
    line: lineThrough(points, fit),
    flagged,
    withoutOutliers: rateWithout(points, flagged),
    fit,
    figure: trendFigure(rate, points, spanDays),
  };
}

function rateOf(points: readonly MeasuredWeight[], fit: LineFit): TrendRate {
  // A slip in the record can draw the line below nothing; the rate then leans on the typical weight.
  const drawn = lineAt(fit, points[0]!.dayNumber).y;
  const startKg = drawn > 0.5 * points[0]!.typicalKg ? drawn : points[0]!.typicalKg;
  const percentPerWeek = (100 * 7 * fit.slope) / startKg;
  const half = (100 * 7 * Z90 * fit.slopeSd) / startKg;
  return { percentPerWeek, low: percentPerWeek - half, high: percentPerWeek + half };
}

function rateWithout(
  points: readonly MeasuredWeight[],
  flagged: readonly FlaggedWeighing[],
): TrendRate | null {
  const out = flagged.filter(({ outlier }) => outlier);
  if (out.length === 0) return null;
  const kept = points.filter(
    (point) => !out.some(({ day, weightKg }) => day === point.day && weightKg === point.weightKg),
  );
  const fit = fitLine(kept.map(toObservation));
  return fit === null ? null : rateOf(kept, fit);
}

function statusOf({ low, high }: TrendRate, spanDays: number): TrendStatus {
  const bound = STABLE_PERCENT_PER_WEEK;
  if (spanDays > STABLE_DAYS && low > -bound && high < bound) {
    const drifted = Math.abs(((low + high) / 2) * (spanDays / 7)) >= STABLE_PERCENT;
    if (!drifted || (low <= 0 && high >= 0)) return 'stable';
  }
  if (high < 0) return 'losing';
  if (low > 0) return 'gaining';
  return 'cannot tell yet';
}

const percent = (value: number): string => {
  const size = Math.abs(value).toFixed(1);
  return size === '0.0' ? '0.0' : `${value < 0 ? '−' : '+'}${size}`;
};

/** Weighings that stand out make a wide interval that says nothing of the scale's error. */
function standingOut(flagged: readonly FlaggedWeighing[]): string | null {
  const out = flagged.filter(({ outlier }) => outlier);
  if (out.length === 0) return null;
  const which = out.map(({ day, weightKg }) => `{${weightKg} kg} on ${day}`).join(', ');
  return out.length === 1
    ? `One weighing stands out and should be checked: ${which}.`
    : `Weighings stand out and should be checked: ${which}.`;
}

function sentenceFor(
  status: TrendStatus,
  rate: TrendRate,
  spanDays: number,
  flagged: readonly FlaggedWeighing[],
): string {
  const check = standingOut(flagged);
  if (check === null) return rateSentence(status, rate, spanDays);
  return status === 'cannot tell yet'
    ? `${check} Until then the record cannot tell.`
    : `${rateSentence(status, rate, spanDays)} ${check}`;
}

function rateSentence(status: TrendStatus, { low, high }: TrendRate, spanDays: number): string {
  const between = `between ${percent(low)} and ${percent(high)} % a week`;
  if (status === 'losing') return `The dog is losing weight: ${between}.`;
  if (status === 'gaining') return `The dog is gaining weight: ${between}.`;
  if (status === 'stable') return `The weight is stable over ${spanDays} days: ${between}.`;
  return `The record cannot tell yet: the change is ${between}, within the error of the scale.`;
}

function withoutRate(points: readonly MeasuredWeight[]): WeightTrend {
  return {
    percentPerWeek: null,
    low: null,
    high: null,
    kgPerWeek: null,
    change: null,
    status: 'cannot tell yet',
    sentence: 'There is no rate of change yet: it takes weighings on two different days.',
    points,
    spanDays: 0,
    line: [],
    flagged: flagWeighings(points, points.map(toObservation)),
    withoutOutliers: null,
    fit: null,
    figure: null,
  };
}

/** The line on the day of each weighing, each day once. */
function lineThrough(points: readonly MeasuredWeight[], fit: LineFit): TrendPoint[] {
  return points
    .filter(({ dayNumber }, index) => dayNumber !== points[index - 1]?.dayNumber)
    .map(({ day, dayNumber }) => trendPoint(fit, day, dayNumber));
}

function trendPoint(fit: LineFit, day: IsoDay, dayNumber: number): TrendPoint {
  const { y, sd } = lineAt(fit, dayNumber);
  return { day, kg: y, low: y - Z90 * sd, high: y + Z90 * sd };
}

/**
 * The trend line and its band on any day, for a chart; null before a rate exists.
 * @example trendOn(sample.trend, dayNumber('2026-04-06'))?.kg // => 38.0
 */
export function trendOn(trend: WeightTrend, dayNumber: number): TrendPoint | null {
  if (trend.fit === null) return null;
  return trendPoint(trend.fit, dayFromNumber(dayNumber), dayNumber);
}

function trendFigure(
  { percentPerWeek, low, high }: TrendRate,
  points: readonly MeasuredWeight[],
  spanDays: number,
): Figure {
  const errorKg = Math.round(points.at(-1)!.sdKg * 100) / 100;
  const text = figure(percentPerWeek, {
    id: 'weightTrend',
    label: 'Weight trend',
    unit: '% a week',
    formula:
      'slope of the line through the weighings, each weighted by its error: kg a week / weight at its start',
    inputs: [
      { label: 'Weighings', value: points.length, unit: '' },
      { label: 'Time spanned', value: spanDays, unit: 'days' },
      { label: 'Error of one weighing', value: errorKg, unit: 'kg' },
    ],
    ...from('D', 'D', 'aahaWeight', 'german2011', 'ownDecision'),
    notes: [
      'No published error of canine scales was found: 1 % of body weight and the step of the scale are our own choice.',
    ],
    rangeMeaning: '90 % interval',
  });
  return { ...text, low, high };
}
