import { address as lines, whole } from '../fields.ts';

/** What the save of a record that is there carries besides the record. */
export const amending = {
  /** The revision that was read. Needed when the record is there; the save is refused when it is not the latest. */
  basedOn: whole('revision').nullable().optional(),
  /** Why it was changed. */
  reason: lines('Reason for the amendment').optional(),
};
