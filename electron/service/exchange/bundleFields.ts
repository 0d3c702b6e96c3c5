import type { Field, Measure } from '../../contract/history/change.ts';
import { CLIENT } from '../../contract/records/client.ts';
import { FOOD_DECISIONS, PLANS } from '../../contract/records/decided.ts';
import { DOG } from '../../contract/records/dog.ts';
import { entriesOf, type Fields, type ValuesOf } from '../../contract/records/fieldKinds.ts';
import { readRecord } from '../../contract/records/reading.ts';
import { SESSION } from '../../contract/records/session.ts';
import { VISIT } from '../../contract/records/visit.ts';
import { WEIGHING } from '../../contract/records/weighing.ts';
import type { Named, NamedKind } from './bundleKinds.ts';

// What two states of a record are compared by. What the service adds (author, times, the count of
// changes) does not make a record another one.

const field = (path: string, label: string, measure: Measure, value: Field['value']): Field => ({
  path,
  label,
  measure,
  value,
});
const inBin = ({ binnedAt }: { readonly binnedAt: string | null }): Field =>
  field('binnedAt', 'In the bin', 'yes or no', binnedAt !== null);

/** What core made, as it was kept. */
const madeOf = <const F extends Fields>(fields: F, record: ValuesOf<F>): Field[] =>
  entriesOf(fields)
    .filter(([, { kind }]) => kind === 'json')
    .map(([name, { label }]) => field(name, label, 'text', fixed(record[name as keyof F])));

type Reads = { readonly [K in NamedKind]: (record: Named<K>) => Field[] };

const FIELDS: Reads = {
  owners: (owner) => [...readRecord(CLIENT, owner), inBin(owner)],
  dogs: (dog) => [
    ...readRecord(DOG, dog),
    inBin(dog),
    field('archivedAt', 'Archived', 'yes or no', dog.archivedAt !== null),
  ],
  visits: (visit) => [...readRecord(VISIT, visit), inBin(visit)],
  plans: (plan) => [
    field('current', 'In force', 'yes or no', plan.current),
    ...madeOf(PLANS, plan),
    field('madeOn', 'Made on', 'day', plan.madeOn),
    field('origin', 'How it came about', 'word', plan.origin),
    field('note', 'Note', 'text', plan.note),
  ],
  sessions: (session) => readRecord(SESSION, session),
  foodDecisions: (decision) => [
    field('decidedOn', 'Decided on', 'day', decision.decidedOn),
    field('decision', 'Decision', 'word', decision.decision),
    field('kcalPerDay', 'Energy a day in kcal', 'text', String(decision.kcalPerDay)),
    ...madeOf(FOOD_DECISIONS, decision),
    field('note', 'Note', 'text', decision.note),
  ],
  weighings: (weighing) => readRecord(WEIGHING, weighing),
  attachments: (file) => [
    field('name', 'Name of the file', 'text', file.name),
    field('kind', 'Kind of file', 'word', file.kind),
    inBin(file),
  ],
};

export function fieldsOf<K extends NamedKind>(kind: K, record: Named<K>): Field[] {
  return (FIELDS[kind] as (record: Named) => Field[])(record);
}

/** Kinds that are made once and never altered; a plan only stops being in force. */
const MADE_ONCE: ReadonlySet<NamedKind> = new Set(['plans', 'foodDecisions']);

/** True where a difference in this field can only be an error: it stays as it is here. */
export const staysAsMade = (kind: NamedKind, path: string): boolean =>
  MADE_ONCE.has(kind) && path !== 'current';

/** What was computed once, as text: the same whatever the order of its properties. */
export function fixed(value: unknown): string {
  if (value === null || value === undefined) return '';
  return JSON.stringify(value, (_key, part: unknown) =>
    part !== null && typeof part === 'object' && !Array.isArray(part)
      ? Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)))
      : part,
  );
}
