import { z } from 'zod';

interface CallDefinition<In extends z.ZodType, Out> {
  readonly input: In;
  /** Carries the result's type only; never set. */
  readonly result?: Out;
}

/** One call of the contract: `call<Result>()(schema of the input)`. */
export const call =
  <Out>() =>
  <In extends z.ZodType>(input: In): CallDefinition<In, Out> => ({ input });

/** The input of a call that needs none. */
export const nothing = z.strictObject({});
