import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  dayNumber,
  lossCorridor,
  weightSeries,
  weightTrend,
  type WeightSeries,
} from '../../core/index.ts';
import { axis, niceStep, spread } from '../../templates/charts/scale.ts';
import { weightChart } from '../../templates/charts/weightChart.ts';
import { createFormat } from '../../templates/format.ts';
import { en } from '../../templates/index.ts';
import { palette } from '../../templates/theme.ts';
import { practice } from './support/people.ts';
import { evenly, holds } from '../support/laws.ts';

describe('axis', () => {
  it('steps by 1, 2 or 5 times a power of ten', () => {
    expect([niceStep(10, 5), niceStep(3.1, 5), niceStep(70, 5)]).toEqual([2, 1, 20]);
  });

  it('encloses every value between round ends', () => {
    const value = evenly(0.5, 300);
    holds(
      fc.property(value, value, (a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        const { min, max, ticks } = axis(low, high);
        expect(min).toBeLessThanOrEqual(low);
        expect(max).toBeGreaterThanOrEqual(high);
        expect(ticks.length).toBeGreaterThanOrEqual(2);
        expect(ticks.length).toBeLessThanOrEqual(9);
      }),
      { seed: 1, numRuns: 500 },
    );
  });

  it('thins a list out but keeps its ends', () => {
    expect(spread([1, 2, 3, 4, 5, 6, 7, 8, 9], 4)).toEqual([1, 4, 6, 9]);
    expect(spread([1, 2], 4)).toEqual([1, 2]);
  });
});

const format = createFormat(practice, en.frame.numbers);
const WIDTH = 493;

/** What is drawn of a series: numbers of the SVG, and the words with their places. */
function drawn(series: WeightSeries) {
  const content = weightChart(series, en.progress.chart, format, palette(null), WIDTH);
  const { stack } = content as unknown as {
    stack: { svg?: string; columns?: { text: string }[]; relativePosition?: { y: number } }[];
  };
  const svg = stack.find((part) => part.svg !== undefined)!.svg!;
  const list = (text: string) => text.split(' ').map((pair) => pair.split(',').map(Number));
  const lists = (tag: string) =>
    [...svg.matchAll(new RegExp(`<${tag} points="([^"]+)"`, 'g'))].map(([, text]) => list(text!));
  return {
    // The last one is the sample in the legend.
    discs: [...svg.matchAll(/<circle cx="([^"]+)" cy="([^"]+)"/g)]
      .map(([, x, y]) => [Number(x), Number(y)])
      .slice(0, -1),
    polygons: lists('polygon'),
    polylines: lists('polyline'),
    labels: stack.flatMap(({ columns, relativePosition }) =>
      columns === undefined ? [] : [{ text: columns[0]!.text, y: relativePosition!.y }],
    ),
  };
}

/** Where days and weights must lie when two of them lie where they do. */
function mapThrough(one: Placed, other: Placed) {
  const [[x1, y1], [x2, y2]] = [one.at, other.at] as [[number, number], [number, number]];
  const across = (x2 - x1) / (dayNumber(other.day) - dayNumber(one.day));
  const up = (y2 - y1) / (other.kg - one.kg);
  return (day: string, kg: number) => [
    x1 + across * (dayNumber(day) - dayNumber(one.day)),
    y1 + up * (kg - one.kg),
  ];
}
interface Placed {
  readonly day: string;
  readonly kg: number;
  readonly at: number[];
}
/** Two places of the drawing, written to hundredths of a point, are the same. */
function expectAt(found: number[][], wanted: number[][]): void {
  expect(found).toHaveLength(wanted.length);
  found.forEach((at, index) => {
    expect(at[0]).toBeCloseTo(wanted[index]![0]!, 0);
    expect(at[1]).toBeCloseTo(wanted[index]![1]!, 0);
  });
}

describe('the weight on paper', () => {
  const trend = weightTrend([
    { day: '2025-12-01', weightKg: 24.2 },
    { day: '2025-12-15', weightKg: 23.9 },
    { day: '2025-12-29', weightKg: 24.3, method: 'other scale' },
    { day: '2026-01-12', weightKg: 23.1 },
  ]);
  const series = weightSeries({
    trend,
    corridor: lossCorridor({ startDay: '2025-12-01', initialKg: 24.2, targetKg: 15 }),
    targetKg: 15,
    holdKg: null,
  });
  const plain = series.points.filter(({ flag }) => flag === '');
  const { discs, polygons, polylines, labels } = drawn(series);
  const at = mapThrough({ ...plain[0]!, at: discs[0]! }, { ...plain.at(-1)!, at: discs.at(-1)! });

  it('has every weighing where the series has it, the flagged one as an open diamond', () => {
    expect(plain).toHaveLength(3);
    expectAt(
      discs,
      plain.map(({ day, kg }) => at(day, kg)),
    );
    const flagged = series.points.find(({ flag }) => flag !== '')!;
    const [x, y] = at(flagged.day, flagged.kg) as [number, number];
    const around = [
      [x, y - 4.5],
      [x + 4.5, y],
      [x, y + 4.5],
      [x - 4.5, y],
    ];
    expectAt(polygons[1]!, around);
  });

  it('draws the corridor and the trend through the same numbers as the screen', () => {
    const { corridor } = series;
    const [high, low] = (['high', 'low'] as const).map((end) =>
      corridor.map((band) => at(band.day, band[end])),
    );
    expectAt(polygons[0]!, [...high!, ...low!.toReversed()]);
    expectAt(polylines[0]!, high!);
    expectAt(polylines[1]!, low!);
    expectAt(
      polylines[2]!,
      series.trend.map(({ day, mid }) => at(day, mid)),
    );
  });

  it('writes beside the axis what lies there', () => {
    const ticks = labels.filter(({ text }) => /^\d+(\.\d)?$/.test(text));
    expect(ticks.length).toBeGreaterThanOrEqual(2);
    // A line of small text is 11 points high and stands with its middle at its value.
    for (const { text, y } of ticks) {
      expect(y + 5.5).toBeCloseTo(at('2025-12-01', Number(text))[1]!, 0);
    }
  });

  it('shades where the weight is to hold, from end to end, and names it', () => {
    const held = weightSeries({ trend, corridor: [], targetKg: null, holdKg: 24 });
    const shown = drawn(held);
    const seen = held.points.filter(({ flag }) => flag === '');
    const placed = mapThrough(
      { ...seen[0]!, at: shown.discs[0]! },
      { ...seen.at(-1)!, at: shown.discs.at(-1)! },
    );
    const { low, high } = held.hold!;
    const [first, last] = held.days!;
    expectAt(shown.polygons[0]!, [
      placed(first, high),
      placed(last, high),
      placed(last, low),
      placed(first, low),
    ]);
    expect(shown.labels.map(({ text }) => text)).toContain(en.progress.chart.corridor);
  });

  it('gives a single weighing room', () => {
    const one = weightTrend([{ day: '2025-12-01', weightKg: 24 }]);
    const { discs: only } = drawn(
      weightSeries({ trend: one, corridor: [], targetKg: null, holdKg: null }),
    );
    expect(only).toHaveLength(1);
    expect(only[0]!.every((value) => value > 0 && value < WIDTH)).toBe(true);
  });
});
