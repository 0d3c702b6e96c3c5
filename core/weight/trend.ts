import { weightInRange } from '../check.ts';
import { dayFromNumber, type IsoDay } from '../day.ts';
import { Z90 } from '../energy/maintenance.ts';
import { figure, type Figure } from '../figure.ts';
import { fitLine, lineAt, type LineFit } from './fit.ts';
import { measured, type MeasuredWeight, type Weighing } from './weighing.ts';

/** Stable: under this change, %, over more than `STABLE_DAYS` (German 2011, S). */
export const STABLE_PERCENT = 1;
export const STABLE_DAYS = 14;
/** A weighing further than this from the line, in its own standard deviations, is flagged (D). */
const OUTLIER_SD = 3;

export type TrendStatus = 'losing' | 'gaining' | 'stable' | 'cannot tell yet';

/** A weighing to be looked at; it stays in the fit. */
export interface FlaggedWeighing {
  readonly day: IsoDay;
  readonly weightKg: number;
  readonly why: string;
}

/** The trend line on a day with its 90 % band, kg. */
export interface TrendPoint {
  readonly day: IsoDay;
  readonly kg: number;
  readonly low: number;
  readonly high: number;
}

export interface WeightTrend {
  /** % of the weight at the start of the line per week, negative when losing; null before a rate exists. */
  readonly percentPerWeek: number | null;
  /** 90 % interval of the rate. */
  readonly low: number | null;
  readonly high: number | null;
  readonly kgPerWeek: number | null;
  readonly status: TrendStatus;
  readonly sentence: string;
  /** Weighings used, oldest first, with the standard deviation of each, kg. */
  readonly points: readonly MeasuredWeight[];
  readonly spanDays: number;
  /** First and last day of the line with its band; empty before a rate exists. */
  readonly line: readonly TrendPoint[];
  readonly flagged: readonly FlaggedWeighing[];
  readonly figure: Figure | null;
}

/**
 * Rate of weight change with a 90 % interval, % per week of the weight at the start of the line.
 *
 * A line by weighted least squares with each weighing's own error (1 % of weight, the scale's step,
 * more for another scale, harness or wet coat). Weighings that stand out are flagged and stay in.
 * Fewer than two days give `cannot tell yet`.
 *
 * @throws RangeError naming the weighing whose weight or day is out of range
 * @example weightTrend([{ day: '2026-03-01', weightKg: 40 }, { day: '2026-03-15', weightKg: 39.2 }])
 *   .percentPerWeek // −1.0
 * Sources: rate by the AAHA monitoring page (S), stable by German 2011 (S), scale error ours (D).
 */
export function weightTrend(weighings: readonly Weighing[]): WeightTrend {
  const points = measured(weighings);
  const fit = points.length < 2 ? null : fitLine(points);
  if (fit === null) return withoutRate(points);
  const firstDay = points[0]!.dayNumber;
  const lastDay = points.at(-1)!.dayNumber;
  const startKg = lineAt(fit, firstDay).kg;
  const perWeek = (kgPerDay: number): number => (100 * 7 * kgPerDay) / startKg;
  const percentPerWeek = perWeek(fit.slope);
  const half = perWeek(Z90 * fit.slopeSd);
  const spanDays = lastDay - firstDay;
  const status = statusOf(percentPerWeek, half, spanDays);
  return {
    percentPerWeek,
    low: percentPerWeek - half,
    high: percentPerWeek + half,
    kgPerWeek: 7 * fit.slope,
    status,
    sentence: SENTENCES[status],
    points,
    spanDays,
    line: [trendPoint(fit, firstDay), trendPoint(fit, lastDay)],
    flagged: flag(points, fit),
    figure: trendFigure(percentPerWeek, half, points, spanDays),
  };
}

const SENTENCES: Readonly<Record<TrendStatus, string>> = {
  losing: 'The dog is losing weight; the change is larger than the error of the scale.',
  gaining: 'The dog is gaining weight; the change is larger than the error of the scale.',
  stable: 'The weight is stable: under 1 % change over more than 14 days.',
  'cannot tell yet': 'The record cannot tell yet: the change is within the error of the scale.',
};

function statusOf(percentPerWeek: number, half: number, spanDays: number): TrendStatus {
  const total = (percentPerWeek * spanDays) / 7;
  if (spanDays > STABLE_DAYS && Math.abs(total) < STABLE_PERCENT) return 'stable';
  if (percentPerWeek + half < 0) return 'losing';
  if (percentPerWeek - half > 0) return 'gaining';
  return 'cannot tell yet';
}

function withoutRate(points: readonly MeasuredWeight[]): WeightTrend {
  return {
    percentPerWeek: null,
    low: null,
    high: null,
    kgPerWeek: null,
    status: 'cannot tell yet',
    sentence: 'A rate needs weighings on two different days.',
    points,
    spanDays: 0,
    line: [],
    flagged: [],
    figure: null,
  };
}

function trendPoint(fit: LineFit, day: number): TrendPoint {
  const { kg, sd } = lineAt(fit, day);
  return { day: dayFromNumber(day), kg, low: kg - Z90 * sd, high: kg + Z90 * sd };
}

function flag(points: readonly MeasuredWeight[], fit: LineFit): FlaggedWeighing[] {
  return points.flatMap(({ day, weightKg, method }, index) => {
    const reasons = [
      ...(method === 'same scale' ? [] : [`weighed differently (${method})`]),
      ...(points.length > 2 && Math.abs(outlierScore(points, index, fit)) > OUTLIER_SD
        ? ['far from the other weighings: check for a slip']
        : []),
    ];
    return reasons.length === 0 ? [] : [{ day, weightKg, why: reasons.join('; ') }];
  });
}

/** Distance of one weighing from the line through the others, in standard deviations. */
function outlierScore(points: readonly MeasuredWeight[], index: number, all: LineFit): number {
  const point = points[index]!;
  const others = fitLine(points.filter((_, other) => other !== index));
  if (others === null) return all.scaledResiduals[index]!;
  const expected = lineAt(others, point.dayNumber);
  return (point.weightKg - expected.kg) / Math.hypot(point.sdKg, expected.sd);
}

function trendFigure(
  percentPerWeek: number,
  half: number,
  points: readonly MeasuredWeight[],
  spanDays: number,
): Figure {
  return {
    ...figure(percentPerWeek, {
      id: 'weightTrend',
      label: 'Weight trend',
      unit: '% per week',
      formula:
        'slope of the line through the weighings, each weighted by its error, per week / weight at its start',
      inputs: [
        { label: 'Weighings', value: points.length, unit: '' },
        { label: 'Time spanned', value: spanDays, unit: 'days' },
        {
          label: 'Error of one weighing',
          value: Math.round(points.at(-1)!.sdKg * 100) / 100,
          unit: 'kg',
        },
      ],
      evidence: 'D',
      mark: 'D',
      sources: ['aahaWeight', 'german2011', 'ownDecision'],
      notes: [
        'No published error of canine scales was found: 1 % of body weight and the step of the scale are our own choice.',
      ],
      rangeMeaning: '90 % interval',
    }),
    low: percentPerWeek - half,
    high: percentPerWeek + half,
  };
}

/** Earliest and latest day the line meets a weight; null where it does not head there. */
export interface TargetProjection {
  readonly earliest: IsoDay | null;
  readonly latest: IsoDay | null;
}

/** Most days ahead a projection goes: beyond two years a line says nothing (D). */
const MOST_DAYS_AHEAD = 730;

/**
 * When the trend meets `targetKg`, as a range from both ends of the rate's interval.
 * @throws RangeError for a target outside 0.1–150 kg
 */
export function projectTarget(trend: WeightTrend, targetKg: number): TargetProjection {
  weightInRange('targetKg', targetKg);
  const last = trend.line.at(-1);
  const { low, high, points } = trend;
  if (last === undefined || low === null || high === null) return { earliest: null, latest: null };
  const startKg = trend.line[0]!.kg;
  const toDay = (percent: number): number | null => {
    const days = (targetKg - last.kg) / ((percent * startKg) / 700);
    return days >= 0 && days <= MOST_DAYS_AHEAD ? points.at(-1)!.dayNumber + days : null;
  };
  const [fast, slow] = targetKg < last.kg ? [low, high] : [high, low];
  const earliest = toDay(fast);
  const latest = toDay(slow);
  return {
    earliest: earliest === null ? null : dayFromNumber(Math.floor(earliest)),
    latest: latest === null ? null : dayFromNumber(Math.ceil(latest)),
  };
}
