import { parseArgs } from 'node:util';
import { foodTable } from './foodTable.ts';
import { rampTable } from './ramp.ts';

// Plays simulated dogs through the whole of `assess`, visit after visit, against simple rules, and
// lives of dogs and owners through `buildRamp` and `reviewRamp`, against a table of 10 % a week.
// `-- --dogs 500 --lives 1000 --seed 1`

const { values } = parseArgs({
  options: {
    dogs: { type: 'string', default: '500' },
    lives: { type: 'string', default: '1000' },
    seed: { type: 'string', default: '1' },
  },
});
const [dogs, seed] = [Number(values.dogs), Number(values.seed)];
console.log(`Ramp: ${values.lives} lives, seed ${seed}\n`);
console.log(`${rampTable(Number(values.lives), seed)}\n`);
console.log(`Food: a year of follow-ups, ${dogs} dogs a world, seed ${seed}\n`);
console.log(foodTable(dogs, seed));
