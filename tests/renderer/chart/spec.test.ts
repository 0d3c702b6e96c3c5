import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayNumber } from '../../../core/day.ts';
import { axisOf, dayTicks, wholeWindow } from '../../../renderer/chart/axes.ts';
import {
  firstPlace,
  pointAt,
  walkFrom,
  type ChartSpec,
  type Series,
} from '../../../renderer/chart/spec.ts';
import type { Look } from '../../../renderer/chart/look.ts';
import { useSight } from '../../../renderer/chart/useSight.ts';
import { evenly, holds } from '../../support/laws.ts';

const spec = (...series: Series[]): ChartSpec => ({
  label: '',
  title: '',
  x: { kind: 'day', format: (day) => day },
  y: { unit: 'kg' },
  series,
  heightPx: 200,
});
const line = (values: readonly (readonly [number, number | null])[]): Series => ({
  kind: 'line',
  name: 'a',
  ink: 'ink',
  line: 'solid',
  shape: 'dot',
  points: values.map(([x, y]) => ({ x, y, text: y === null ? '' : `${x} ${y}` })),
});
const KEYS = ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown', 'Home', 'End'] as const;
const series = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 400 }), fc.option(fc.nat(50))), { maxLength: 12 })
  .map((values) => line(values.toSorted(([a], [b]) => a - b)));

describe('walking along a chart', () => {
  it('stops only at values that say something, whatever keys are pressed', () => {
    holds(
      fc.property(
        fc.array(series, { maxLength: 4 }),
        fc.array(fc.constantFrom(...KEYS), { maxLength: 20 }),
        (all, keys) => {
          const chart = spec(...all);
          let place = firstPlace(chart);
          if (place === null) return;
          for (const key of keys) {
            place = walkFrom(chart, place!, key);
            expect(pointAt(chart, place!)).not.toBeNull();
          }
        },
      ),
    );
  });

  it('comes by every value of a series from its first', () => {
    const chart = spec(
      line([
        [0, 1],
        [1, null],
        [2, 3],
        [5, 4],
      ]),
    );
    const found = ['Home', 'ArrowRight', 'ArrowRight', 'ArrowRight'].reduce<string[]>(
      (texts, key) => {
        place = walkFrom(chart, place, key)!;
        return [...texts, pointAt(chart, place)!.text];
      },
      ((place = firstPlace(chart)!), []),
    );
    expect(found).toEqual(['0 1', '2 3', '5 4', '5 4']);
  });
  let place = { series: 0, point: 0 };

  it('goes to the nearest value of another series', () => {
    const chart = spec(
      line([
        [0, 1],
        [10, 1],
      ]),
      line([
        [2, 5],
        [9, 6],
        [30, 7],
      ]),
    );
    expect(walkFrom(chart, { series: 0, point: 1 }, 'ArrowDown')).toEqual({ series: 1, point: 1 });
    expect(walkFrom(chart, { series: 1, point: 2 }, 'ArrowUp')).toEqual({ series: 0, point: 1 });
    expect(walkFrom(chart, { series: 0, point: 0 }, 'Enter')).toBeNull();
  });
});

describe('the day axis', () => {
  it('has whole days in even steps, no more than asked for', () => {
    holds(
      fc.property(fc.nat(3000), fc.integer({ min: 2, max: 12 }), (span, count) => {
        const from = dayNumber('2026-01-01');
        const ticks = dayTicks(from, from + span, count);
        expect(ticks.length).toBeLessThanOrEqual(Math.max(count, Math.floor(span / 728) + 1));
        expect(ticks[0]).toBe(from);
        const steps = new Set(ticks.slice(1).map((tick, index) => tick - ticks[index]!));
        expect(steps.size).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('begins with the first day drawn, not with one in the room before it', () => {
    const day = dayNumber('2026-11-04');
    const weekly = spec(line([0, 1, 2, 3, 4, 5, 6, 7, 8].map((week) => [day + 7 * week, 30])));
    const axis = axisOf(weekly, {} as Look, null);
    const built = { min: axis.min, max: axis.max, width: 700, ticks: [] as { value: number }[] };
    axis.afterBuildTicks!(built as never);
    expect(built.min!).toBeLessThan(day - 1);
    expect(built.ticks.map(({ value }) => value - day)).toEqual([0, 14, 28, 42, 56]);
  });

  it('has room for a single value, and for none', () => {
    for (const values of [[], [[20_000, 5]]] as const) {
      const [from, to] = wholeWindow(spec(line(values)));
      expect(to).toBeGreaterThan(from);
    }
  });
});

describe('what is in sight', () => {
  it('never leaves the chart, and shows all again', () => {
    const whole = [100, 300] as const;
    const moves = fc.oneof(
      evenly(0.3, 3).map((by) => ['zoom', by] as const),
      evenly(-2, 2).map((by) => ['pan', by] as const),
    );
    holds(
      fc.property(fc.array(moves, { maxLength: 20 }), (all) => {
        const sight = useSight(() => whole);
        for (const [how, by] of all) {
          sight[how](by);
          const [from, to] = sight.window.value ?? whole;
          expect(from).toBeGreaterThanOrEqual(whole[0] - 1e-9);
          expect(to).toBeLessThanOrEqual(whole[1] + 1e-9);
          expect(to - from).toBeGreaterThanOrEqual(7 - 1e-9);
        }
        sight.all();
        expect(sight.window.value).toBeNull();
      }),
    );
  });
});
