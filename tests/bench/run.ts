// `npm run bench`: how fast it is, as ratios taken in one run on the same invented practice.
// `--json` prints the figures as JSON instead, `--readme` writes them into the README as well;
// `--no-scaling` leaves the three sizes out, `--dogs N` takes another practice, `--hurry` few rounds.
import { cpus } from 'node:os';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { build, isBuilt } from '../../electron/launch/build.mjs';
import { measureWindow } from './browser.ts';
import { measureBundle } from './bundle.ts';
import { measureExport } from './export.ts';
import { measureSearch, measureStart } from './listing.ts';
import { addLongDog } from './longDog.ts';
import type { BenchLine } from './measure.ts';
import { measureOpening } from './opening.ts';
import { generatePractice } from './practice.ts';
import { measureReview, measureSlope } from './review.ts';
import { measureScaling } from './scaling.ts';
import { tell } from '../support/readmeTable.ts';
import { benchTable, scalingTable } from './table.ts';
import { measureWholeStart } from './wholeStart.ts';
import { measureYearPlan } from './yearPlan.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const { values } = parseArgs({
  options: {
    dogs: { type: 'string', default: '5000' },
    json: { type: 'boolean', default: false },
    readme: { type: 'boolean', default: false },
    scaling: { type: 'boolean', default: true },
    hurry: { type: 'boolean', default: false },
  },
  allowNegative: true,
});
const DOGS = Number(values.dogs);
const { json } = values;
const say = (line: string): void => {
  if (!json) console.log(line);
};

if (!isBuilt(ROOT) && !build(ROOT)) process.exit(1);

say(`Inventing ${DOGS} dogs with ${20 * DOGS} weighings, half of them whole visits …`);
const practice = generatePractice(DOGS);
const lines: BenchLine[] = [];
try {
  say('Measuring; the machine should have nothing else to do …');
  lines.push(await measureStart(practice));
  lines.push(await measureWholeStart(practice));
  lines.push(await measureSearch(practice));
  lines.push(await measureExport(practice));
  lines.push(await measureReview(practice));
  lines.push(...(await measureSlope(practice)));
  await addLongDog(practice);
  lines.push(...(await measureOpening(practice)));
  lines.push(...(await measureWindow(practice)));
} finally {
  practice.remove();
}
lines.push(...(await measureYearPlan()));
lines.push(...(await measureBundle()));
const sizes = values.scaling ? measureScaling() : [];
const machine = `${cpus().length} cores, ${process.platform} ${process.arch}, Node ${process.versions.node}`;
const day = new Date().toISOString().slice(0, 10);

if (json) {
  console.log(JSON.stringify({ day, machine, lines, sizes }, null, 2));
} else {
  console.log('');
  tell('bench', `${day}, ${machine}, ${DOGS.toLocaleString('en')} dogs:\n\n${benchTable(lines)}`);
  if (sizes.length > 0) tell('bench, sizes', scalingTable(sizes));
}
process.exit(0);
