import type { ClientInput, DogInput, SessionInput, VisitFacts } from '../records.ts';
import { CLIENT } from '../records/client.ts';
import { DOG } from '../records/dog.ts';
import type { Fields } from '../records/fieldKinds.ts';
import { readRecord } from '../records/reading.ts';
import { SESSION } from '../records/session.ts';
import { VISIT } from '../records/visit.ts';
import { WEIGHING } from '../records/weighing.ts';
import type { WeighingInput } from '../weighings/weighing.ts';
import { changedFields, type Field, type FieldChange } from './change.ts';

export type * from './change.ts';

/** What is kept of each kind of record, so that an earlier state can be read again. */
export interface KeptFacts {
  readonly client: ClientInput;
  readonly dog: DogInput;
  readonly visit: VisitFacts;
  readonly session: SessionInput;
  readonly weighing: WeighingInput;
}
/** The kinds of record whose changes are read field by field. */
export type ChangingKind = keyof KeptFacts;

const RECORDS = {
  client: CLIENT,
  dog: DOG,
  visit: VISIT,
  session: SESSION,
  weighing: WEIGHING,
} as const satisfies Record<ChangingKind, Fields>;

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
