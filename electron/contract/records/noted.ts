import type { Field } from '../history/change.ts';
import { entriesOf, type FieldKind, type Fields, type ValuesOf } from './fieldKinds.ts';
import { readRecord } from './reading.ts';

// What a record holds, for whoever reads it as text: blanks left out, entries of a list by what
// they are. Labels and order are those of the declaration.

/** A piece of what was noted; without a label where that of the whole says it. */
export interface NotedPart {
  readonly label: string;
  readonly field: Field;
}

/** One thing that was noted: a field, or an entry of a list. */
export interface Noted {
  readonly name: string;
  readonly label: string;
  readonly parts: readonly NotedPart[];
}

/** What was noted in these fields; nothing where nothing was. */
export function notedIn<const F extends Fields>(fields: F, record: ValuesOf<F>): Noted[] {
  return entriesOf(fields).flatMap(([name, field]) =>
    notedOf(name, field, record[name as keyof F]),
  );
}

function notedOf(name: string, field: FieldKind, value: unknown): Noted[] {
  if (field.kind === 'word' && value === field.unanswered) return [];
  const noted = readRecord<Fields>({ [name]: field }, { [name]: value } as never).filter(isNoted);
  return [...Map.groupBy(noted, ({ entry }) => entry ?? field.label)].map(([label, parts]) => ({
    name,
    label,
    parts: parts.map((part) => ({ label: labelWithin(label, part), field: part })),
  }));
}

const isNoted = ({ measure, value }: Field): boolean =>
  measure !== 'order' && value !== null && value !== false && value !== '';

/** What a piece is called beside the label of the whole. */
function labelWithin(whole: string, { label, within }: Field): string {
  if (within !== undefined) return within;
  if (label === whole) return '';
  const own = label.startsWith(`${whole}, `) ? label.slice(whole.length + 2) : label;
  return own.charAt(0).toLowerCase() + own.slice(1);
}
