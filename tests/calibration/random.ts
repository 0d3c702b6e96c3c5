/** A seeded source of random numbers, so that every run simulates the same dogs. */
export interface Random {
  /** Even on [low, high). */
  uniform(low: number, high: number): number;
  normal(): number;
  pick<T>(from: readonly T[]): T;
}

/** Mulberry32 (public domain) for the bits, Box–Muller for the normal. */
export function random(seed: number): Random {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  return {
    uniform: (low, high) => low + (high - low) * next(),
    normal: () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
    pick: (from) => from[Math.floor(next() * from.length)]!,
  };
}
