// `npm run demo`: the main job without a window. A fresh demonstration practice in a folder that it
// names, one dog from intake through two follow-ups, the handouts as PDF files, and every computed
// number with its sources.
import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import {
  raised,
  shownWeekMinutes,
  source,
  underWay,
  type Figure,
  type Reason,
} from '../../../core/index.ts';
import type { CallName, DogFile, InputOf, ResultOf } from '../../contract/contract.ts';
import { HANDOUT_KINDS } from '../../contract/records.ts';
import { createService, type Service } from '../service.ts';

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

async function ask<N extends CallName>(
  service: Service,
  name: N,
  input: InputOf<N>,
): Promise<ResultOf<N>> {
  const answer = await service.call(name, input);
  if (!answer.ok) throw new Error(`${name}: ${answer.error.message}`);
  return answer.value;
}

const round = (value: number): string =>
  Math.abs(value) < 10 ? value.toFixed(2) : value.toFixed(0);

function sourcesOf(entry: Pick<Figure, 'sources' | 'evidence'>): string {
  return `[${entry.evidence}: ${entry.sources.map((id) => source(id).short).join('; ')}]`;
}

function figureLine(figure: Figure): string {
  const range =
    figure.low === undefined || figure.high === undefined
      ? ''
      : ` (${round(figure.low)} to ${round(figure.high)})`;
  return `  ${figure.label}: ${round(figure.value)}${range} ${figure.unit} = ${raised(figure.formula)} ${sourcesOf(figure)}`;
}

const reasonLine = (reason: Reason): string => `  - ${reason.text} ${sourcesOf(reason)}`;

function tellVisits({ visits, foodDecisions }: DogFile): void {
  for (const visit of visits) {
    console.log(
      `\n${visit.day}  ${visit.kind}: ${visit.weightKg} kg, body condition ${visit.bcs} of 9`,
    );
    const decision = foodDecisions.find(({ visitId }) => visitId === visit.id);
    if (decision === undefined) continue;
    console.log(`  Food: ${round(decision.kcalPerDay)} kcal a day (${decision.decision})`);
    for (const item of decision.ration?.items ?? []) {
      console.log(`    ${item.name}: ${round(item.gramsPerDay)} g a day`);
    }
    const { maintenance, own, trend } = decision.known;
    for (const figure of [maintenance, own, trend]) if (figure) console.log(figureLine(figure));
    for (const reason of decision.proposal.reasons) console.log(reasonLine(reason));
    const proposed = decision.proposal.kcalPerDay;
    if (decision.decision === 'edited' && proposed !== null) {
      const why = decision.note === '' ? 'no reason written' : decision.note;
      console.log(
        `  Proposed ${round(proposed)} kcal a day, set to ${round(decision.kcalPerDay)} by the practitioner: ${why}`,
      );
    }
    for (const warning of decision.proposal.warnings)
      console.log(`  ! ${warning.text} ${sourcesOf(warning)}`);
  }
}

function tellState({ assessment, state }: DogFile): void {
  if (assessment === null || state === null) return;
  console.log(`\nToday, ${state.day}`);
  const { ration, targetKg, weight } = state;
  console.log(
    `  Fed: ${ration === null ? 'nothing decided' : `${round(ration.kcalPerDay)} kcal a day since ${ration.decidedOn}`}`,
  );
  console.log(`  Weight ${weight.kg} kg, ${weight.against}; target ${targetKg ?? 'none'} kg`);
  for (const { what, day } of state.due) console.log(`  Due ${day}: ${what}`);
  const figures = [assessment.resting, assessment.ideal?.figure, assessment.trend.figure];
  for (const figure of figures) if (figure) console.log(figureLine(figure));
  console.log(`  May run: ${state.mayRun}`);
  for (const reason of state.screening.reasons) console.log(reasonLine(reason));
}

function tellPlan({ plans, state }: DogFile): void {
  const { programme } = state!;
  const ramp = plans.find(({ current }) => current)?.ramp;
  if (ramp === undefined) return;
  console.log(
    `\nProgramme: ${programme.kind}${programme.kind === 'waiting' ? ` for the ${programme.for}` : ''}`,
  );
  const going = underWay(programme);
  if (going !== null) {
    console.log(
      `  week ${going.week?.number ?? 'none'} of ${going.lastWeek}, next outing ${going.next?.day ?? 'none'}`,
    );
  }
  console.log(
    `\nRunning plan from ${ramp.request.startDay}: ${ramp.weeks.length} weeks, goal reached on ${state!.goal?.day ?? 'no day'}`,
  );
  for (const week of ramp.weeks) {
    const mark = week.recovery ? ', easy week' : '';
    console.log(
      `  week ${week.number}: ${shownWeekMinutes(week)} run-minutes, ${week.step}${mark}`,
    );
  }
  for (const reason of ramp.reasons) console.log(reasonLine(reason));
}

async function writeHandouts(service: Service, dogId: string, folder: string): Promise<void> {
  mkdirSync(folder, { recursive: true });
  console.log('\nHandouts');
  for (const kind of HANDOUT_KINDS) {
    const pdf = await ask(service, 'handouts/render', { kind, dogId, paper: null });
    const file = join(folder, pdf.fileName);
    writeFileSync(file, Buffer.from(pdf.base64, 'base64'));
    console.log(`  ${file} (${pdf.pages} ${pdf.pages === 1 ? 'page' : 'pages'})`);
  }
}

const folder = mkdtempSync(join(tmpdir(), 'trotwell-demo-'));
const { version } = JSON.parse(readFileSync(at('../../../package.json'), 'utf8')) as {
  version: string;
};
const service = createService({
  folder,
  fontsFolder: at('../../../templates/fonts'),
  version,
  clock: () => new Date(),
});
try {
  const { practice } = await ask(service, 'app/open', { which: 'demo' });
  console.log(`${practice?.name}: invented people and dogs.`);
  console.log(`Records in ${folder}`);
  const [line] = await ask(service, 'dogs/list', { query: 'Bramble' });
  const file = await ask(service, 'dogs/file', { dogId: line!.id });
  console.log(`\n${file.dog.name}, ${file.dog.breed}; owner ${file.client.name}`);
  tellVisits(file);
  tellState(file);
  tellPlan(file);
  await writeHandouts(service, line!.id, join(folder, 'handouts'));
  console.log(
    '\nThis supports the judgement of a trained person; the treating vet and local law come first.',
  );
} finally {
  await service.close();
}
