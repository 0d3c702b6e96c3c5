/** What kind of thing a changed field holds; the page turns it into the practice's own units. */
export type Measure =
  | 'text'
  /** One of a list of words. */
  | 'word'
  | 'day'
  | 'yes or no'
  | 'count'
  | 'body condition score'
  | 'lameness grade'
  | 'kg'
  | 'kg of a scale'
  | 'cm'
  | 'months'
  | 'minutes'
  | 'g'
  | 'g a day'
  | 'kcal per 100 g'
  | '%'
  | 'degrees'
  /** A number in a unit of its own. */
  | `in ${string}`
  /** The keys of a list, in order, between `BETWEEN_KEYS`. */
  | 'order';

/** A control character, which no text of a record can hold. */
export const BETWEEN_KEYS = '\u001f';

/** The value of one field, in the unit its measure names; null where nothing was entered. */
export type FieldValue = string | number | boolean | null;

/** One field of a record that differs between two states of it. */
export interface FieldChange {
  /** Where it stands in the record; entries of a list go by what they are, not by their place. */
  readonly path: string;
  /** What it is called on the form. */
  readonly label: string;
  readonly measure: Measure;
  readonly before: FieldValue;
  readonly after: FieldValue;
}

/** One field of one state of a record. */
export interface Field {
  readonly path: string;
  readonly label: string;
  readonly measure: Measure;
  readonly value: FieldValue;
  /** The entry of a list that it belongs to, as its label begins. */
  readonly entry?: string;
  /** What it is called among its like, where its label says more than the end of a longer one. */
  readonly within?: string;
}

/** The fields that differ, in the order of the form; what is gone comes last. */
export function changedFields(before: readonly Field[], after: readonly Field[]): FieldChange[] {
  const was = new Map(before.map((field) => [field.path, field]));
  const is = new Map(after.map((field) => [field.path, field]));
  const gone = before.filter(({ path }) => !is.has(path));
  const changes = after.flatMap((field) => changed(field, was.get(field.path)?.value, field.value));
  return [...changes, ...gone.flatMap((field) => changed(field, field.value, undefined))];
}

type Side = FieldValue | undefined;

/** `undefined` stands for a side in which the field is not there at all. */
function changed(field: Field, before: Side, after: Side): FieldChange[] {
  if (before === after) return [];
  // What comes or goes without anything in it tells nothing.
  if ((before === undefined && isBlank(after)) || (after === undefined && isBlank(before))) {
    return [];
  }
  const { path, label, measure } = field;
  // An entry that came or went shows by itself; the order is a change only among the same entries.
  if (measure === 'order' && sorted(before) !== sorted(after)) return [];
  return [{ path, label, measure, before: before ?? null, after: after ?? null }];
}

const isBlank = (value: Side): boolean => value === null || value === '' || value === false;

function sorted(keys: Side): string {
  return String(keys ?? '')
    .split(BETWEEN_KEYS)
    .sort()
    .join(BETWEEN_KEYS);
}
