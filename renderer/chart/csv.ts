import { neutralCell, quotedField } from '../../electron/contract/exchange/csvCells.ts';
import { columnHead, plainCell, type Cell, type ChartColumn, type ChartTable } from './table.ts';

/** With it spreadsheets read the file as UTF-8 and keep the letters of every language. */
const BYTE_ORDER_MARK = '\uFEFF';
const END_OF_LINE = '\r\n';

/**
 * A chart's numbers as comma-separated values (RFC 4180): one line of heads with their units, days
 * in ISO, numbers with a point. A text that a spreadsheet would run as a formula gets an apostrophe
 * in front; numbers stay numbers, their minus with them.
 */
export function csvOf(table: ChartTable): string {
  const heads = table.columns.flatMap((column) => headsOf(column).map(quotedField));
  const rows = table.rows.map((row) =>
    table.columns.flatMap((column, index) => cellTexts(row[index] ?? null, column)),
  );
  return BYTE_ORDER_MARK + [heads, ...rows].map((line) => line.join(',') + END_OF_LINE).join('');
}

/** A range takes two columns. */
function headsOf(column: ChartColumn): readonly string[] {
  if (column.kind !== 'range') return [columnHead(column)];
  return ['low', 'high'].map((end) => columnHead({ ...column, head: `${column.head}, ${end}` }));
}

function cellTexts(cell: Cell, { kind, digits }: ChartColumn): readonly string[] {
  if (cell === null) return kind === 'range' ? ['', ''] : [''];
  if (typeof cell === 'number') return [plainCell(cell, digits)];
  if (typeof cell !== 'string') return cell.map((end) => plainCell(end, digits));
  return [quotedField(neutralCell(cell))];
}
