import type { BenchLine } from './measure.ts';
import type { SizeLine } from './scaling.ts';

type Row = readonly string[];

function markdown(head: Row, rows: readonly Row[]): string {
  const all = [head, ...rows];
  const widths = head.map((_, column) => Math.max(...all.map((row) => row[column]!.length)));
  const line = (row: Row): string =>
    `| ${row.map((cell, column) => cell.padEnd(widths[column]!)).join(' | ')} |`;
  return [line(head), line(widths.map((width) => '-'.repeat(width))), ...rows.map(line)].join('\n');
}

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
  return markdown(
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
  return markdown(
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
