import {
  entriesOf,
  type FieldKind,
  type Fields,
  type ValueOf,
  type ValuesOf,
} from './fieldKinds.ts';

// A record as a row of its table, and back. Yes or no is 1 or 0; the fields of a group are columns
// that begin with its name; what has tables of its own is not in the row.

/** Yes or no. */
export type Bit = 0 | 1;
export const bit = (yes: boolean): Bit => (yes ? 1 : 0);

type Nullable<D, T> = D extends { readonly nullable: true } ? T | null : T;
type StoredOf<D> = D extends { readonly kind: 'flag' }
  ? Bit
  : D extends { readonly kind: 'number' | 'word' }
    ? ValueOf<D>
    : D extends { readonly kind: 'json' }
      ? string | (null extends ValueOf<D> ? null : never)
      : Nullable<D, string>;

type Merged<U> = (U extends unknown ? (part: U) => void : never) extends (all: infer I) => void
  ? I
  : never;
type ColumnsOfGroup<P extends string, F> = {
  -readonly [K in keyof F & string as `${P}${Capitalize<K>}`]: StoredOf<F[K]>;
};
type Own<F> = {
  -readonly [
    K in keyof F as F[K] extends { readonly kind: 'group' | 'tables' } ? never : K
  ]: StoredOf<F[K]>;
};
type Groups<F> = Merged<
  {
    [K in keyof F & string]: F[K] extends { readonly kind: 'group'; readonly of: infer G }
      ? ColumnsOfGroup<K, G>
      : never;
  }[keyof F & string]
>;
/** The row of a record. */
export type RowOf<F> = Own<F> &
  ([Groups<F>] extends [never] ? unknown : unknown extends Groups<F> ? unknown : Groups<F>);

/** What of a record stands in its row. */
export type InRow<F> = {
  -readonly [K in keyof F as F[K] extends { readonly kind: 'tables' } ? never : K]: ValuesOf<F>[K];
};

const columnOf = (group: string, name: string): string =>
  `${group}${name.charAt(0).toUpperCase()}${name.slice(1)}`;

/** One column: how it is called in the row, and what is declared of it. */
export interface Column {
  readonly name: string;
  readonly field: Exclude<FieldKind, { kind: 'group' | 'tables' }>;
}

/** The columns of a record, in the order of its fields. */
export function columnsOf(fields: Fields): Column[] {
  return entriesOf(fields).flatMap(([name, field]): Column[] => {
    if (field.kind === 'tables') return [];
    if (field.kind !== 'group') return [{ name, field: field as Column['field'] }];
    return columnsOf(field.of).map((inner) => ({ ...inner, name: columnOf(name, inner.name) }));
  });
}

/** The row of a record. */
export function toRow<const F extends Fields>(fields: F, record: InRow<F>): RowOf<F> {
  const row: Record<string, unknown> = {};
  write(fields, record as Readonly<Record<string, unknown>>, (name) => name, row);
  return row as RowOf<F>;
}

function write(
  fields: Fields,
  record: Readonly<Record<string, unknown>>,
  column: (name: string) => string,
  row: Record<string, unknown>,
): void {
  for (const [name, field] of entriesOf(fields)) {
    const value = record[name];
    if (field.kind === 'tables') continue;
    if (field.kind === 'group') {
      const group = value as Readonly<Record<string, unknown>>;
      write(field.of, group, (inner) => columnOf(name, inner), row);
    } else row[column(name)] = stored(field, value);
  }
}

function stored({ kind }: FieldKind, value: unknown): unknown {
  if (kind === 'flag') return value === true ? 1 : 0;
  if (kind === 'json') return value === null ? null : JSON.stringify(value);
  return value;
}

/** What a row holds of a record. Columns that are not declared stay behind. */
export function fromRow<const F extends Fields>(fields: F, row: RowOf<F>): InRow<F> {
  return read(fields, row as Readonly<Record<string, unknown>>, (name) => name) as InRow<F>;
}

function read(
  fields: Fields,
  row: Readonly<Record<string, unknown>>,
  column: (name: string) => string,
): Record<string, unknown> {
  const record: Record<string, unknown> = {};
  for (const [name, field] of entriesOf(fields)) {
    if (field.kind === 'tables') continue;
    if (field.kind === 'group')
      record[name] = read(field.of, row, (inner) => columnOf(name, inner));
    else record[name] = restored(field, row[column(name)]);
  }
  return record;
}

function restored({ kind }: FieldKind, value: unknown): unknown {
  if (kind === 'flag') return value === 1;
  if (kind === 'json') return value === null ? null : (JSON.parse(value as string) as unknown);
  return value;
}
