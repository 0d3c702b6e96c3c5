/**
 * True in `npm run attack` and with `TESTS=long`: minutes of a machine instead of seconds. The short
 * form takes some of many like cases, never fewer kinds of them.
 */
export const long = process.env['TESTS'] === 'long';

/**
 * All of them in the long form; in the short one every `step`-th, and in each run others by turns.
 * What is many itself takes turns by its `index`.
 */
export function someOf<T>(all: readonly T[], step: number, index = 0): readonly T[] {
  const turn = (Number(process.env['LAWS_SEED'] ?? 0) + index) % step;
  return long ? all : all.filter((_, at) => at % step === turn);
}
