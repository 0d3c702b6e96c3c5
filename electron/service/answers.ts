import { randomUUID } from 'node:crypto';
import { Refusal, type Answer, type AppError } from '../contract/errors.ts';
import { coreError } from './refuse.ts';
import { storageRefusal } from './database/trouble.ts';

/** Receives lines without personal data. */
export type Log = (line: string) => void;

export function fail(error: AppError): Answer<never> {
  return { ok: false, error };
}

/** Does something and answers with its value, or with what went wrong; never throws. */
export async function attempt<T>(
  log: Log | undefined,
  action: () => T | Promise<T>,
): Promise<Answer<T>> {
  try {
    return { ok: true, value: await action() };
  } catch (error) {
    return fail(errorValue(error, log));
  }
}

/** An error as a value: what the caller can act on, or a reference into the log. */
export function errorValue(thrown: unknown, log: Log | undefined): AppError {
  const error = storageRefusal(thrown);
  if (error instanceof Refusal) return error.error;
  const argument = coreError(error);
  if (argument !== undefined) return argument;
  const reference = randomUUID().slice(0, 8);
  // The stack names our own code only; a message could carry what was typed, so it is left out.
  const stack = error instanceof Error ? (error.stack ?? '').split('\n').slice(1, 6).join(' ') : '';
  log?.(`internal ${reference} ${error instanceof Error ? error.name : typeof error} ${stack}`);
  return {
    kind: 'internal',
    message: `Something went wrong inside Trotwell (reference ${reference}); nothing was saved.`,
    reference,
  };
}
