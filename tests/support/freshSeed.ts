/**
 * Sets the seed of this run, for all workers alike, and prints it: property tests draw from it beside
 * their own (tests/support/laws.ts), and it says whose turn it is among many like cases
 * (tests/support/form.ts). What it finds is found again with `LAWS_SEED=… npm test`.
 */
export function drawFreshSeed(): void {
  if (process.env['LAWS_SEED'] !== undefined) return;
  process.env['LAWS_SEED'] = String(Math.floor(Math.random() * 2 ** 31));
  console.log(
    `The seed of this run is ${process.env['LAWS_SEED']}: npm test takes it as LAWS_SEED.`,
  );
}
