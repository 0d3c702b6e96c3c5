import Papa from 'papaparse';
import { neutralCell } from '../../contract/csvCells.ts';

/** With it spreadsheets read the file as UTF-8 and keep the letters of every language. */
const BYTE_ORDER_MARK = '\uFEFF';

/**
 * Records as CSV (RFC 4180), one line each, one column a property. Lists and groups become JSON in
 * their cell. Texts a spreadsheet would run get an apostrophe in front; numbers stay numbers.
 */
export function writeCsv(columns: readonly string[], records: readonly object[]): string {
  const rows = records.map((record) =>
    columns.map((column) => cellOf((record as Readonly<Record<string, unknown>>)[column])),
  );
  return BYTE_ORDER_MARK + Papa.unparse([[...columns], ...rows], { newline: '\r\n' }) + '\r\n';
}

function cellOf(value: unknown): string | number | boolean {
  if (value === null || value === undefined) return '';
  if (typeof value === 'number' || typeof value === 'boolean') return value;
  return neutralCell(typeof value === 'string' ? value : JSON.stringify(value));
}
