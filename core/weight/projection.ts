import { weightInRange } from '../check.ts';
import { dayFromNumber, dayNumber, type IsoDay } from '../day.ts';
import { trendOn, type TrendPoint, type WeightTrend } from './trend.ts';

/** When the trend meets a weight; null where it does not inside two years. */
export interface TargetProjection {
  readonly earliest: IsoDay | null;
  readonly mid: IsoDay | null;
  readonly latest: IsoDay | null;
  readonly sentence: string;
}

/** Most days ahead a projection goes: beyond two years a line says nothing (D). */
export const MOST_DAYS_AHEAD = 730;

/**
 * When the trend meets `targetKg`: the days on which the near edge, the middle and the far edge of
 * its 90 % band first touch it, counted from the last weighing. A straight line: dogs usually lose
 * more slowly the longer a plan runs, so the late end deserves more trust than the early one.
 *
 * @throws RangeError for a target outside 0.1–150 kg
 * @example projectTarget(sample.trend, 36.1).mid // => '2026-05-10'
 */
export function projectTarget(trend: WeightTrend, targetKg: number): TargetProjection {
  weightInRange('targetKg', targetKg);
  const last = trend.line.at(-1);
  if (last === undefined) {
    return { earliest: null, mid: null, latest: null, sentence: trend.sentence };
  }
  const from = dayNumber(last.day);
  const down = targetKg < last.kg;
  const reached = (edge: (point: TrendPoint) => number): IsoDay | null => {
    for (let day = from; day <= from + MOST_DAYS_AHEAD; day += 1) {
      const kg = edge(trendOn(trend, day)!);
      if (down ? kg <= targetKg : kg >= targetKg) return dayFromNumber(day);
    }
    return null;
  };
  const mid = reached(({ kg }) => kg);
  const earliest = reached(({ low, high }) => (down ? low : high));
  const latest = reached(({ low, high }) => (down ? high : low));
  return { earliest, mid, latest, sentence: sentenceFor(earliest, mid, latest) };
}

function sentenceFor(earliest: IsoDay | null, mid: IsoDay | null, latest: IsoDay | null): string {
  if (mid === null) return 'At this trend the target is not met.';
  if (latest === null) {
    return `At this trend the target is met from ${earliest} on; the record cannot tell yet how late.`;
  }
  return `At this trend the target is met between ${earliest} and ${latest}.`;
}
