import {
  linearRegression,
  linearRegressionLine,
  weightedLinearRegression,
} from 'simple-statistics';
import { dayNumber } from '../../core/day.ts';
import { weightTrend, type Weighing } from '../../core/index.ts';
import { fitLine } from '../../core/weight/line.ts';
import { openBare, readWeighings } from './bareSql.ts';
import { compare, type BenchLine } from './measure.ts';
import { TODAY, type GeneratedPractice } from './practice.ts';

/** A dog is due when it was not weighed for this long; the number plays no part in the time. */
const DUE_AFTER_DAYS = 28;

type Row = ReturnType<typeof readWeighings>[number];

function byDog(rows: readonly Row[]): Row[][] {
  const series: Row[][] = [];
  for (const row of rows) {
    const last = series.at(-1);
    if (last?.[0]?.dogId === row.dogId) last.push(row);
    else series.push([row]);
  }
  return series;
}

/** Trend, status and whether it is due, of every dog. */
export function review(rows: readonly Row[]): { status: string; due: boolean }[] {
  const today = dayNumber(TODAY, 'today');
  return byDog(rows).map((weighings) => ({
    status: weightTrend(weighings).status,
    due: today - dayNumber(weighings.at(-1)!.day, 'day') > DUE_AFTER_DAYS,
  }));
}

/** The review of a whole practice against reading its rows. */
export async function measureReview(practice: GeneratedPractice): Promise<BenchLine> {
  const db = openBare(practice.file);
  const { ratio, oursMs, theirsMs } = await compare(
    () => review(readWeighings(db)),
    () => readWeighings(db),
    { rounds: 9 },
  );
  db.close();
  return {
    name: 'Review of the whole practice: trend, status, due',
    against: 'only reading the same rows',
    value: ratio,
    unit: '×',
    target: 3,
    note: `${oursMs.toFixed(0)} ms / ${theirsMs.toFixed(0)} ms`,
  };
}

/** What the library has of a line with known errors: the line, and the scatter about it. */
function libraryLine(pairs: [number, number][], weights: number[]): number {
  const line = linearRegressionLine(weightedLinearRegression(pairs, weights));
  return pairs.reduce((sum, [x, y], index) => sum + weights[index]! * (y - line(x)) ** 2, 0);
}

/** One line through each dog's weighings, ours with errors and interval. */
export async function measureSlope(practice: GeneratedPractice): Promise<BenchLine[]> {
  const db = openBare(practice.file);
  const series = byDog(readWeighings(db));
  db.close();
  const observations = series.map((weighings) =>
    weighings.map(({ day, weightKg }) => ({ x: dayNumber(day, 'day'), y: weightKg, sd: 0.3 })),
  );
  const pairs = observations.map((points) => points.map(({ x, y }): [number, number] => [x, y]));
  const weights = observations.map((points) => points.map(({ sd }) => 1 / (sd * sd)));
  const ours = (): void => observations.forEach((points) => fitLine(points));
  const line = await compare(ours, () =>
    pairs.forEach((points, index) => libraryLine(points, weights[index]!)),
  );
  const slope = await compare(ours, () => pairs.forEach((points) => linearRegression(points)));
  const whole = await compare(
    () => series.forEach((weighings) => weightTrend(weighings as Weighing[])),
    () =>
      series.forEach((weighings) =>
        linearRegression(weighings.map(({ day, weightKg }) => [dayNumber(day, 'day'), weightKg])),
      ),
  );
  const perSeries = (ms: number): string => `${((1000 * ms) / series.length).toFixed(2)} µs`;
  return [
    {
      name: 'Weighted line with interval, a dog',
      against: 'simple-statistics, weighted line and scatter, from the same numbers',
      value: line.ratio,
      unit: '×',
      target: 1,
      note: `${perSeries(line.oursMs)} / ${perSeries(line.theirsMs)}; ${slope.ratio.toFixed(2)} × its plain slope alone`,
    },
    {
      name: 'Whole trend with flagged weighings and sentence, a dog',
      against: 'simple-statistics, the slope alone, from the same records',
      value: whole.ratio,
      unit: '×',
      note: `${perSeries(whole.oursMs)} / ${perSeries(whole.theirsMs)}`,
    },
  ];
}
