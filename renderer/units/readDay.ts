import { isIsoDay } from '../../core/day.ts';
import type { Practice } from '../../electron/contract/records.ts';

type DayFormat = Practice['dayFormat'];

const THREE_NUMBERS = /^(\d{1,4})[-./ ]+(\d{1,2})[-./ ]+(\d{1,4})\.?$/;
const EIGHT_DIGITS = /^\d{8}$/;

/**
 * Reads a day as people type it: in the practice's own order, with any mark between its parts or none
 * in eight digits, or as YYYY-MM-DD, which has only one reading.
 * @returns YYYY-MM-DD; null where it is no day, or none of 1980 to 2150
 */
export function readDay(typed: string, format: DayFormat): string | null {
  const text = typed.trim();
  const parts = EIGHT_DIGITS.test(text) ? cut(text, format) : THREE_NUMBERS.exec(text)?.slice(1);
  if (parts === undefined) return null;
  const [a = '', b = '', c = ''] = parts;
  const order = a.length === 4 ? 'YYYY-MM-DD' : format;
  const [year, month, day] = ordered([a, b, c], order);
  // A year of two digits is left to be written out: it may be of either century.
  if (year.length !== 4) return null;
  const iso = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  return isIsoDay(iso) ? iso : null;
}

function cut(digits: string, format: DayFormat): string[] {
  const lengths = format.startsWith('YYYY') ? [4, 2, 2] : [2, 2, 4];
  let at = 0;
  return lengths.map((length) => digits.slice(at, (at += length)));
}

type Parts = [string, string, string];

function ordered([a, b, c]: Parts, format: DayFormat): Parts {
  if (format.startsWith('YYYY')) return [a, b, c];
  return format.startsWith('DD') ? [c, b, a] : [c, a, b];
}
