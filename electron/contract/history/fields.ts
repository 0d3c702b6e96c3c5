import { BETWEEN_KEYS, type Field, type FieldValue, type Measure } from './change.ts';

/** The fields that one property of a record makes. */
export type Read<V> = (value: V) => readonly Field[];

/** How every property of a record is read. The type makes the list complete. */
export type Reads<T> = { readonly [K in keyof T]-?: Read<T[K]> };

/** A property that is one field. */
export const one =
  <V extends FieldValue>(path: string, label: string, measure: Measure): Read<V> =>
  (value) => [{ path, label, measure, value }];

/** All fields of a record, in the order of `reads`. */
export function readFields<T extends object>(reads: Reads<T>, record: T): Field[] {
  // A state that was kept before the program knew a field does not have it.
  const known = (Object.keys(reads) as (keyof T)[]).filter((key) => record[key] !== undefined);
  return known.flatMap((key) => reads[key](record[key]));
}

/** Entries of a list with a key of their own; entries of the same key are told apart by number. */
export function keyed<T>(
  entries: readonly T[],
  keyOf: (entry: T) => string,
): readonly { readonly entry: T; readonly key: string }[] {
  const seen = new Map<string, number>();
  return entries.map((entry) => {
    const key = keyOf(entry);
    const count = (seen.get(key) ?? 0) + 1;
    seen.set(key, count);
    return { entry, key: count === 1 ? key : `${key} (${count})` };
  });
}

/** A list of entries that are either there or not. */
export const noted =
  (path: string, listLabel: string, label: (entry: string) => string): Read<readonly string[]> =>
  (entries) => {
    const all = keyed(entries, (entry) => entry);
    return [
      ...all.map(({ entry, key }) => ({
        path: `${path}.${key}`,
        label: label(entry),
        measure: 'yes or no' as const,
        value: true,
      })),
      orderOf(path, listLabel, all),
    ];
  };

/** The order of a list, as a field of its own. */
export function orderOf(
  path: string,
  listLabel: string,
  entries: readonly { readonly key: string }[],
): Field {
  const value = entries.map(({ key }) => key).join(BETWEEN_KEYS);
  return { path: `${path} in order`, label: `Order of ${listLabel}`, measure: 'order', value };
}

/** The fields of one entry of a list. */
export function entryFields(
  path: string,
  name: string,
  parts: readonly (readonly [path: string, label: string, measure: Measure, value: FieldValue])[],
): Field[] {
  return parts.map(([part, label, measure, value]) => ({
    path: `${path}.${part}`,
    label: label === '' ? name : `${name}, ${label}`,
    measure,
    value,
  }));
}
