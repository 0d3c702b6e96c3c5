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
    entry: name,
  }));
}
