import { z } from 'zod';
import { choice, flag, id, number, wholeBetween } from '../fields.ts';
import { DAY_FORMATS } from '../records.ts';
import { WEIGHING } from '../records/weighing.ts';
import { WEIGHING_METHODS } from '../../../core/weight/weighing.ts';

// Weights read from a table (CSV) of another program, a scale, or the owner.

export const SEPARATORS = [',', ';', '\t', '|'] as const;
export type Separator = (typeof SEPARATORS)[number];
export const DECIMAL_SIGNS = ['.', ','] as const;
export type DecimalSign = (typeof DECIMAL_SIGNS)[number];
export const TABLE_WEIGHT_UNITS = ['kg', 'lb', 'g'] as const;
export type TableWeightUnit = (typeof TABLE_WEIGHT_UNITS)[number];
export type Encoding = 'UTF-8' | 'UTF-16' | 'Windows-1252';

/** Columns and rows of a table that are still read. Our own choice (D). */
export const TABLE_LIMITS = { columns: 200, rows: 100_000, cellCharacters: 20_000 } as const;
/** Rows shown at once; the counts are of all. Our own choice (D). */
export const ROWS_SHOWN = 500;

/** A column, counted from 0. */
const column = (label: string) =>
  wholeBetween(0, TABLE_LIMITS.columns - 1, `${label} must be one of the table’s columns.`);

/** What is what in a table. */
export const weightMapping = z.strictObject({
  separator: choice('Sign between the columns', SEPARATORS),
  /** The first row names the columns. */
  headed: flag('First row names the columns'),
  /** One dog for all rows, or columns that name it. */
  dog: z.discriminatedUnion('by', [
    z.strictObject({ by: z.literal('choice'), dogId: id('The dog') }),
    z.strictObject({
      by: z.literal('column'),
      column: column('Column of the dog'),
      /** Tells dogs of one name apart. */
      ownerColumn: column('Column of the owner').nullable(),
    }),
  ]),
  dayColumn: column('Column of the day'),
  weightColumn: column('Column of the weight'),
  dayFormat: choice('How days are written', DAY_FORMATS),
  unit: choice('Unit of the weights', TABLE_WEIGHT_UNITS),
  decimalSign: choice('Decimal sign', DECIMAL_SIGNS),
  weighingMethod: choice('How the dogs were weighed', WEIGHING_METHODS),
  scaleStepKg: number(WEIGHING.scaleStepKg),
});
export type WeightMapping = z.output<typeof weightMapping>;

/** Rows that are left out, by their line in the file; none where not said. */
export const linesLeftOut = z
  .array(z.int({ error: 'A row is named by its line.' }).min(1, { error: 'Lines begin with 1.' }))
  .max(TABLE_LIMITS.rows, { error: 'That many rows no table has.' })
  .default([]);

/** Which columns hold what, as far as it can be told; null where nothing fits. */
export interface GuessedMapping extends Omit<
  WeightMapping,
  'dog' | 'dayColumn' | 'weightColumn' | 'weighingMethod' | 'scaleStepKg'
> {
  readonly dogColumn: number | null;
  readonly ownerColumn: number | null;
  readonly dayColumn: number | null;
  readonly weightColumn: number | null;
  /** False where the days can be read in more than one way, such as 03/04/2026. */
  readonly dayFormatSure: boolean;
}

/** A table as it was read, before anything is taken from it. */
export interface TableLook {
  readonly name: string;
  readonly encoding: Encoding;
  /** Names from the first row where it is a heading, else "Column 1" and so on. */
  readonly columns: readonly string[];
  /** The first rows, the heading left out. */
  readonly rows: readonly (readonly string[])[];
  /** Rows in all, heading and blank rows left out. */
  readonly rowCount: number;
  readonly guess: GuessedMapping;
}

/** What stands against one cell. */
export interface CellProblem {
  /** Null where the row as a whole is meant. */
  readonly column: string | null;
  /** A whole sentence, with unit and range where there is one. */
  readonly message: string;
}

export type RowState =
  | 'new'
  /** Already in the record. */
  | 'known'
  /** A row further up says the same. */
  | 'repeated'
  | 'refused'
  /** By the practitioner. */
  | 'left out';

/** One row of the table as it was understood; null where it was not. */
export interface ImportRow {
  /** Line of the file, counted from 1. */
  readonly line: number;
  readonly state: RowState;
  readonly dogName: string | null;
  readonly day: string | null;
  readonly weightKg: number | null;
  /** The three cells as they stand in the file. */
  readonly asWritten: { readonly dog: string; readonly day: string; readonly weight: string };
  readonly problems: readonly CellProblem[];
  /** Why the weight of a new row may be a slip; null where it fits the dog's others. */
  readonly slip: string | null;
}

export interface ImportPreview {
  readonly counts: Readonly<Record<RowState, number>>;
  /** New rows whose weight may be a slip. */
  readonly slips: number;
  /**
   * The refused rows first, then those that may hold a slip, those left out, and the others, each by
   * line; at most `ROWS_SHOWN`.
   */
  readonly rows: readonly ImportRow[];
  /** Stands for the file, the mapping and what would come of it. */
  readonly digest: string;
}

export interface ImportDone {
  readonly added: number;
  /** Rows whose weight is in the record already. */
  readonly known: number;
  /** Rows the practitioner left out. */
  readonly leftOut: number;
  /** Takes the import back, until another one is run or the program is closed. */
  readonly undoKey: string;
}
