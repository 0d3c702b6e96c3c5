import type { Database } from 'better-sqlite3';
import type { CallName, ParsedOf, ResultOf } from '../../contract/contract.ts';
import type { Db } from './schema.ts';

/** One open practice: its file, its typed queries, and what the handlers may ask of the machine. */
export interface Context {
  readonly db: Db;
  readonly raw: Database;
  readonly which: 'own' | 'demo';
  /** The folder of records. */
  readonly folder: string;
  /** Today in the machine's time zone, `YYYY-MM-DD`. */
  today(): string;
  /** Now as a UTC instant, ISO text. */
  instant(): string;
  newId(): string;
}

/** Answers one call on an open practice; throws `Refusal` to answer with an error. */
type Handler<N extends CallName> = (context: Context, input: ParsedOf<N>) => Promise<ResultOf<N>>;

/** The handlers of some calls, by name. */
export type Handlers<N extends CallName> = { readonly [K in N]: Handler<K> };

/** The handlers of calls about the own practice as a whole; they need none open, so they take none. */
export type OwnHandlers<N extends CallName> = {
  readonly [K in N]: (input: ParsedOf<K>) => Promise<ResultOf<K>>;
};

/** What is still to be made after the records have been read; the next call does not wait for it. */
export class Later<T> {
  readonly result: Promise<T>;

  constructor(result: Promise<T>) {
    this.result = result;
  }
}

/** The handlers of calls that answer later, by name. */
export type LateHandlers<N extends CallName> = {
  readonly [K in N]: (context: Context, input: ParsedOf<K>) => Promise<Later<ResultOf<K>>>;
};
