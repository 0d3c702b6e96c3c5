import fc from 'fast-check';

// A property is asked of the draws of its own seed, the same each time, and of a few of a seed that is
// fresh each run (tests/support/freshSeed.ts): what a fixed seed never drew is met some day as well.

interface Draws {
  readonly seed?: number;
  readonly numRuns?: number;
}

/** Of the draws with the fixed seed, how many are made again with the fresh one. */
const FRESH_SHARE = 0.2;
/** Mutants are many, and each is shown only some of the draws (tests/mutants/). */
const SHARE = Number(process.env['LAWS_SHARE'] ?? 1);
const FRESH_SEED = process.env['LAWS_SEED'];

function drawsOf({ seed = 1, numRuns = 100 }: Draws): Required<Draws>[] {
  const fixed = { seed, numRuns: Math.ceil(numRuns * SHARE) };
  if (FRESH_SEED === undefined) return [fixed];
  return [fixed, { seed: Number(FRESH_SEED), numRuns: Math.ceil(numRuns * FRESH_SHARE) }];
}

/** Fails with a counterexample and its seed where the property does not hold. */
export function holds<Ts>(property: fc.IProperty<Ts>, draws: Draws = {}): void {
  for (const parameters of drawsOf(draws)) fc.assert(property, parameters);
}

export async function holdsAsync<Ts>(
  property: fc.IAsyncProperty<Ts>,
  draws: Draws = {},
): Promise<void> {
  for (const parameters of drawsOf(draws)) await fc.assert(property, parameters);
}

/** Values to look at from many sides, drawn once. */
export function drawn<T>(arbitrary: fc.Arbitrary<T>, draws: Draws = {}): T[] {
  return drawsOf(draws).flatMap((parameters) => fc.sample(arbitrary, parameters));
}

/** Evenly between two bounds: a double of the library's is next to nothing wherever that may be. */
export const evenly = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: 1_000_000 }).map((share) => min + ((max - min) * share) / 1_000_000);
