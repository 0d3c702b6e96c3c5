/**
 * Sets the seed that the property tests of this run draw from beside their own (tests/support/laws.ts),
 * for all workers alike, and prints it: what it finds is found again with `LAWS_SEED=… npm test`.
 */
export function drawFreshSeed(): void {
  if (process.env['LAWS_SEED'] !== undefined) return;
  process.env['LAWS_SEED'] = String(Math.floor(Math.random() * 2 ** 31));
  console.log(`Property tests draw from seed ${process.env['LAWS_SEED']} beside their own.`);
}
