import { neutralCell, quotedField } from '../../contract/csvCells.ts';

/** With it spreadsheets read the file as UTF-8 and keep the letters of every language. */
const BYTE_ORDER_MARK = '\uFEFF';

/**
 * Records as CSV (RFC 4180), one line each, one column a property. Lists and groups become JSON in
 * their cell. Texts a spreadsheet would run get an apostrophe in front; numbers stay numbers.
 */
export function writeCsv(columns: readonly string[], records: readonly object[]): string {
  const lines = records.map((record) =>
    columns.map((column) => fieldOf((record as Readonly<Record<string, unknown>>)[column])),
  );
  return (
    BYTE_ORDER_MARK +
    [columns.map(quotedField), ...lines].map((line) => `${line.join(',')}\r\n`).join('')
  );
}

function fieldOf(value: unknown): string {
  if (value === null || value === undefined) return '';
  if (typeof value === 'number' || typeof value === 'boolean') return String(value);
  return quotedField(neutralCell(typeof value === 'string' ? value : JSON.stringify(value)));
}
