import type { Fields } from '../records/fieldKinds.ts';
import { RECORDS, type ChangingKind, type KeptFacts } from '../records/facts.ts';
import { readRecord } from '../records/reading.ts';
import { changedFields, type Field, type FieldChange } from './change.ts';

export type * from './change.ts';
export type { ChangingKind, KeptFacts };

/** The fields of one state of a record. */
export const fieldsOf = <K extends ChangingKind>(kind: K, facts: KeptFacts[K]): Field[] =>
  readRecord<Fields>(RECORDS[kind], facts);

/**
 * The fields that differ between two states of a record; null for a state in which it was not
 * there. Empty exactly when nothing differs. Extra properties (id, revision) are left alone.
 */
export function changesBetween<K extends ChangingKind>(
  kind: K,
  before: KeptFacts[K] | null,
  after: KeptFacts[K] | null,
): readonly FieldChange[] {
  const read = (facts: KeptFacts[K] | null) => (facts === null ? [] : fieldsOf(kind, facts));
  return changedFields(read(before), read(after));
}
