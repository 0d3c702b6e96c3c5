import {
  DOGS,
  OWNERS,
  SCHEMA_OF_BUNDLE,
  SESSIONS,
  VISITS,
  WEIGHINGS,
  type BundleKind,
} from '../../contract/exchange/bundle.ts';
import { blankValue } from '../../contract/records/blank.ts';
import { entriesOf, type Fields } from '../../contract/records/fieldKinds.ts';

const DECLARED: Readonly<Partial<Record<BundleKind, Fields>>> = {
  owners: OWNERS,
  dogs: DOGS,
  visits: VISITS,
  weighings: WEIGHINGS,
  sessions: SESSIONS,
};

/** A record of a bundle of an earlier form, with the blank value of each field it did not know. */
export function completed(kind: BundleKind, record: unknown, version: number): unknown {
  const fields = DECLARED[kind];
  if (fields === undefined) return record;
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
