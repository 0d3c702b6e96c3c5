import Papa from 'papaparse';
import { grouped } from '../../../core/quantityText.ts';
import { restoredCell } from '../../contract/exchange/csvCells.ts';
import { TABLE_LIMITS, type Separator } from '../../contract/exchange/weightImport.ts';
import { badField } from '../refuse.ts';

/** One row of a table with the line of the file it begins on, counted from 1. */
export interface TableRow {
  readonly line: number;
  readonly cells: readonly string[];
  /** Set where the quotes of the row do not fit together. */
  readonly brokenQuotes: boolean;
}

/**
 * The rows of a text in CSV (RFC 4180), blank ones left out. Cells are trimmed, and an apostrophe
 * that keeps a spreadsheet from running a cell is taken off again.
 * @param most stops after so many rows
 * @throws Refusal (input) for more rows, columns or characters than are read.
 */
export function readCsv(text: string, separator: Separator, most?: number): TableRow[] {
  const rows: TableRow[] = [];
  const lines = lineCounter(text);
  Papa.parse<string[]>(text, {
    delimiter: separator,
    quoteChar: '"',
    // The fast way does not say where a row ends.
    fastMode: false,
    step({ data, errors, meta }, parser) {
      const line = lines.upTo(meta.cursor);
      if (data.every((cell) => cell.trim() === '')) return;
      if (isSeparatorLine(data, separator, line)) return;
      assertReadable(data, line, rows.length);
      rows.push({
        line,
        cells: data.map((cell) => restoredCell(cell).trim()),
        brokenQuotes: errors.some(({ type }) => type === 'Quotes'),
      });
      if (rows.length === most) parser.abort();
    },
  });
  return rows;
}

/** Some spreadsheets write the separator into a first line of its own, `sep=;`. */
function isSeparatorLine(cells: readonly string[], separator: Separator, line: number): boolean {
  return line === 1 && /^sep=.?$/i.test(cells.join(separator));
}

function assertReadable(cells: readonly string[], line: number, before: number): void {
  const { rows, columns, cellCharacters } = TABLE_LIMITS;
  if (before >= rows) {
    throw badField(
      'token',
      `The table has more than ${grouped(rows)} rows. Split it into several files.`,
    );
  }
  if (cells.length > columns) {
    throw badField('token', `Line ${line} has more than ${columns} columns.`);
  }
  if (cells.some((cell) => cell.length > cellCharacters)) {
    throw badField(
      'token',
      `Line ${line} has a cell of more than ${cellCharacters} characters; a quote may not be closed.`,
    );
  }
}

/** Counts lines of the file, as an editor shows them: a quoted cell may run over several. */
function lineCounter(text: string) {
  let at = 0;
  let line = 1;
  return {
    /** The line the row that ends at `end` begins on. */
    upTo(end: number): number {
      const begun = line;
      for (; at < end; at += 1) {
        const code = text.charCodeAt(at);
        if (code === 10 || (code === 13 && text.charCodeAt(at + 1) !== 10)) line += 1;
      }
      return begun;
    },
  };
}
