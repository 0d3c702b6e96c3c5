import { z } from 'zod';
import {
  bundleRecords,
  SCHEMA_OF_BUNDLE,
  type BundleKind,
  type BundleRecords,
} from '../../contract/exchange/bundle.ts';
import { clientInput, dogInput, sessionInput, visitFacts } from '../../contract/records.ts';
import { blankValue } from '../../contract/records/blank.ts';
import { entriesOf, type Fields } from '../../contract/records/fieldKinds.ts';
import { KINDS } from './bundleKinds.ts';

/** A record of a bundle of an earlier form, with the blank value of each field it did not know. */
export function completed(kind: BundleKind, record: unknown, version: number): unknown {
  const fields = kind === 'history' ? null : KINDS[kind].fields;
  if (fields === null) return record;
  return withFieldsSince(fields, record, SCHEMA_OF_BUNDLE[version] ?? 1);
}

/** Adds the fields that came after `schema`. Only what is missing, and nothing to what is no record. */
export function withFieldsSince(fields: Fields, record: unknown, schema: number): unknown {
  if (record === null || typeof record !== 'object' || Array.isArray(record)) return record;
  const missing = entriesOf(fields).filter(
    ([name, { since }]) => since > schema && !Object.hasOwn(record, name),
  );
  if (missing.length === 0) return record;
  return {
    ...record,
    ...Object.fromEntries(missing.map(([name, field]) => [name, blankValue(field)])),
  };
}

type Entry = BundleRecords['history'][number];

// What a record was before. An earlier release did not know every field of today, so a field may be
// absent; one that is there must be what it could have been, because the history shows it and a
// removed weighing comes back as it stands here.
const BEFORE: Readonly<Record<Entry['kind'], z.ZodType<Entry['before']>>> = {
  client: clientInput().partial().loose().nullable() as z.ZodType<Entry['before']>,
  dog: dogInput().partial().loose().nullable() as z.ZodType<Entry['before']>,
  visit: visitFacts().partial().loose().nullable() as z.ZodType<Entry['before']>,
  session: sessionInput().partial().loose().nullable() as z.ZodType<Entry['before']>,
  weighing: bundleRecords.shape.weighings.element.nullable(),
  attachment: z.record(z.string(), z.json()).nullable(),
};

/** A record as it was parsed, where it is a history entry with its `before` checked as well. */
export function cleanBefore(kind: BundleKind, record: unknown): z.ZodSafeParseResult<unknown> {
  if (kind !== 'history') return { success: true, data: record };
  const entry = record as Entry;
  const before = BEFORE[entry.kind].safeParse(entry.before);
  return before.success ? { success: true, data: { ...entry, before: before.data } } : before;
}
