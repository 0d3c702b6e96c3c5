import { describe, expect, it } from 'vitest';
import { yAxisOf } from '../../../renderer/chart/axes.ts';
import { setsOf, type Dataset } from '../../../renderer/chart/datasets.ts';
import { configOf } from '../../../renderer/chart/draw.ts';
import type { Look } from '../../../renderer/chart/look.ts';
import type { ChartSpec, LineSeries, Series } from '../../../renderer/chart/spec.ts';

const LOOK: Look = {
  paper: 'rgb(255, 255, 255)',
  sheet: 'rgb(255, 255, 255)',
  sunk: 'rgb(230, 230, 230)',
  rule: 'rgb(200, 200, 200)',
  soft: 'rgb(90, 90, 90)',
  ink: 'rgb(0, 0, 0)',
  accent: 'rgb(31, 75, 122)',
  wash: 'rgb(226, 233, 241)',
  ochre: 'rgb(116, 81, 11)',
  font: 'sans-serif',
  size: 13,
};
const chart = (series: readonly Series[], y: Partial<ChartSpec['y']> = {}): ChartSpec => ({
  label: '',
  title: '',
  heightPx: 200,
  x: { kind: 'count', name: 'week' },
  y: { unit: 'min', ...y },
  series,
});
const line = (values: readonly number[], more: Partial<LineSeries> = {}): LineSeries => ({
  kind: 'line',
  name: 'one',
  ink: 'ink',
  line: 'solid',
  shape: 'dot',
  points: values.map((y, x) => ({ x, y, text: `${y}` })),
  ...more,
});
const radiusOf = (set: Dataset) => (set as { pointRadius: readonly number[] }).pointRadius[0]!;
const xs = (set: Dataset) => set.data.map(({ x }) => x);

describe('the value axis', () => {
  it.each([
    { values: [6], y: { min: 0 } },
    { values: [0, 0], y: { min: 0 } },
    { values: [24.1], y: {} },
    { values: [-3, -3], y: {} },
  ])('has room over $values and under them', ({ values, y }) => {
    const { min, max } = yAxisOf(chart([line(values)], y), LOOK);
    expect(max!).toBeGreaterThan(Math.max(...values));
    expect(min!).toBeLessThanOrEqual(y.min ?? Math.min(...values) - 0.01);
  });

  it('writes as many places as its steps ask for, thousands apart, and a minus as one', () => {
    const ticks = yAxisOf(chart([line([1, 2])]), LOOK).ticks as unknown as {
      callback(value: number, index: number, all: readonly { value: number }[]): string;
    };
    const text = (value: number, step: number) =>
      ticks.callback(value, 0, [{ value }, { value: value + step }]);
    expect([text(38, 0.5), text(2000, 500), text(-1, 1), text(0.1, 0.05)]).toEqual([
      '38.0',
      '2,000',
      '−1',
      '0.10',
    ]);
  });
});

describe('what is drawn', () => {
  const many = line(Array.from({ length: 200 }, (_, index) => index));

  it('gets smaller where two hundred values are in sight, and full again where a few are', () => {
    const [full] = setsOf(chart([line([1, 2, 3])]), LOOK, null);
    const [crowded] = setsOf(chart([many]), LOOK, null);
    const [near] = setsOf(chart([many]), LOOK, [0, 12]);
    expect(radiusOf(crowded!)).toBeLessThan(0.6 * radiusOf(full!));
    expect(radiusOf(near!)).toBe(radiusOf(full!));
  });

  it('shows a single day of a band and of a bare line, each as long as half a day', () => {
    const band = {
      kind: 'band',
      name: '',
      ink: 'accent',
      points: [{ x: 5, low: 1, high: 2 }],
    } as const;
    const sets = setsOf(chart([line([4], { shape: 'none' }), band, line([4])]), LOOK, null);
    expect(sets.map(xs)).toEqual([[-0.25, 0.25], [4.75, 5.25], [4.75, 5.25], [0]]);
  });
});

describe('the words beside a value', () => {
  /** Letters of a fixed width stand in for those of a canvas. */
  const LETTER_PX = 7;
  const linesIn = (width: number, text: string): readonly string[] => {
    const config = configOf(chart([line([1])]), LOOK, null);
    const { label } = config.options!.plugins!.tooltip!.callbacks!;
    const ctx = {
      save() {},
      restore() {},
      measureText: (words: string) => ({ width: words.length * LETTER_PX }),
    };
    return (label as (item: unknown) => string[])({
      raw: { x: 0, y: 1, at: { x: 0, y: 1, text } },
      chart: { ctx, width },
    });
  };
  const TEXT =
    'Left hind at trot, 24.11.2026: grade 2 of 5, slight at every stride; worse, grade 0 to 2';

  it('break where a narrow chart ends, and lose none', () => {
    const lines = linesIn(320, TEXT);
    expect(lines.every((each) => each.length * LETTER_PX <= 320)).toBe(true);
    expect(lines.join(' ')).toBe(TEXT);
  });

  it('break at a semicolon where there is room', () => {
    expect(linesIn(2000, TEXT)).toHaveLength(2);
  });
});
