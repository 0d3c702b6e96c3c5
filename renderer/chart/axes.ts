import type { ScaleOptionsByType } from 'chart.js';
import { addDays, DAY_RANGE, dayNumber } from '../../core/day.ts';
import { grouped } from '../../core/quantityText.ts';
import type { Look } from './look.ts';
import type { ChartSpec } from './spec.ts';

type LinearAxis = Partial<ScaleOptionsByType<'linear'>> & { type: 'linear' };

const FIRST = DAY_RANGE.min;
const dayOf = (number: number): string => addDays(FIRST, Math.round(number) - dayNumber(FIRST));

const DAY_STEPS = [1, 2, 7, 14, 28, 56, 91, 182, 364] as const;
const COUNT_STEPS = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000] as const;
/** Room that a day or a number needs, px. */
const DAY_WIDTH = 110;
const COUNT_WIDTH = 34;

/** Days in even steps of whole days or weeks, at most `count` of them. */
export function dayTicks(from: number, to: number, count: number): readonly number[] {
  const first = Math.ceil(from);
  const step = DAY_STEPS.find((days) => (to - first) / days <= count - 1) ?? 728;
  const ticks: number[] = [];
  for (let day = first; day <= to; day += step) ticks.push(day);
  return ticks;
}

/** First and last x of everything drawn; bars alone where there are any. */
function drawnSpan({ series, uprights = [], x }: ChartSpec): [number, number] {
  const bars = series.filter(({ kind }) => kind === 'bar');
  const drawn = (bars.length > 0 ? bars : series).flatMap(({ points }) => points.map((at) => at.x));
  const all = bars.length > 0 ? drawn : [...drawn, ...uprights.map((upright) => upright.x)];
  if (all.length === 0) return x.kind === 'day' ? [dayNumber(FIRST), dayNumber(FIRST) + 1] : [0, 1];
  return [Math.min(...all), Math.max(...all)];
}

/** What is drawn, with some room. */
export function wholeWindow(spec: ChartSpec): [number, number] {
  const [from, to] = drawnSpan(spec);
  const bars = spec.series.some(({ kind }) => kind === 'bar');
  const room = bars ? 0.6 : Math.max((to - from) * 0.02, 0.5);
  return [from - room, to + room];
}

export function axisOf(
  spec: ChartSpec,
  look: Look,
  window: readonly [number, number] | null,
): LinearAxis {
  const [min, max] = window ?? wholeWindow(spec);
  const { x } = spec;
  const isDay = x.kind === 'day';
  const [first, last] = drawnSpan(spec);
  return {
    type: 'linear',
    min,
    max,
    grid: { display: false, drawTicks: false } as LinearAxis['grid'] & object,
    border: { color: look.rule } as LinearAxis['border'] & object,
    title: {
      display: !isDay,
      text: isDay ? '' : x.name,
      align: 'start',
      color: look.soft,
      font: { family: look.font, size: look.size },
    } as LinearAxis['title'] & object,
    afterBuildTicks: (axis) => {
      const room = Math.max(2, Math.floor(axis.width / (isDay ? DAY_WIDTH : COUNT_WIDTH)));
      axis.ticks = isDay
        ? // No day stands in the room beside what is drawn: none is earlier than the first.
          dayTicks(Math.max(axis.min, first), Math.min(axis.max, last), room).map((value) => ({
            value,
          }))
        : counted(axis.min, axis.max, room).map((value) => ({ value }));
    },
    ticks: {
      color: look.soft,
      font: { family: look.font, size: look.size },
      maxRotation: 0,
      align: isDay ? 'inner' : 'center',
      padding: 6,
      callback: (value: number | string) =>
        isDay ? x.format(dayOf(Number(value))) : (x.words?.(Number(value)) ?? grouped(value)),
    } as unknown as LinearAxis['ticks'] & object,
  };
}

function counted(from: number, to: number, count: number): number[] {
  const first = Math.ceil(from);
  const least = (to - first) / count;
  const step = COUNT_STEPS.find((each) => each >= least) ?? Math.ceil(least / 1000) * 1000;
  const ticks: number[] = [];
  for (let value = first; value <= to; value += step) ticks.push(value);
  return ticks;
}

/** Lowest and highest value drawn, errors and bands with them. */
function spanOf({ series }: ChartSpec): [number, number] {
  const all = series.flatMap((one) =>
    one.kind === 'band'
      ? one.points.flatMap(({ low, high }) => [low, high])
      : one.points.flatMap(({ y, error = 0 }) => (y === null ? [] : [y - error, y + error])),
  );
  return all.length === 0 ? [0, 1] : [Math.min(...all), Math.max(...all)];
}

export function yAxisOf(spec: ChartSpec, look: Look): LinearAxis {
  const { y } = spec;
  const [lowest, high] = spanOf(spec);
  const low = Math.min(lowest, y.min ?? lowest);
  const room = Math.max((high - low) * 0.08, ((y.span ?? 0) - (high - low)) / 2);
  return {
    type: 'linear',
    min: y.min ?? low - (room > 0 ? room : 1),
    max: y.max ?? high + (room > 0 ? room : 1),
    grid: { color: look.rule, drawTicks: false } as LinearAxis['grid'] & object,
    border: { display: false } as LinearAxis['border'] & object,
    afterFit: (axis) => {
      axis.width = Math.max(axis.width, y.roomPx ?? 0);
    },
    afterBuildTicks: (axis) => {
      if (y.words !== undefined) {
        axis.ticks = counted(axis.min, axis.max, 99).map((value) => ({ value }));
      }
    },
    ticks: {
      color: look.soft,
      font: { family: look.font, size: look.size },
      padding: 8,
      maxTicksLimit: 7,
      includeBounds: false,
      ...(y.whole === true ? { precision: 0 } : {}),
      callback: (value: number | string, _: number, all: readonly { value: number }[]) =>
        y.words === undefined ? tickText(Number(value), all) : y.words(Number(value)),
    } as unknown as LinearAxis['ticks'] & object,
  };
}

/** A number of the axis, with as many places as the step from one to the next asks for. */
function tickText(value: number, [first, second]: readonly { readonly value: number }[]): string {
  const step = second === undefined ? 1 : Math.abs(second.value - first!.value);
  const digits = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  return grouped(value.toFixed(digits).replace('-', '−'));
}
