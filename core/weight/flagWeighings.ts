import type { IsoDay } from '../day.ts';
import { lineAt, type LineFit, type Observation } from './line.ts';
import { addTo, lineFrom, momentsOf } from './line.ts';
import type { MeasuredWeight } from './weighing.ts';

/** A weighing to be looked at; it stays in the fit. */
export interface FlaggedWeighing {
  readonly day: IsoDay;
  readonly weightKg: number;
  readonly why: string;
  /** True when it stands out, false when it was only weighed differently. */
  readonly outlier: boolean;
}

/** A weighing further than this from the line through the others, in standard deviations (D). */
export const OUTLIER_SD = 3;
/** Between two weighings alone, a change faster than this is called a slip first, % per week (D). */
export const SLIP_PERCENT_PER_WEEK = 5;

const FAR = 'far from the other weighings: check for a slip';
const DISAGREE = 'the three weighings do not fit one line: check each for a slip';
const FAST = 'a change this fast is more often a slip of pen or unit than a dog: check both';

/**
 * The weighings to look at: made differently, or out of line. `observations` are the weighings as
 * the caller's line sees them, in the same order.
 * @example
 * flagWeighings(sample.slipped, sample.slipped.map(toObservation)).map(({ weightKg }) => weightKg)
 *   // => [3.8]
 */
export function flagWeighings(
  points: readonly MeasuredWeight[],
  observations: readonly Observation[],
): FlaggedWeighing[] {
  const outOfLine = whyOutOfLine(points, observations);
  return points.flatMap(({ day, weightKg, method }, index) => {
    const why = outOfLine.get(index);
    const reasons = [
      ...(method === 'same scale' ? [] : [`weighed differently (${method})`]),
      ...(why === undefined ? [] : [why]),
    ];
    if (reasons.length === 0) return [];
    return [{ day, weightKg, why: reasons.join('; '), outlier: why !== undefined }];
  });
}

/**
 * What is to be said of the weighings that do not fit the others, by their place in the list.
 * @example [...whyOutOfLine(sample.slipped, sample.slipped.map(toObservation)).keys()] // => [5]
 */
export function whyOutOfLine(
  points: readonly MeasuredWeight[],
  observations: readonly Observation[],
): Map<number, string> {
  if (points.length < 3) return new Map(tooFast(points) ? points.map((_, i) => [i, FAST]) : []);
  const worst = worstOf(observations, [...observations.keys()]);
  if (worst === null || worst.score <= OUTLIER_SD) return new Map();
  // One line through three points has one degree of freedom: nothing tells which of them is off.
  if (points.length === 3) return new Map(points.map((_, index) => [index, DISAGREE]));
  return oneByOne(observations);
}

function tooFast(points: readonly MeasuredWeight[]): boolean {
  const [first, last] = points;
  if (first === undefined || last === undefined) return false;
  const weeks = Math.max(1, (last.dayNumber - first.dayNumber) / 7);
  const percent = (100 * Math.abs(last.weightKg - first.weightKg)) / first.weightKg;
  return percent / weeks > SLIP_PERCENT_PER_WEEK;
}

/** Takes the worst away and looks again, so that one slip does not cast doubt on its neighbours. */
function oneByOne(observations: readonly Observation[]): Map<number, string> {
  const found = new Map<number, string>();
  let left = [...observations.keys()];
  while (left.length > 3) {
    const worst = worstOf(observations, left);
    if (worst === null || worst.score <= OUTLIER_SD) break;
    found.set(worst.index, FAR);
    left = left.filter((index) => index !== worst.index);
  }
  return found;
}

/** The observation furthest from the line through the others. */
function worstOf(
  observations: readonly Observation[],
  among: readonly number[],
): { readonly index: number; readonly score: number } | null {
  const moments = momentsOf(among.map((index) => observations[index]!));
  let worst: { index: number; score: number } | null = null;
  for (const index of among) {
    const point = observations[index]!;
    addTo(moments, point, -1);
    const others = lineFrom(moments);
    addTo(moments, point, 1);
    if (others === null) continue;
    const score = Math.abs(distance(point, others));
    if (worst === null || score > worst.score) worst = { index, score };
  }
  return worst;
}

/** Distance of an observation from a line, in standard deviations of the two together. */
function distance(point: Observation, others: LineFit): number {
  const expected = lineAt(others, point.x);
  const offset = point.groupSd ?? 0;
  const variance = point.sd * point.sd + offset * offset + expected.sd * expected.sd;
  return (point.y - expected.y) / Math.sqrt(variance);
}
