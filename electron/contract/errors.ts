/** What can go wrong with a call, in words the front end can act on. */
export type ErrorKind =
  /** The input is not acceptable; `fields` says which and why. */
  | 'input'
  /** The record asked for is not there. */
  | 'not-found'
  /** The record changed since it was read, or the request contradicts what is stored. */
  | 'conflict'
  /** No practice is open yet (first run). */
  | 'no-practice'
  /** The work was cancelled before its end; nothing of it was kept. */
  | 'cancelled'
  /** The records are locked until the passphrase is given. */
  | 'locked'
  /** The database or disk refused. */
  | 'storage'
  /** The service cannot be reached. Made by the front end's transport only. */
  | 'unreachable'
  /** A fault of the program. `reference` finds it in the log. */
  | 'internal';

/** What is the matter with the file of records, where that is why a call failed. */
export type Trouble =
  /** Damaged, cut off, or no database at all; a backup helps. */
  | 'damaged'
  /** Written by a newer version of the program. */
  | 'newer'
  /** A file of another program. */
  | 'foreign'
  /** Folder or file cannot be written. */
  | 'unwritable'
  /** Folder or file cannot be read: by its rights, or because something else lies in its place. */
  | 'unreadable'
  | 'disk full'
  /** Another program holds it. */
  | 'held';

/** One refused field: `path` as in the input (`diet.0.gramsPerDay`). */
export interface FieldProblem {
  readonly path: string;
  /** A whole sentence that names the field, its unit and its range. */
  readonly message: string;
  /** The same with its amounts marked, where it has any. */
  readonly said?: string;
  readonly unit?: string;
  readonly min?: number;
  readonly max?: number;
}

/** An error as a value; it crosses both transports as it stands. */
export interface AppError {
  readonly kind: ErrorKind;
  readonly message: string;
  readonly fields?: readonly FieldProblem[];
  readonly reference?: string;
  readonly trouble?: Trouble;
}

/** What every call answers. */
export type Answer<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: AppError };

/** Thrown inside the service to answer a call with an error. */
export class Refusal extends Error {
  readonly error: AppError;

  constructor(error: AppError) {
    super(error.message);
    this.name = 'Refusal';
    this.error = error;
  }
}
