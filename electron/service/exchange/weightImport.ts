import { createHash, randomUUID } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { grouped } from '../../../core/quantityText.ts';
import type { Weighing } from '../../../core/index.ts';
import type { ParsedOf } from '../../contract/contract.ts';
import { Refusal } from '../../contract/errors.ts';
import { toWeighing } from '../../contract/visits/assessInput.ts';
import { FILE_PURPOSES, tooLargeSentence } from '../../contract/files/purposes.ts';
import {
  ROWS_SHOWN,
  type ImportDone,
  type ImportPreview,
  type RowState,
  type TableLook,
  type WeightMapping,
} from '../../contract/exchange/weightImport.ts';
import { authorNow } from '../practice/practitioners.ts';
import type { Context } from '../database/context.ts';
import { byDog, firstRevision } from '../database/rows.ts';
import { readPractice } from '../practice/practice.ts';
import { badField } from '../refuse.ts';
import type { Db, WeighingRow } from '../database/schema.ts';
import type { Taken } from '../files/transfer.ts';
import type { Work } from '../work.ts';
import { readCsv, type TableRow } from './csvRead.ts';
import { decodeText } from './decodeText.ts';
import { guessMapping, guessSeparator } from './guess.ts';
import { dogFinder } from './whichDog.ts';
import { markSlips, understandRows, type UnderstoodRow } from './weightRows.ts';

/** Rows the page gets to see beside the question what is what. */
const ROWS_OF_LOOK = 8;
/** Where a practice has not said how it writes days and weights. */
const HOME = { dayFormat: 'YYYY-MM-DD', weightUnit: 'kg' } as const;

async function textOf({ file, bytes }: Taken) {
  const { maxBytes } = FILE_PURPOSES.csv;
  if (bytes > maxBytes) throw badField('token', tooLargeSentence(maxBytes));
  const data = await readFile(file);
  return { ...decodeText(data), hash: createHash('sha256').update(data).digest('hex') };
}

const columnNames = (first: readonly string[], headed: boolean): string[] =>
  first.map((cell, index) => (headed && cell !== '' ? cell.slice(0, 100) : `Column ${index + 1}`));

/** Reads the head of a table. @throws Refusal (input) when it is none. */
export async function lookAtTable(context: Context, taken: Taken): Promise<TableLook> {
  const { text, encoding } = await textOf(taken);
  const separator = guessSeparator(text);
  const rows = readCsv(text, separator);
  const first = rows[0];
  if (first === undefined) throw badField('token', 'The file holds no rows.');
  const guess = guessMapping(rows, separator, (await readPractice(context)) ?? HOME);
  const body = guess.headed ? rows.slice(1) : rows;
  return {
    name: taken.name,
    encoding,
    columns: columnNames(first.cells, guess.headed),
    rows: body.slice(0, ROWS_OF_LOOK).map(({ cells }) => cells.map((cell) => cell.slice(0, 200))),
    rowCount: body.length,
    guess,
  };
}

/** A table, and what was said of it. */
type TableChoices = Omit<ParsedOf<'import/preview'>, 'token'> & { readonly taken: Taken };

interface Understood {
  readonly rows: readonly UnderstoodRow[];
  readonly digest: string;
}

/** Understands the whole table. The digest changes with anything that would change the outcome. */
async function understandTable(
  context: Context,
  db: Db,
  { taken, mapping, leaveOut }: TableChoices,
): Promise<Understood> {
  const { text, hash } = await textOf(taken);
  const all = readCsv(text, mapping.separator);
  const body: readonly TableRow[] = mapping.headed ? all.slice(1) : all;
  const known = await weightsByDog(db);
  const understood = understandRows(body, {
    mapping,
    columns: columnNames(all[0]?.cells ?? [], mapping.headed),
    dogs: await dogFinder(db),
    today: context.today(),
    leftOut: new Set(leaveOut),
    weightsOf: (dogId) => known.get(dogId) ?? [],
  });
  const rows = markSlips(understood, known, mapping);
  const outcome = rows.map(({ line, state, dogId, day, weightKg }) => [
    line,
    state,
    dogId,
    day,
    weightKg,
  ]);
  const digest = createHash('sha256')
    .update(JSON.stringify([hash, mapping, outcome]))
    .digest('hex');
  return { rows, digest };
}

async function weightsByDog(db: Db): Promise<Map<string, Weighing[]>> {
  const visits = db
    .selectFrom('visit')
    .select((eb) => [
      'dogId',
      'day',
      eb.ref('weightKg').$notNull().as('weightKg'),
      'weighingMethod',
      'scaleStepKg',
    ])
    .where('weightKg', 'is not', null)
    .where('binnedAt', 'is', null);
  const rows = await db
    .selectFrom('weighing')
    .select(['dogId', 'day', 'weightKg', 'weighingMethod', 'scaleStepKg'])
    .unionAll(visits)
    .execute();
  return byDog(rows, toWeighing);
}

function countStates(rows: readonly UnderstoodRow[]): Record<RowState, number> {
  const counts = { 'left out': 0, new: 0, known: 0, repeated: 0, refused: 0 };
  for (const { state } of rows) counts[state] += 1;
  return counts;
}

/** What is looked at first: what stands in the way, then what may be wrong. */
function rankOf({ state, slip }: UnderstoodRow): number {
  if (state === 'refused') return 0;
  if (slip !== null) return 1;
  return state === 'left out' ? 2 : 3;
}

/** What would come of a table, row by row. */
export async function previewTable(
  context: Context,
  choices: TableChoices,
): Promise<ImportPreview> {
  const { rows, digest } = await understandTable(context, context.db, choices);
  const inOrder = rows.toSorted((a, b) => rankOf(a) - rankOf(b));
  return {
    counts: countStates(rows),
    slips: rows.filter(({ slip }) => slip !== null).length,
    rows: inOrder.slice(0, ROWS_SHOWN).map(({ dogId: _dogId, ...row }) => row),
    digest,
  };
}

/** Rows written between two looks at whether the work is to stop. */
const ROWS_AT_ONCE = 500;

/** The outcome, and the ids of what was added. */
export interface Ran extends ImportDone {
  readonly ids: readonly string[];
}

/**
 * Keeps every new weighing of a table, or none.
 * @throws Refusal (conflict) when something else would come of it than in the preview, (input) when
 *   a row is refused, (cancelled)
 */
export function runImport(
  context: Context,
  work: Work,
  { digest, ...choices }: TableChoices & { readonly digest: string },
): Promise<Ran> {
  return context.db.transaction().execute(async (db) => {
    const understood = await understandTable(context, db, choices);
    if (understood.digest !== digest) throw changedSince();
    const counts = countStates(understood.rows);
    if (counts.refused > 0) {
      throw badField(
        'mapping',
        `${grouped(counts.refused)} rows are refused. Nothing was imported.`,
      );
    }
    const rows = await newRows(context, db, understood.rows, choices.mapping);
    for (let done = 0; done < rows.length; done += ROWS_AT_ONCE) {
      await work.step({ done, total: rows.length, step: 'Keeping the weighings' });
      await db
        .insertInto('weighing')
        .values(rows.slice(done, done + ROWS_AT_ONCE))
        .execute();
    }
    await work.step({ done: rows.length, total: rows.length, step: 'Keeping the weighings' });
    return {
      added: rows.length,
      known: counts.known + counts.repeated,
      leftOut: counts['left out'],
      undoKey: randomUUID(),
      ids: rows.map(({ id }) => id),
    };
  });
}

function changedSince(): Refusal {
  return new Refusal({
    kind: 'conflict',
    message: 'The records have changed since the preview. Look at it again; nothing was imported.',
  });
}

async function newRows(
  context: Context,
  db: Db,
  understood: readonly UnderstoodRow[],
  { weighingMethod, scaleStepKg }: WeightMapping,
): Promise<WeighingRow[]> {
  const author = await authorNow(db);
  return understood.flatMap(({ state, dogId, day, weightKg }) =>
    state !== 'new' || dogId === null || day === null || weightKg === null
      ? []
      : [
          {
            ...firstRevision(context),
            dogId,
            day,
            weightKg,
            weighingMethod,
            scaleStepKg,
            origin: 'imported',
            note: '',
            author,
          },
        ],
  );
}
