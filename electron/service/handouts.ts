import type { Assessment } from '../../core/index.ts';
import {
  en,
  feedingSheet,
  kitSheet,
  renderPdf,
  runningPlan,
  type Findings,
  type HandoutContext,
  type HandoutDocument,
} from '../../templates/index.ts';
import type { DogFile, HandoutKind } from '../contract/contract.ts';
import type { Practice } from '../contract/records.ts';
import type { Desk, Handlers } from './context.ts';
import { readDogFile } from './dogFile.ts';
import { readPractice } from './practice.ts';
import { badField } from './refuse.ts';

/** Everything a handout is built from, read once. */
interface Material {
  readonly file: DogFile;
  readonly assessment: Assessment;
  readonly context: HandoutContext;
}

const BUILDERS: Readonly<Record<HandoutKind, (material: Material) => HandoutDocument>> = {
  'running-plan': (material) => {
    const { file, assessment, context } = material;
    const current = file.plans.find(({ current }) => current);
    const ready = assessment.screening.outcome === 'ready to start';
    return runningPlan(
      {
        ...context,
        findings: findings(material),
        screening: assessment.screening,
        ramp: ready && current !== undefined ? current.ramp : null,
      },
      en,
    );
  },
  'feeding-sheet': ({ file, assessment, context }) => {
    const decision = file.foodDecisions.at(-1);
    const latest = file.visits.at(-1);
    // A decision of an earlier visit no longer speaks for the present one.
    const decided =
      decision !== undefined && decision.visitId === latest?.id ? decision : undefined;
    const proposal = decided?.proposal ?? assessment.food;
    return feedingSheet(
      {
        ...context,
        aim: latest?.foodGoal ?? 'hold',
        proposal,
        kcalPerDay: decided?.kcalPerDay ?? proposal.kcalPerDay,
        decisionNote: decided?.decision === 'edited' ? decided.note : '',
        ration: decided === undefined ? proposal.ration : decided.ration,
        need: assessment.own.informative ? assessment.own : assessment.maintenance,
        targetWeightKg: latest?.foodGoal === 'hold' ? null : assessment.targetWeightKg,
        changeover: null,
      },
      en,
    );
  },
  'kit-sheet': ({ context }) => kitSheet(context, en),
};

/** What was found: from the latest visit, each measure from the last visit that has it. */
function findings({ file, assessment }: Material): Findings {
  const latest = file.visits.at(-1)!;
  const known = <T>(pick: (visit: DogFile['visits'][number]) => T | null): T | null =>
    file.visits.map(pick).findLast((value) => value !== null) ?? null;
  return {
    day: latest.day,
    weightKg: assessment.weightKg,
    bcs: known(({ bcs }) => bcs),
    muscle: known(({ muscle }) => muscle),
    lamenessWalk: latest.lamenessWalk,
    lamenessTrot: latest.lamenessTrot,
    gaitNote: latest.gaitNote,
    targetWeightKg: assessment.targetWeightKg,
    consent: latest.consent,
    overrides: latest.overrides,
  };
}

async function collect(
  desk: Desk,
  dogId: string,
  paper: Practice['paper'] | null,
): Promise<Material> {
  const file = await readDogFile(desk, dogId);
  const practice = await readPractice(desk);
  if (practice === null) {
    throw badField(
      'practice',
      'Name the practice in the settings first: it stands at the head of every handout.',
    );
  }
  if (file.assessment === null) {
    throw badField('dogId', 'There is nothing to print yet: weigh the dog at a visit first.');
  }
  return {
    file,
    assessment: file.assessment,
    context: {
      practice: { ...practice, paper: paper ?? practice.paper },
      dog: file.dog,
      owner: file.client,
      day: desk.today(),
      demo: desk.which === 'demo',
    },
  };
}

/** A file name any system takes: letters, digits and hyphens of the dog's name. */
function fileName(kind: HandoutKind, dogName: string, day: string): string {
  const plain = dogName
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 40);
  return `${plain === '' ? 'dog' : plain}-${kind}-${day}.pdf`;
}

export const handoutHandlers = (fontsFolder: string): Handlers<'handouts/render'> => ({
  'handouts/render': async (desk, { kind, dogId, paper }) => {
    const material = await collect(desk, dogId, paper);
    const { bytes, pages } = await renderPdf(BUILDERS[kind](material), {
      fontsFolder,
      // The day decides, so that the same record gives the same file all day.
      instant: new Date(`${desk.today()}T12:00:00Z`),
    });
    return {
      fileName: fileName(kind, material.file.dog.name, desk.today()),
      mediaType: 'application/pdf',
      base64: Buffer.from(bytes).toString('base64'),
      pages,
    };
  },
});
