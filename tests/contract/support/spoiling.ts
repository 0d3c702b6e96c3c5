import fc from 'fast-check';

/** An object whose own key is `__proto__`, as JSON may bring it. */
const proto = (): unknown => JSON.parse('{"__proto__":{"polluted":true},"a":1}');

function nested(depth: number): unknown {
  let value: unknown = 1;
  for (let i = 0; i < depth; i++) value = i % 2 ? [value] : { a: value };
  return value;
}

function circle(): unknown {
  const value: Record<string, unknown> = {};
  value['self'] = value;
  return value;
}

const HUGE = 'x'.repeat(300_000);

/** What no form of ours would send, and a program that wants in would. */
const NASTY: readonly unknown[] = [
  undefined,
  null,
  true,
  Number.NaN,
  Infinity,
  -Infinity,
  -0,
  -1,
  0.1 + 0.2,
  1e308,
  5e-324,
  2 ** 53,
  '12',
  '',
  ' ',
  '\u0000',
  'a\u0000b\u0007\u001b[31m',
  '\ud800',
  '\u202egnirts\u200b\ufeff',
  'e\u0301'.repeat(90),
  '👩‍👩‍👧‍👦'.repeat(40),
  HUGE,
  '\u0000'.repeat(5_000),
  '__proto__',
  'constructor',
  'toString',
  'hasOwnProperty',
  "'; DROP TABLE dog; --",
  '" OR 1=1',
  '%_*"',
  '../../../etc/passwd',
  'C:\\Windows\\win.ini',
  '=HYPERLINK("x")',
  '<img src=x onerror=alert(1)>',
  '2026-02-30',
  '2026-13-01',
  '0000-00-00',
  '-000001-01-01',
  '9999-12-31',
  '1979-12-31',
  '2151-01-01',
  '+275760-09-13',
  '2026-03-02T00:00:00Z',
  '00000000-0000-0000-0000-000000000000',
  'ffffffff-ffff-ffff-ffff-ffffffffffff',
  [],
  {},
  [[]],
  Array(5_000).fill(0),
  Array(1_000).fill({}),
  proto(),
  { constructor: { prototype: { polluted: true } } },
  { toString: 1, valueOf: null },
  { length: -1 },
  nested(1_000),
  circle(),
  new Date(Number.NaN),
  new Map([['a', 1]]),
  new Uint8Array(8),
  9n,
  Symbol('x'),
  () => 1,
];

const nasty = fc.constantFrom(...NASTY);
const KEYS = ['__proto__', 'constructor', 'prototype', 'id', 'then', 'toJSON', '', '\u0000', '0'];

/** Anything at all, mostly of the kinds that have broken programs before. */
export const anything = fc.oneof(
  { weight: 6, arbitrary: nasty },
  {
    weight: 1,
    arbitrary: fc.anything({ maxDepth: 2, maxKeys: 3, withBigInt: true, withDate: true }),
  },
);

interface Spoil {
  readonly how: 'replace' | 'remove' | 'add';
  readonly where: number;
  readonly key: string;
  readonly value: unknown;
}

const spoil: fc.Arbitrary<Spoil> = fc.record(
  {
    how: fc.constantFrom('replace', 'replace', 'replace', 'remove', 'add'),
    where: fc.nat(10_000),
    key: fc.constantFrom(...KEYS),
    value: anything,
  },
  { noNullPrototype: true },
);

/** Samples as they are, samples with one to three places spoilt, and things that are no sample. */
export function spoilt(samples: fc.Arbitrary<unknown>): fc.Arbitrary<unknown> {
  const some = fc.array(spoil, { minLength: 1, maxLength: 3 });
  return fc.oneof(
    { weight: 2, arbitrary: samples },
    {
      weight: 14,
      arbitrary: fc.tuple(samples, some).map(([sample, spoils]) => spoils.reduce(apply, sample)),
    },
    { weight: 4, arbitrary: anything },
  );
}

type Place = readonly [holder: Record<string, unknown>, key: string];

const isHolder = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' &&
  value !== null &&
  (Array.isArray(value) || Object.getPrototypeOf(value) === Object.prototype);

/** Every place of a sample; one that leads back into itself, or very deep, is followed so far only. */
function placesIn(value: unknown, depth = 0): Place[] {
  if (!isHolder(value) || depth > 6) return [];
  return Object.keys(value)
    .slice(0, 40)
    .flatMap((key): Place[] => [[value, key], ...placesIn(value[key], depth + 1)]);
}

/** A copy that can be spoilt without spoiling the constants it holds. */
function copy(value: unknown, depth = 0): unknown {
  if (!isHolder(value) || depth > 6) return value;
  if (Array.isArray(value)) return value.map((entry) => copy(entry, depth + 1));
  return Object.fromEntries(Object.entries(value).map(([key, of]) => [key, copy(of, depth + 1)]));
}

function apply(sample: unknown, { how, where, key, value }: Spoil): unknown {
  const spoiltOne = copy(sample);
  const places = placesIn(spoiltOne);
  const place = places[where % Math.max(1, places.length)];
  if (place === undefined) return how === 'add' && isHolder(spoiltOne) ? { [key]: value } : value;
  const [holder, at] = place;
  if (how === 'remove') {
    if (Array.isArray(holder)) holder.splice(Number(at), 1);
    else delete holder[at];
  } else {
    // Defined, not assigned: `__proto__` is to be a key like any other.
    const definition = { value, enumerable: true, configurable: true, writable: true };
    Object.defineProperty(holder, how === 'add' && !Array.isArray(holder) ? key : at, definition);
  }
  return spoiltOne;
}
