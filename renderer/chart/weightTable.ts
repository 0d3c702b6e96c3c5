import type { WeightBand } from '../../core/index.ts';
import { fromBase, type Unit } from '../units/dimensions.ts';
import type { ChartWeight } from './weightSeries.ts';
import type { Cell, ChartColumn, ChartTable } from './table.ts';

/**
 * The numbers of the weight chart, one line a weighing, a day of a band or of something that
 * happened, by day. Bands that are not drawn have no columns.
 */
export function weightTable(
  { points, trend, corridor, marks }: Omit<ChartWeight, 'hold' | 'targetKg' | 'days'>,
  unit: Unit,
): ChartTable {
  const inUnit = (kg: number) => fromBase(kg, unit);
  const rangeOf = ({ low, high }: WeightBand): Cell => [inUnit(low), inUnit(high)];
  const number = (head: string, digits = unit.digits): ChartColumn => ({
    head,
    unit: unit.name,
    kind: 'number',
    digits,
  });
  const range = (head: string): ChartColumn => ({ ...number(head), kind: 'range' });
  const bands = [
    {
      items: trend,
      columns: [number('Trend'), range('Trend, 90 % band')],
      cells: (band: WeightBand): Cell[] => [inUnit(band.mid), rangeOf(band)],
    },
    {
      items: corridor,
      columns: [range('Planned corridor')],
      cells: (band: WeightBand): Cell[] => [rangeOf(band)],
    },
  ].filter(({ items }) => items.length > 1);
  const noted = marks.length > 0 || points.some(({ flag }) => flag !== '');
  const days = [...points, ...marks, ...bands.flatMap(({ items }) => items)].map(({ day }) => day);

  const rows = [...new Set(days)].sort().flatMap((day): (readonly Cell[])[] => {
    const weighed = points.filter((point) => point.day === day);
    const cells = bands.flatMap(({ items, columns, cells: cellsOf }): readonly Cell[] => {
      const item = items.find((candidate) => candidate.day === day);
      return item === undefined ? columns.map(() => null) : cellsOf(item);
    });
    const happened = marks.filter((mark) => mark.day === day).map(({ words }) => words);
    const note = (flag: string): Cell[] => {
      const words = [flag, ...happened].filter((part) => part !== '').join('; ');
      return noted ? [words === '' ? null : words] : [];
    };
    if (weighed.length === 0) return [[day, null, null, ...cells, ...note('')]];
    return weighed.map(({ kg, errorKg, flag }) => [
      day,
      inUnit(kg),
      inUnit(errorKg),
      ...cells,
      ...note(flag),
    ]);
  });
  return {
    columns: [
      { head: 'Day', unit: '', kind: 'day' },
      number('Weight'),
      number('Scale error', 2),
      ...bands.flatMap(({ columns }) => columns),
      ...(noted ? [{ head: 'Note', unit: '', kind: 'text' } as const] : []),
    ],
    rows,
  };
}
