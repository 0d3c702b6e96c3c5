import { grouped } from '../../core/quantityText.ts';

/** Two ends of a range, in the column's unit. */
export type Range = readonly [low: number, high: number];

/** One value of a chart's table: a number or range in the column's unit, a text or ISO day, nothing. */
export type Cell = number | Range | string | null;

export interface ChartColumn {
  readonly head: string;
  /** '' for days and texts. */
  readonly unit: string;
  readonly kind: 'day' | 'text' | 'number' | 'range';
  /** Places after the point of a number or a range. */
  readonly digits?: number;
}

/** The numbers of a chart, as its table view shows and its CSV file carries them. */
export interface ChartTable {
  readonly columns: readonly ChartColumn[];
  readonly rows: readonly (readonly Cell[])[];
}

/** "Weight, kg": the head of a column with its unit. */
export function columnHead({ head, unit }: ChartColumn): string {
  return unit === '' ? head : `${head}, ${unit}`;
}

/** A number as a reader sees it. */
export const shownCell = (value: number, digits = 1): string =>
  grouped(plainCell(value, digits).replace('-', '−'));

/** A number as a file holds it, with a plain minus and a point. */
export function plainCell(value: number, digits = 1): string {
  const text = value.toFixed(digits);
  return Number(text) === 0 ? (0).toFixed(digits) : text;
}
