import type { BenchLine } from './measure.ts';
import type { SizeLine } from './scaling.ts';
import { markdownTable } from '../support/readmeTable.ts';

function shown(value: number, unit: BenchLine['unit']): string {
  const digits = unit === '×' ? 2 : value < 10 ? 1 : 0;
  return unit === '×' ? `${value.toFixed(digits)} ×` : `${value.toFixed(digits)} ${unit}`;
}

function verdict({ value, target, unit }: BenchLine): string {
  if (target === undefined) return 'no target';
  return `${value <= target ? 'met' : 'missed'}: at most ${target} ${unit}`;
}

/** The table of the README. */
export function benchTable(lines: readonly BenchLine[]): string {
  return markdownTable(
    ['what', 'against', 'figure', 'target', 'in this run'],
    lines.map((line) => [
      line.name,
      line.against,
      shown(line.value, line.unit),
      verdict(line),
      line.note ?? '',
    ]),
  );
}

export function scalingTable(sizes: readonly SizeLine[]): string {
  const ms = (value: number): string => `${value.toFixed(value < 10 ? 1 : 0)} ms`;
  const mb = (value: number): string => `${value.toFixed(0)} MB`;
  return markdownTable(
    ['dogs', 'file', 'list', 'search', 'review', 'review, a dog', 'memory', 'memory, review'],
    sizes.map((size) => [
      size.dogs.toLocaleString('en'),
      mb(size.fileMB),
      ms(size.listMs),
      ms(size.searchMs),
      ms(size.reviewMs),
      `${size.reviewUsPerDog.toFixed(0)} µs`,
      mb(size.listMemoryMB),
      mb(size.reviewMemoryMB),
    ]),
  );
}
