/** Steps of an axis that people read easily: 1, 2 or 5 times a power of ten. */
export function niceStep(span: number, wanted: number): number {
  const rough = span / wanted;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].find((factor) => factor * power >= rough) ?? 10;
  return step * power;
}

/** An axis from a round number to a round number that encloses `low` to `high`. */
export interface Axis {
  readonly min: number;
  readonly max: number;
  readonly ticks: readonly number[];
  readonly step: number;
}

export function axis(low: number, high: number, wanted = 5): Axis {
  const span = Math.max(high - low, Math.abs(high) * 0.04, 0.1);
  const step = niceStep(span, wanted);
  const min = Math.floor(low / step) * step;
  const max = Math.max(Math.ceil(high / step) * step, min + step);
  const count = Math.round((max - min) / step);
  const ticks = Array.from({ length: count + 1 }, (_, i) => Number((min + i * step).toFixed(6)));
  return { min, max, ticks, step };
}

/** At most `most` of the items, spread evenly, the first and the last among them. */
export function spread<T>(items: readonly T[], most: number): readonly T[] {
  if (items.length <= most) return items;
  const last = items.length - 1;
  return Array.from({ length: most }, (_, i) => items[Math.round((i * last) / (most - 1))] as T);
}
