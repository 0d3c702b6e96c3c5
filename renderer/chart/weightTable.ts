import { fromBase, type Unit } from '../units/dimensions.ts';
import type { ChartBand, ChartPoint } from './weightSeries.ts';
import type { Cell, ChartColumn, ChartTable } from './table.ts';

export interface WeightSeries {
  readonly points: readonly ChartPoint[];
  readonly trend: readonly ChartBand[];
  readonly corridor: readonly ChartBand[];
}

/**
 * The numbers of the weight chart, one line a weighing or a day of a band, by day. Bands that are
 * not drawn have no columns.
 */
export function weightTable({ points, trend, corridor }: WeightSeries, unit: Unit): ChartTable {
  const number = (head: string, digits = unit.digits): ChartColumn => ({
    head,
    unit: unit.name,
    kind: 'number',
    digits,
  });
  const band = (name: string): ChartColumn[] => [
    number(`${name}, low`),
    number(`${name}, middle`),
    number(`${name}, high`),
  ];
  const bands = [
    { name: 'Trend', items: trend },
    { name: 'Corridor', items: corridor },
  ].filter(({ items }) => items.length > 1);
  const days = [...points, ...bands.flatMap(({ items }) => items)].map(({ day }) => day);
  const inUnit = (kg: number) => fromBase(kg, unit);

  const rows = [...new Set(days)].sort().flatMap((day): (readonly Cell[])[] => {
    const weighed = points.filter((point) => point.day === day);
    const cells = bands.flatMap(({ items }): Cell[] => {
      const item = items.find((candidate) => candidate.day === day);
      return item === undefined
        ? [null, null, null]
        : [inUnit(item.low), inUnit(item.mid), inUnit(item.high)];
    });
    if (weighed.length === 0) return [[day, null, null, ...cells, null]];
    return weighed.map(({ kg, errorKg, flag, between }) => [
      day,
      inUnit(kg),
      inUnit(errorKg),
      ...cells,
      [between ? 'between visits' : '', flag].filter((part) => part !== '').join('; ') || null,
    ]);
  });
  return {
    columns: [
      { head: 'Day', unit: '', kind: 'day' },
      number('Weight'),
      number('Scale error', 2),
      ...bands.flatMap(({ name }) => band(name)),
      { head: 'Note', unit: '', kind: 'text' },
    ],
    rows,
  };
}
