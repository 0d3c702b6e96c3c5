import { YES_NO } from '../../../core/readiness/record.ts';
import type { Field, Measure } from '../history/change.ts';

// How a field of a record is declared. A declaration is plain data: everything else that has to
// know the field (schema of the input, type, column, blank value, history, bundle, limits beside
// the form) is made from it. No schema library in here: the front end reads the declarations too.

interface Declared {
  /** What it is called: in sentences of refusal, in the history, beside the form. */
  readonly label: string;
  /** The schema (number of the migration) that brought it. Bundles of earlier ones lack it. */
  readonly since: number;
  /** Usually stays as it was: a follow-up begins with the last visit's. */
  readonly carried?: boolean;
  /** Never changes once kept, so that no history tells of it. */
  readonly fixed?: boolean;
}

/** A number in `unit`, from `min` to `max`; null for not known where it is nullable. */
export interface NumberField extends Declared {
  readonly kind: 'number';
  readonly unit: string;
  readonly min: number;
  readonly max: number;
  /** True where a part of one makes no sense. */
  readonly whole?: boolean;
  readonly nullable?: boolean;
  readonly blank?: number;
  /** How the history shows it, where its unit does not say. */
  readonly measure?: Measure;
}

/** One of a list of words. */
interface WordField extends Declared {
  readonly kind: 'word';
  readonly words: readonly [string, ...string[]];
  readonly nullable?: boolean;
  readonly blank?: string;
  /** The word that tells nothing: what was not looked at, or not asked. */
  readonly unanswered?: string;
}

/** Text; `as` says what may stand in it, how long it may be and whether it may be empty. */
interface TextField extends Declared {
  readonly kind: 'text';
  readonly as: 'line' | 'required line' | 'address' | 'notes' | 'chip';
}

/** A calendar day, a UTC instant, or the id of another record. */
interface StampField extends Declared {
  readonly kind: 'day' | 'instant' | 'id';
  readonly nullable?: boolean;
}

interface FlagField extends Declared {
  readonly kind: 'flag';
}

/** Fields that belong together: an object of the record, columns of the same row. */
interface GroupField extends Declared {
  readonly kind: 'group';
  readonly of: Fields;
}

interface Part<T> extends Declared {
  readonly nullable?: boolean;
  readonly empty: () => T;
  readonly read: (path: string, value: T) => readonly Field[];
}

/** A list or an object with a schema of its own (`inputOf` is given it), as JSON in one column. */
export interface JsonField<T = never> extends Part<T> {
  readonly kind: 'json';
}

/** The same, kept in tables of its own. */
export interface TablesField<T = never> extends Part<T> {
  readonly kind: 'tables';
}

/** Declares a question answered by yes or no; null where nobody asked. */
export const yesOrNo = (label: string, since: number) =>
  ({ kind: 'word', label, words: YES_NO, nullable: true, since }) as const;

/** Declares a part kept in tables of its own, with the type it holds. */
export const part = <T>(declared: Part<T>): TablesField<T> => ({ kind: 'tables', ...declared });

/** Declares a part kept as JSON, with the type it holds. */
export const json = <T>(declared: Part<T>): JsonField<T> => ({ kind: 'json', ...declared });

/** Declares what was made once and is kept as JSON: nobody begins one, and no history tells of it. */
export const made = <T>(label: string, nullable = false): JsonField<T> => {
  const empty = (): T => {
    throw new Error(`${label}: there is no blank one.`);
  };
  return json<T>({ label, nullable, fixed: true, empty, read: () => [], since: 1 });
};

type AnyPart<F> = Omit<F, 'empty' | 'read'> & {
  readonly empty: () => unknown;
  // A reader of one type is no reader of `unknown`; `never` holds them all.
  readonly read: (path: string, value: never) => readonly Field[];
};

export type FieldKind =
  | NumberField
  | WordField
  | TextField
  | StampField
  | FlagField
  | GroupField
  | AnyPart<JsonField>
  | AnyPart<TablesField>;

/** Fields of one value in one column. */
export type PlainField = NumberField | WordField | TextField | StampField | FlagField;

/** The fields of a record, in the order of the form. */
export type Fields = Readonly<Record<string, FieldKind>>;

type OrNull<D, T> = D extends { readonly nullable: true } ? T | null : T;

/** What a field holds. */
export type ValueOf<D> = D extends { readonly kind: 'number' }
  ? OrNull<D, number>
  : D extends { readonly kind: 'word'; readonly words: readonly (infer W)[] }
    ? OrNull<D, W>
    : D extends { readonly kind: 'text' }
      ? string
      : D extends { readonly kind: 'day' | 'instant' | 'id' }
        ? OrNull<D, string>
        : D extends { readonly kind: 'flag' }
          ? boolean
          : D extends { readonly kind: 'group'; readonly of: infer F }
            ? ValuesOf<F>
            : D extends { readonly empty: () => infer T }
              ? T
              : never;

/** A record as it is declared: the one type of it. */
export type ValuesOf<F> = { -readonly [K in keyof F]: ValueOf<F[K]> };

/** The fields whose schema is not made from the declaration. */
export type PartsOf<F> = {
  [K in keyof F as F[K] extends { readonly kind: 'json' | 'tables' } ? K : never]: ValueOf<F[K]>;
};

/** The fields kept in tables of their own. */
export type TablesOf<F> = {
  -readonly [K in keyof F as F[K] extends { readonly kind: 'tables' } ? K : never]: ValueOf<F[K]>;
};

export const entriesOf = (fields: Fields): readonly (readonly [string, FieldKind])[] =>
  Object.entries(fields);

/** The numbers among the fields, each the limit of what may be typed. */
export function numbersOf<const F extends Fields>(fields: F) {
  return Object.fromEntries(
    entriesOf(fields).filter(([, field]) => field.kind === 'number'),
  ) as unknown as {
    readonly [K in keyof F as F[K] extends { readonly kind: 'number' } ? K : never]: NumberField;
  };
}
