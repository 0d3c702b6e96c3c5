import { BETWEEN_KEYS, type Field, type FieldValue, type Measure } from './change.ts';

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

/** A list of entries that are either there or not, each called by its kind and name. */
export const noted =
  (listLabel: string, kind: string, nameOf: (entry: string) => string) =>
  (path: string, entries: readonly string[]): Field[] => {
    const all = keyed(entries, (entry) => entry);
    return [
      ...all.map(({ entry, key }) => ({
        path: `${path}.${key}`,
        label: `${kind}: ${nameOf(entry)}`,
        within: nameOf(entry),
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

type Part = readonly [path: string, label: string, measure: Measure, value: FieldValue];

/** The fields of one entry of a list. */
export function entryFields(path: string, name: string, parts: readonly Part[]): Field[] {
  return parts.map(([part, label, measure, value]) => ({
    path: `${path}.${part}`,
    label: label === '' ? name : `${name}, ${label}`,
    measure,
    value,
    entry: name,
  }));
}

/**
 * How a list of entries reads: each called by what it is, and the order of the list.
 * @param titleOf what an entry of this key is called
 */
export const listed =
  <T>(
    listLabel: string,
    keyOf: (entry: T) => string,
    titleOf: (key: string) => string,
    partsOf: (entry: T) => readonly Part[],
  ) =>
  (path: string, entries: readonly T[]): Field[] => {
    const all = keyed(entries, keyOf);
    return [
      ...all.flatMap(({ entry, key }) =>
        entryFields(`${path}.${key}`, titleOf(key), partsOf(entry)),
      ),
      orderOf(path, listLabel, all),
    ];
  };

/** A key as the beginning of a label. */
export const capital = (key: string): string => key.charAt(0).toUpperCase() + key.slice(1);
