import { describe, expect, it } from 'vitest';
import { buildRamp, weekSeries } from '../../core/index.ts';
import { weekLadder } from '../../templates/charts/weekLadder.ts';
import { createFormat } from '../../templates/format.ts';
import { en } from '../../templates/index.ts';
import { palette } from '../../templates/theme.ts';
import { practice } from './support/people.ts';

const load = weekSeries(
  buildRamp({
    startDay: '2026-03-02',
    start: 'conditioned',
    sessionsPerWeek: 3,
    goal: { continuousMinutes: 30 },
  }).weeks,
);
const tools = {
  format: createFormat(practice, en.frame.numbers),
  colours: palette(null),
  width: 493,
};
const { stack } = weekLadder(load, en.plan, tools) as unknown as {
  stack: {
    svg?: string;
    columns?: { text: string }[];
    relativePosition?: { x: number; y: number };
  }[];
};
const svg = stack.find((part) => part.svg !== undefined)!.svg!;
/** The bars from left to right; the last box is the sample of an easy week. */
const bars = [
  ...svg.matchAll(/<rect x="(.+?)" y="(.+?)" width="(.+?)" height="(.+?)" fill="(.+?)"/g),
]
  .map(([, x, y, width, height, fill]) => ({
    middle: Number(x) + Number(width) / 2,
    top: Number(y),
    height: Number(height),
    hollow: fill === '#ffffff',
  }))
  .slice(0, -1);
const labels = stack.flatMap(({ columns, relativePosition }) =>
  columns === undefined ? [] : [{ text: columns[0]!.text, ...relativePosition! }],
);

describe('the ladder of weeks on the owner’s plan', () => {
  it('has a bar for every week, as high as its minutes in the series of the screen', () => {
    expect(bars).toHaveLength(load.length);
    const highest = Math.max(...load.map(({ planned }) => planned));
    const tallest = Math.max(...bars.map(({ height }) => height));
    bars.forEach(({ height }, index) => {
      expect(height / tallest).toBeCloseTo(load[index]!.planned / highest, 2);
    });
    const steps = bars.slice(1).map(({ middle }, index) => middle - bars[index]!.middle);
    expect(Math.max(...steps) - Math.min(...steps)).toBeLessThan(0.05);
  });

  it('leaves the easy weeks hollow, and says what that means', () => {
    const easy = load.map(({ kind }) => kind !== 'building');
    expect(easy).toContain(true);
    expect(bars.map(({ hollow }) => hollow)).toEqual(easy);
    expect(labels.map(({ text }) => text)).toContain(en.plan.easyWeek);
  });

  it('writes minutes where they lie, and the number of a week under its bar', () => {
    const minutes = labels
      .map(({ text, y }) => ({ value: Number(/^(\d+)\s*min$/u.exec(text)?.[1] ?? NaN), y }))
      .filter(({ value }) => !Number.isNaN(value));
    expect(minutes.length).toBeGreaterThanOrEqual(2);
    const foot = bars[0]!.top + bars[0]!.height;
    const perMinute = bars[0]!.height / load[0]!.planned;
    // A line of small text is 11 points high and stands with its middle at its value.
    for (const { value, y } of minutes) {
      expect(Math.abs(y + 5.5 - (foot - value * perMinute))).toBeLessThan(0.5);
    }
    const numbers = labels.filter(({ text }) => /^\d+$/.test(text));
    expect(numbers.length).toBeGreaterThan(3);
    for (const { text, x } of numbers) {
      const at = load.findIndex(({ number }) => number === Number(text));
      expect(Math.abs(x + 115 - bars[at]!.middle)).toBeLessThan(0.5);
    }
  });
});
