import { z } from 'zod';
import {
  bundleRecords,
  type BundleKind,
  type BundleRecords,
} from '../../contract/exchange/bundle.ts';
import { clientInput, dogInput, sessionInput, visitFacts } from '../../contract/records.ts';

type Entry = BundleRecords['history'][number];

// What a record was before. An earlier release did not know every field of today, so a field may be
// absent; one that is there must be what it could have been, because the history shows it and a
// removed weighing comes back as it stands here.
const BEFORE: Readonly<Record<Entry['kind'], z.ZodType<Entry['before']>>> = {
  client: clientInput.partial().loose().nullable() as z.ZodType<Entry['before']>,
  dog: dogInput.partial().loose().nullable() as z.ZodType<Entry['before']>,
  visit: visitFacts.partial().loose().nullable() as z.ZodType<Entry['before']>,
  session: sessionInput.partial().loose().nullable() as z.ZodType<Entry['before']>,
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
