import { z } from 'zod';
import { address as lines, later, whole } from '../fields.ts';

interface CallDefinition<In extends z.ZodType, Out> {
  readonly input: In;
  /** Carries the result's type only; never set. */
  readonly result?: Out;
}

/**
 * One call of the contract: `call<Result>()(() => schema of the input)`. The schema is made when the
 * call is first asked: a start need not wait for those of all calls.
 */
export const call =
  <Out>() =>
  <In extends z.ZodType>(schemaOf: () => In): CallDefinition<In, Out> => {
    const schema = later(schemaOf);
    return {
      get input() {
        return schema();
      },
    };
  };

/** The input of a call that needs none. */
export const nothing = z.strictObject({});

/** What the save of a record that is there carries besides the record. */
export const amending = {
  /** The revision that was read. Needed when the record is there; the save is refused when it is not the latest. */
  basedOn: whole('revision').nullable().optional(),
  /** Why it was changed. */
  reason: lines('Reason for the amendment').optional(),
};
