import { core, leaveAlone, play, ruleOfThumb, type FoodRow, type Policy } from './food.ts';
import { markdownTable } from '../support/readmeTable.ts';
import { WORLDS } from './foodDog.ts';

const POLICIES: readonly (readonly [string, Policy])[] = [
  ['core', core],
  ['rule of thumb', ruleOfThumb],
  ['food left alone', leaveAlone],
];

const COLUMNS: readonly (readonly [string, (row: FoodRow) => string])[] = [
  ['reached %', (row) => row.reached.toFixed(1)],
  ['weeks outside 0.5–2 %', (row) => row.outside.toFixed(1)],
  ['p90 under target %', (row) => row.p90Under.toFixed(1)],
  ['over 10 % under, % of dogs', (row) => row.tenUnder.toFixed(1)],
  ['reversals', (row) => row.reversals.toFixed(2)],
  ['reached in 26 weeks %', (row) => row.reachedHalf.toFixed(1)],
  ['regained 5 % in a year, % of reached', (row) => row.regained.toFixed(1)],
  ['ever under 0.8 RER, % of dogs', (row) => row.underFloor.toFixed(1)],
  ['referrals a dog', (row) => row.referrals.toFixed(2)],
  ['waits, % of visits', (row) => row.waits.toFixed(1)],
];

/** The table of the README: a year of follow-ups in each world, by each policy. */
export function foodTable(dogs: number, seed: number): string {
  const heads = ['world', 'policy', ...COLUMNS.map(([head]) => head)];
  const rows = WORLDS.flatMap((world) =>
    POLICIES.map(([name, policy]) => {
      const row = play(world, policy, dogs, seed);
      return [world.name, name, ...COLUMNS.map(([, of]) => of(row))];
    }),
  );
  return markdownTable(heads, rows);
}
