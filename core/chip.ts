/** Characters people put between the digits of a chip number. */
const BETWEEN = /[\s.·-]+/g;

/** National codes have 38 bits (ISO 11784). */
const MOST_NATIONAL = 274_877_906_943;
/** Given to transponders on test, never to an animal. */
const TEST_CODE = '999';

/**
 * What is wrong with a chip number, a whole sentence; null for one that fits ISO 11784, or none.
 *
 * Fifteen digits: three of a country (ISO 3166-1) or, from 900 to 998, of a maker, and twelve of a
 * national code of 38 bits. There is no check digit, so a slip of one digit mostly passes.
 * @example
 * chipProblem('12345') // => 'Chip number must have 15 digits.'
 * chipProblem('276 0981 0123 4567') // => null
 * Source: ISO 11784 as recalled (M).
 */
export function chipProblem(text: string): string | null {
  const digits = chipDigits(text);
  if (digits === '') return null;
  if (!/^\d{15}$/.test(digits)) return 'Chip number must have 15 digits.';
  const code = digits.slice(0, 3);
  if (code === '000' || code === TEST_CODE) {
    return `Chip number must begin with the code of a country or maker, not ${code}.`;
  }
  if (Number(digits.slice(3)) <= MOST_NATIONAL) return null;
  return `The last 12 digits of a chip number go up to ${MOST_NATIONAL}: read it again.`;
}

/**
 * The number without the spaces, points or hyphens people write in it.
 * @example chipDigits('276 0981-0123.4567') // => '276098101234567'
 */
export const chipDigits = (text: string): string => text.replace(BETWEEN, '');
