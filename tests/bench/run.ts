// `npm run bench`: how fast it is, as ratios taken in one run on the same invented practice.
// `--json` prints the figures as JSON instead; `--no-scaling` leaves the three sizes out.
import { cpus } from 'node:os';
import { fileURLToPath } from 'node:url';
import { build, isBuilt } from '../../electron/launch/build.mjs';
import { measureWindow } from './browser.ts';
import { measureBundle } from './bundle.ts';
import { measureSearch, measureStart } from './listing.ts';
import type { BenchLine } from './measure.ts';
import { generatePractice } from './practice.ts';
import { measureReview, measureSlope } from './review.ts';
import { measureScaling } from './scaling.ts';
import { benchTable, scalingTable } from './table.ts';
import { measureWholeStart } from './wholeStart.ts';
import { measureYearPlan } from './yearPlan.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const DOGS = 5000;
const words = process.argv.slice(2);
const json = words.includes('--json');
const say = (line: string): void => {
  if (!json) console.log(line);
};

if (!isBuilt(ROOT) && !build(ROOT)) process.exit(1);

say(`Inventing ${DOGS} dogs with 100,000 weighings, 50,000 of them whole visits …`);
const practice = generatePractice(DOGS);
const lines: BenchLine[] = [];
try {
  say('Measuring; the machine should have nothing else to do …');
  lines.push(await measureStart(practice));
  lines.push(await measureWholeStart(practice));
  lines.push(await measureSearch(practice));
  lines.push(...(await measureWindow(practice)));
  lines.push(await measureReview(practice));
  lines.push(...(await measureSlope(practice)));
} finally {
  practice.remove();
}
lines.push(...(await measureYearPlan()));
lines.push(...(await measureBundle()));
const sizes = words.includes('--no-scaling') ? [] : measureScaling();
const machine = `${cpus().length} cores, ${process.platform} ${process.arch}, Node ${process.versions.node}`;
const day = new Date().toISOString().slice(0, 10);

if (json) {
  console.log(JSON.stringify({ day, machine, lines, sizes }, null, 2));
} else {
  console.log(`\n${day}, ${machine}\n\n${benchTable(lines)}`);
  if (sizes.length > 0) console.log(`\n${scalingTable(sizes)}`);
}
process.exit(0);
