import BetterSqlite3 from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import {
  DOGS,
  OWNERS,
  SESSIONS,
  VISITS,
  WEIGHINGS,
} from '../../electron/contract/exchange/bundle.ts';
import { blankOf } from '../../electron/contract/records/blank.ts';
import { columnsOf, toRow, type Column } from '../../electron/contract/records/columns.ts';
import { FOOD_DECISIONS, PLANS } from '../../electron/contract/records/decided.ts';
import { VISIT } from '../../electron/contract/records/visit.ts';
import type { Fields } from '../../electron/contract/records/fieldKinds.ts';
import { migrate } from '../../electron/service/database/migrate.ts';
import { MIGRATIONS } from '../../electron/service/migrations/index.ts';

const db = new BetterSqlite3(':memory:');
migrate(db, MIGRATIONS);

/** Which table keeps which declaration, and what a table has of its own. */
const TABLES: readonly (readonly [table: string, fields: Fields, own: readonly string[]])[] = [
  ['client', OWNERS, ['search_text']],
  ['dog', DOGS, ['search_text']],
  ['visit', VISITS, []],
  ['session_result', SESSIONS, []],
  ['weighing', WEIGHINGS, []],
  ['plan', PLANS, []],
  ['food_decision', FOOD_DECISIONS, []],
];

const snake = (name: string): string =>
  name.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);

interface ColumnInfo {
  readonly name: string;
  readonly type: string;
  readonly notnull: 0 | 1;
}
const infoOf = (table: string): ColumnInfo[] =>
  db.prepare('SELECT name, type, "notnull" FROM pragma_table_info(?)').all(table) as ColumnInfo[];

function typeOf({ field }: Column): string {
  if (field.kind === 'flag') return 'INTEGER';
  if (field.kind === 'number') return field.whole === true ? 'INTEGER' : 'REAL';
  return 'TEXT';
}

const canBeNull = ({ field }: Column): boolean => 'nullable' in field && field.nullable === true;

/** Columns whose words the database leaves to the schema of the input. */
const ANY_WORD: ReadonlySet<string> = new Set(['session_result.next_day']);

/** Numbers that only count up. */
const counted = (name: string): boolean => name === 'revision' || name === 'version';

/** What the database itself must refuse of a column. */
function checkOf(column: Column): string | null {
  const { field } = column;
  const name = snake(column.name);
  if (field.kind === 'flag') return `${name} IN (0, 1)`;
  if (field.kind === 'word') {
    return `${name} IN (${field.words.map((word) => `'${word}'`).join(', ')})`;
  }
  if (field.kind === 'json') return `json_valid(${name})`;
  if (field.kind !== 'number') return null;
  return counted(name) ? `${name} >= 1` : `${name} BETWEEN ${field.min} AND ${field.max}`;
}

describe.each(TABLES)('the table %s', (table, fields, own) => {
  const sql = db
    .prepare("SELECT sql FROM sqlite_schema WHERE type = 'table' AND name = ?")
    .pluck()
    .get(table) as string;
  const columns = columnsOf(fields);

  test('has a column for every declared field, and no other', () => {
    expect(
      infoOf(table)
        .map(({ name }) => name)
        .sort(),
    ).toEqual([...columns.map(({ name }) => snake(name)), ...own].sort());
  });

  test.each(columns)('keeps $name as it is declared', (column) => {
    const info = infoOf(table).find(({ name }) => name === snake(column.name))!;
    const { type, notnull } = info;
    expect({ type, canBeNull: notnull === 0 }).toEqual({
      type: typeOf(column),
      canBeNull: canBeNull(column),
    });
    const check = checkOf(column);
    if (check !== null && !ANY_WORD.has(`${table}.${info.name}`))
      expect(sql).toContain(`CHECK (${check})`);
  });
});

test('a record kept before a field came reads as if it had been left blank', () => {
  const later = columnsOf(VISITS).filter(({ field }) => field.since >= 4);
  expect(later.length).toBeGreaterThan(20);
  const blank = toRow(VISIT, blankOf(VISIT)) as unknown as Readonly<Record<string, unknown>>;
  const defaults = db.prepare(
    "SELECT coalesce(dflt_value, 'NULL') FROM pragma_table_info('visit') WHERE name = ?",
  );
  for (const { name } of later) {
    const text = defaults.pluck().get(snake(name)) as string;
    expect([name, db.prepare(`SELECT ${text}`).pluck().get()]).toEqual([name, blank[name]]);
  }
});

test('when a dog was last seen is read from an index alone, whatever is in the bin', () => {
  const plan = db
    .prepare('EXPLAIN QUERY PLAN SELECT max(day) FROM visit WHERE dog_id = ? AND binned_at IS NULL')
    .all('') as { detail: string }[];
  expect(plan.map(({ detail }) => detail)).toEqual([
    'SEARCH visit USING COVERING INDEX visit_in_use_by_dog (dog_id=?)',
  ]);
});
