import { describe, expect, it } from 'vitest';
import { playLives, underCore, underTable } from './ramp.ts';

// The small version of `npm run loop`: lives of dogs and owners through buildRamp and reviewRamp.
const LIVES = 40;
const SEED = 1;

describe('lives with holidays, heat, stiffness and missed runs', () => {
  it('come to their goal with fewer jumps over the longest of 30 days than a table', () => {
    const [ours, table] = [playLives(underCore, LIVES, SEED), playLives(underTable, LIVES, SEED)];
    expect(ours.withoutGoal).toBe(0);
    // A life may stop at the vet again and again; what is missed between reviews leaves some jumps.
    expect(ours.reached).toBeGreaterThanOrEqual(95);
    expect(ours.overCap).toBeLessThan(table.overCap);
  });
});
