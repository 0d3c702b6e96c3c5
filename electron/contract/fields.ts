import { z } from 'zod';
import { grouped } from '../../core/quantityText.ts';
import { chipDigits, chipProblem } from '../../core/chip.ts';
import { isIsoDay } from '../../core/day.ts';
import {
  limitSentence,
  QUANTITIES,
  TEXT_LENGTH,
  wholeSentence,
  type Limit,
  type QuantityName,
} from './records/quantities.ts';

// The building blocks of every input schema: each refuses with a whole sentence that names the
// field, its unit and its range, because the sentence is shown to the practitioner as it stands.

/** A schema that is made when it is first asked for: a start need not wait for those of all records. */
export function later<T>(make: () => T): () => T {
  let made: T | undefined;
  return () => (made ??= make());
}

/** A number inside a limit; a whole one where the limit says so. */
export const number = (limit: Limit) => {
  const error = limitSentence(limit);
  const inside = z.number({ error }).min(limit.min, { error }).max(limit.max, { error });
  return limit.whole === true ? inside.int({ error: wholeSentence(limit) }) : inside;
};

/** A number inside a named limit. */
export const quantity = (name: QuantityName) => number(QUANTITIES[name]);

/** A whole number inside a named limit. */
export const whole = (name: QuantityName) => number({ ...QUANTITIES[name], whole: true });

/** A whole number of whose range one sentence says all. */
export const wholeBetween = (min: number, max: number, error: string) =>
  z.int({ error }).min(min, { error }).max(max, { error });

// Control characters would spoil paper, CSV and screen alike; tab and line breaks are kept.
const CONTROL = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/g;

// Embeddings, overrides and isolates turn round the text that follows them, far beyond their own
// field. Right-to-left scripts are written without them; their marks (U+200E, U+200F) are kept.
const TURNING = /[\u202a-\u202e\u2066-\u2069]/g;

// More accents on one letter than any script piles up run over the lines above and below.
const PILED = /(\p{M}{4})\p{M}+/gu;

const cleaned = (label: string, max: number) =>
  z
    .string({ error: `${label} must be text.` })
    .max(max, { error: `${label} may have at most ${grouped(max)} characters.` })
    .transform((text) =>
      text.replace(CONTROL, '').replace(TURNING, '').replace(PILED, '$1').toWellFormed().trim(),
    );

/** One line of text, empty allowed. */
export const line = (label: string) =>
  cleaned(label, TEXT_LENGTH.line).transform((text) => text.replace(/[\t\n\r\u2028\u2029]+/g, ' '));

/** One line of text that shows something: neither empty nor of invisible characters alone. */
export const requiredLine = (label: string) =>
  line(label).refine((text) => /[^\p{Z}\p{C}\p{M}]/u.test(text), { error: `${label} is needed.` });

/** An address of several lines. */
export const address = (label: string) => cleaned(label, TEXT_LENGTH.address);

/** Free notes. */
export const notes = (label: string) => cleaned(label, TEXT_LENGTH.notes);

/** The number of a chip after ISO 11784, digits only; empty allowed. */
export const chip = (label: string) =>
  line(label)
    .transform(chipDigits)
    .superRefine((digits, context) => {
      const problem = chipProblem(digits);
      if (problem !== null) context.addIssue({ code: 'custom', message: problem });
    });

/** A calendar day written YYYY-MM-DD. */
export const day = (label: string) =>
  z
    .string({ error: `${label} must be a day, written YYYY-MM-DD.` })
    .refine(isIsoDay, { error: `${label} must be a day from 1980 to 2150, written YYYY-MM-DD.` });

/** The id of a stored record. */
export const id = (label = 'The record') =>
  z.uuid({ error: `${label} is not named by a valid id.` });

/** One of a list of words. */
export const choice = <const T extends readonly [string, ...string[]]>(label: string, words: T) =>
  z.enum(words, { error: `${label} must be one of: ${words.join(', ')}.` });

/** Yes or no. */
export const flag = (label: string) => z.boolean({ error: `${label} must be yes or no.` });
