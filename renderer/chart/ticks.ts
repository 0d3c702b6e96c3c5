import { addDays, dayNumber } from '../../core/day.ts';

const NICE = [1, 2, 2.5, 5, 10] as const;

/** Round values inside or around `min..max`, about `count` of them. */
export function valueTicks(min: number, max: number, count: number): readonly number[] {
  const span = max - min || 1;
  const rough = span / count;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = (NICE.find((nice) => nice * power >= rough) ?? 10) * power;
  const first = Math.ceil(min / step - 1e-9);
  const last = Math.floor(max / step + 1e-9);
  return Array.from({ length: last - first + 1 }, (_, i) =>
    Number(((first + i) * step).toPrecision(10)),
  );
}

const DAY_STEPS = [1, 2, 7, 14, 28, 56, 91, 182, 364] as const;

/** Days from `from` to `to` in even steps of whole days or weeks, at most `count` of them. */
export function dayTicks(from: string, to: string, count: number): readonly string[] {
  const span = dayNumber(to) - dayNumber(from);
  const step = DAY_STEPS.find((days) => span / days <= count - 1) ?? 728;
  const ticks: string[] = [];
  for (let day = from; day <= to; day = addDays(day, step)) ticks.push(day);
  return ticks;
}
