import type { z } from 'zod';
import { ArgumentError } from '../../core/check.ts';
import { Refusal, type AppError, type FieldProblem } from '../contract/errors.ts';
import { markedRefusal } from '../contract/limits.ts';

/** The record asked for is not there. */
export function notFound(what: string): Refusal {
  return new Refusal({ kind: 'not-found', message: `${what} is not in the records.` });
}

function problem(path: string, message: string, said = markedRefusal(message)): FieldProblem {
  return { path, message, ...(said === message ? {} : { said }) };
}

/** One field is not acceptable, found out after the schema. */
export function badField(path: string, message: string, said?: string): Refusal {
  return new Refusal({ kind: 'input', message, fields: [problem(path, message, said)] });
}

/** The answer for an input its schema refuses. */
export function inputError(error: z.ZodError): AppError {
  const fields: FieldProblem[] = error.issues
    .slice(0, 50)
    .map((issue) => problem(issue.path.map(String).join('.'), issue.message));
  return { kind: 'input', message: fields[0]?.message ?? 'The input is not acceptable.', fields };
}

/** The answer for an argument that core refuses; undefined for any other error. */
export function coreError(error: unknown): AppError | undefined {
  if (!(error instanceof ArgumentError)) return undefined;
  const field: FieldProblem = {
    path: error.argument,
    message: `${error.message}.`,
    unit: error.unit,
    ...(error.said === undefined ? {} : { said: `${error.said}.` }),
    ...error.range,
  };
  return { kind: 'input', message: field.message, fields: [field] };
}
