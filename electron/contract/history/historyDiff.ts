import type { ClientInput, DogInput, SessionInput, VisitFacts } from '../records.ts';
import type { WeighingInput } from '../weighing.ts';
import { changedFields, type Field, type FieldChange } from './change.ts';
import { clientFields, dogFields, sessionFields, weighingFields } from './otherFields.ts';
import { visitFields } from './visitFields.ts';

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

const FIELDS: { readonly [K in ChangingKind]: (facts: KeptFacts[K]) => Field[] } = {
  client: clientFields,
  dog: dogFields,
  visit: visitFields,
  session: sessionFields,
  weighing: weighingFields,
};

/**
 * The fields that differ between two states of a record; null for a state in which it was not
 * there. Empty exactly when nothing differs. Extra properties (id, revision) are left alone.
 */
export function changesBetween<K extends ChangingKind>(
  kind: K,
  before: KeptFacts[K] | null,
  after: KeptFacts[K] | null,
): readonly FieldChange[] {
  const read = (facts: KeptFacts[K] | null) => (facts === null ? [] : FIELDS[kind](facts));
  return changedFields(read(before), read(after));
}
