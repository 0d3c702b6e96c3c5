import type { ChartTable } from '../chart/table.ts';
import { fromBase, unitsOf } from '../units/dimensions.ts';
import type { ShownChoices } from '../units/shown.ts';
import type { GaitTrend } from './trends.ts';

/** A trend's values in the unit the practice reads them in. */
export interface TrendScale {
  readonly unit: string;
  readonly digits: number;
  readonly of: (value: number) => number;
}

/** Lengths follow the practice; angles, seconds and shares have one unit everywhere. */
export function trendScale(unit: string, choices: ShownChoices): TrendScale {
  if (unit !== 'cm') return { unit, digits: 1, of: (value) => value };
  const [girth] = unitsOf('girth', choices);
  return { unit: girth.name, digits: girth.digits, of: (value) => fromBase(value, girth) };
}

/** The numbers of one measurement's course, one line a visit. */
export function trendTable(trend: GaitTrend, scale: TrendScale): ChartTable {
  return {
    columns: [
      { head: 'Day', unit: '', kind: 'day' },
      { head: trend.label, unit: scale.unit, kind: 'number', digits: scale.digits },
    ],
    rows: trend.points.map(({ day, value }) => [day, scale.of(value)]),
  };
}
