/**
 * True in `npm run attack` and with `TESTS=long`: minutes of a machine instead of seconds. The short
 * form takes some of many like cases, never fewer kinds of them.
 */
export const long = process.env['TESTS'] === 'long';

/** All of them in the long form; in the short one every `step`-th, and in each run others by turns. */
export function someOf<T>(all: readonly T[], step: number): readonly T[] {
  const turn = Number(process.env['LAWS_SEED'] ?? 0) % step;
  return long ? all : all.filter((_, index) => index % step === turn);
}
