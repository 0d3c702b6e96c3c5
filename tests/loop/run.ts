import { parseArgs } from 'node:util';
import { tell } from '../support/readmeTable.ts';
import { foodTable } from './foodTable.ts';
import { rampTable } from './ramp.ts';

// Plays simulated dogs through the whole of `assess`, visit after visit, against simple rules, and
// lives of dogs and owners through `buildRamp` and `reviewRamp`, against a table of 10 % a week.
// `-- --dogs 500 --lives 1000 --seed 1`; `--readme` writes the tables into the README.

const { values } = parseArgs({
  options: {
    dogs: { type: 'string', default: '500' },
    lives: { type: 'string', default: '1000' },
    seed: { type: 'string', default: '1' },
    readme: { type: 'boolean' },
  },
});
const [dogs, seed] = [Number(values.dogs), Number(values.seed)];
console.log(`${values.lives} lives and ${dogs} dogs a world, seed ${seed}\n`);
tell('loop, ramp', rampTable(Number(values.lives), seed));
tell('loop, food', foodTable(dogs, seed));
