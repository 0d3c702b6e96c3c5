import type { Visit } from '../../../electron/contract/contract.ts';
import type { ValuesOf } from '../../../electron/contract/records/fieldKinds.ts';
import { notedIn, type Noted, type NotedPart } from '../../../electron/contract/records/noted.ts';
import { VISIT_PARTS, type VisitPart } from '../../../electron/contract/records/visit.ts';
import { fieldText } from '../../history/changeText.ts';
import type { Shown } from '../../units/shown.ts';
import { titleOf } from '../sections.ts';
import { capital } from '../../words.ts';

// What was recorded at one visit or two, as rows to be read: one value for each visit.

export interface ReadRow {
  readonly key: string;
  readonly label: string;
  /** Null where nothing was noted. */
  readonly texts: readonly (string | null)[];
  /** True where the visits do not read the same. */
  readonly differs: boolean;
}

/** A part of the form with what was recorded in it. */
export interface ReadPart {
  readonly id: VisitPart;
  readonly title: string;
  readonly rows: readonly ReadRow[];
}

export const rowOf = (key: string, label: string, texts: readonly (string | null)[]): ReadRow => ({
  key,
  label,
  texts,
  differs: new Set(texts).size > 1,
});

/** Stands in the head of the page. */
const IN_HEAD: ReadonlySet<string> = new Set(['kind', 'day']);
/** That it was fed, gone through or given goes without saying where more of it follows. */
const GOES_WITHOUT_SAYING = /^(diet\..+\.name|exercises|consent\.given)$/;

/** All that was recorded, in the parts of the form and its order; parts without anything are left out. */
export function readParts(visits: readonly Visit[], shown: Shown): ReadPart[] {
  return (Object.keys(VISIT_PARTS) as VisitPart[])
    .map((id) => ({ id, title: titleOf(id), rows: rowsOf(id, visits, shown) }))
    .filter(({ rows }) => rows.length > 0);
}

function rowsOf(id: VisitPart, visits: readonly Visit[], shown: Shown): ReadRow[] {
  const noted = visits.map((visit) => notedAt(id, visit));
  const keys = Object.keys(VISIT_PARTS[id]).flatMap((name) => [
    ...new Set(noted.flatMap((at) => at.filter((one) => one.name === name).map(keyOf))),
  ]);
  return keys.map((key) => {
    const found = noted.map((at) => at.find((one) => keyOf(one) === key));
    const label = found.find((one) => one !== undefined)!.label;
    return rowOf(
      key,
      label,
      found.map((one) => (one === undefined ? null : notedText(one, shown))),
    );
  });
}

const keyOf = ({ name, label }: Noted): string => `${name} ${label}`;

function notedAt(id: VisitPart, visit: Visit): Noted[] {
  const fields = VISIT_PARTS[id];
  return notedIn<typeof fields>(fields, visit as ValuesOf<typeof fields>).filter(
    ({ name }) => !IN_HEAD.has(name),
  );
}

/** In one line; what several pieces of a field have in common is said once. */
function notedText({ parts }: Noted, shown: Shown): string {
  const telling = parts.filter(({ field }) => !GOES_WITHOUT_SAYING.test(field.path));
  const told = (telling.length > 0 ? telling : parts).map((part) => ({
    part,
    text: partText(part, shown),
  }));
  const groups = Map.groupBy(told, ({ part, text }) =>
    part.field.entry === undefined && part.label !== '' ? text : part.field.path,
  );
  const words = [...groups.values()].map((group) => {
    const labels = group.map(({ part }) => part.label).filter((label) => label !== '');
    const { part, text } = group[0]!;
    if (labels.length === 0) return text;
    if (part.field.measure === 'yes or no') return labels.join(', ');
    return labels.length === 1 ? `${labels[0]}: ${text}` : `${text}: ${labels.join(', ')}`;
  });
  const first = parts[0]!;
  const isTyped = first.label === '' && first.field.measure === 'text';
  return isTyped ? words.join('; ') : capital(words.join('; '));
}

const partText = ({ field }: NotedPart, shown: Shown): string =>
  fieldText(field, field.value, shown).trim();
