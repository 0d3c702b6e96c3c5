import { parseArgs } from 'node:util';
import { SCENARIOS } from './scenarios.ts';
import { calibrate, type CalibrationRow } from './simulate.ts';
import { markdownTable, tell } from '../support/readmeTable.ts';

// Prints how often the 90 % interval of a dog's own maintenance energy holds the truth, and how far
// its middle is off beside the plain formula, where the model holds and where it does not.
// `-- --dogs 4000`; `--readme` writes the table into the README.

const SEED = 20260105;
const { values } = parseArgs({
  options: { dogs: { type: 'string', default: '4000' }, readme: { type: 'boolean' } },
});
const dogs = Number(values.dogs);

const COLUMNS: readonly (readonly [string, (row: CalibrationRow) => string])[] = [
  ['simulated dogs', ({ name }) => name],
  ['truth inside the 90 % interval', ({ coverage }) => `${coverage.toFixed(1)} %`],
  [
    'the same, in the measure of the log',
    ({ coverageAsLogged }) => `${coverageAsLogged.toFixed(1)} %`,
  ],
  ['median error', ({ estimateError }) => `${estimateError.toFixed(1)} %`],
  ['error of the plain formula', ({ formulaError }) => `${formulaError.toFixed(1)} %`],
  ['record tells more than the formula', ({ telling }) => `${telling.toFixed(0)} %`],
];

const rows = SCENARIOS.map((scenario) => calibrate(scenario, dogs, SEED));
console.log(`${dogs} dogs a row, seed ${SEED}\n`);
tell(
  'calibration',
  markdownTable(
    COLUMNS.map(([head]) => head),
    rows.map((row) => COLUMNS.map(([, of]) => of(row))),
  ),
);
