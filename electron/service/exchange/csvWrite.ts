import { neutralCell, quotedField } from '../../contract/exchange/csvCells.ts';

/** With it spreadsheets read the file as UTF-8 and keep the letters of every language. */
const BYTE_ORDER_MARK = '\uFEFF';

/**
 * The beginning of a table in CSV (RFC 4180): the names of its columns.
 * @param columns one a property of the records that follow
 */
export const csvHead = (columns: readonly string[]): string =>
  BYTE_ORDER_MARK + line(columns.map(quotedField));

/**
 * Records as CSV, one line each. Lists and groups become JSON in their cell. Texts a spreadsheet
 * would run get an apostrophe in front; numbers stay numbers.
 */
export const csvLines = (columns: readonly string[], records: readonly object[]): string =>
  records
    .map((record) =>
      line(columns.map((column) => fieldOf((record as Readonly<Record<string, unknown>>)[column]))),
    )
    .join('');

const line = (fields: readonly string[]): string => `${fields.join(',')}\r\n`;

function fieldOf(value: unknown): string {
  if (value === null || value === undefined) return '';
  if (typeof value === 'number' || typeof value === 'boolean') return String(value);
  return quotedField(neutralCell(typeof value === 'string' ? value : JSON.stringify(value)));
}
