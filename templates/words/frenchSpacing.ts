import type { OwnerWords } from './words.ts';

const BEFORE_SIGN = / ([:;?!])/g;

function spaced(value: unknown): unknown {
  if (typeof value === 'string') return value.replace(BEFORE_SIGN, '\u00a0$1');
  if (Array.isArray(value)) return value.map(spaced);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, spaced(item)]));
}

/** French sets a space before : ; ? and !; it must not end a line, so it becomes a no-break space. */
export function frenchSpacing(words: OwnerWords): OwnerWords {
  return spaced(words) as OwnerWords;
}
