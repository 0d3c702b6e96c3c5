import { SCENARIOS } from './scenarios.ts';
import { calibrate, type CalibrationRow } from './simulate.ts';

// Prints how often the 90 % interval of a dog's own maintenance energy holds the truth, and how far
// its middle is off beside the plain formula, where the model holds and where it does not.

const DOGS = 4000;
const SEED = 20260105;

const COLUMNS: readonly (readonly [string, (row: CalibrationRow) => string])[] = [
  ['simulated dogs', ({ name }) => name],
  ['in the 90 % interval', ({ coverage }) => `${coverage.toFixed(1)} %`],
  ['as logged', ({ coverageAsLogged }) => `${coverageAsLogged.toFixed(1)} %`],
  ['median error', ({ estimateError }) => `${estimateError.toFixed(1)} %`],
  ['formula', ({ formulaError }) => `${formulaError.toFixed(1)} %`],
  ['record tells', ({ telling }) => `${telling.toFixed(0)} %`],
];

const rows = SCENARIOS.map((scenario) => calibrate(scenario, DOGS, SEED));
const table = [
  COLUMNS.map(([head]) => head),
  ...rows.map((row) => COLUMNS.map(([, of]) => of(row))),
];
const widths = COLUMNS.map((_, column) => Math.max(...table.map((line) => line[column]!.length)));
const line = (cells: readonly string[]): string =>
  `| ${cells.map((cell, column) => cell.padEnd(widths[column]!)).join(' | ')} |`;
console.log(`${DOGS} dogs a row, seed ${SEED}\n`);
console.log(line(table[0]!));
console.log(`| ${widths.map((width) => '-'.repeat(width)).join(' | ')} |`);
for (const cells of table.slice(1)) console.log(line(cells));
console.log(
  "\n'as logged' judges by the need in the measure of the owner's own log, which is what feeding by that log asks for.",
);
