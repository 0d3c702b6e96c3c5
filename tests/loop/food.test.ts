import { describe, expect, it } from 'vitest';
import { core, play, ruleOfThumb } from './food.ts';
import { WORLDS } from './foodDog.ts';

// The small version of `npm run loop`: fails when the decisions fall behind a rule of thumb.
const DOGS = 60;
const SEED = 1;

describe.each(WORLDS.filter(({ name }) => name === 'easy' || name === 'hard'))(
  'a year of follow-ups, world $name',
  (world) => {
    it('keeps level with a rule of thumb, and lies half as far under the target', () => {
      const [ours, rule] = [play(world, core, DOGS, SEED), play(world, ruleOfThumb, DOGS, SEED)];
      // One dog of 60 is 1.7 points.
      expect(ours.reached).toBeGreaterThanOrEqual(rule.reached - 1.7);
      expect(ours.outside).toBeLessThanOrEqual(rule.outside + 1.5);
      expect(ours.p90Under).toBeLessThanOrEqual(rule.p90Under / 2);
      expect(ours.reversals).toBeLessThanOrEqual(rule.reversals);
    });
  },
);
