import {
  heatTable,
  type Assessment,
  type HeatTable,
  type RuleChanges,
} from '../../../core/index.ts';
import { heatDogOf } from '../../contract/heatDog.ts';
import { toRuleChanges } from '../../contract/rampRequest.ts';
import { readRules } from '../rules.ts';
import type { Amendment, Findings, HandoutContext } from '../../../templates/index.ts';
import type { DogFile, FoodDecision, Plan, Visit } from '../../contract/contract.ts';
import type { Practice, PracticeLogo } from '../../contract/records.ts';
import type { Desk } from '../context.ts';
import { localDay } from '../day.ts';
import { readDogFile } from '../dogFile.ts';
import { readLogo, readPractice } from '../practice.ts';
import { nameOf } from '../practitioners.ts';
import { badField } from '../refuse.ts';

/** Everything the sheets of a dog are built from, read once. */
export interface Material {
  readonly file: DogFile;
  readonly assessment: Assessment;
  readonly context: HandoutContext;
  /** The practice's own language. */
  readonly language: Practice['language'];
  readonly latest: Visit;
  readonly plan: Plan | null;
  /** The rules the practice changed. */
  readonly rules: RuleChanges;
  /** The bands of this dog in the practice's rules. */
  readonly heat: HeatTable;
  /** The decision taken at the latest visit; one of an earlier visit no longer speaks for it. */
  readonly decision: FoodDecision | null;
  /** What was changed of the latest visit since it was first saved, oldest first. */
  readonly amendments: readonly Amendment[];
}

/** What the sheets of every dog share, read once. */
export interface Letterhead {
  readonly practice: Practice;
  readonly logo: PracticeLogo | null;
  readonly rules: RuleChanges;
}

/** @throws Refusal (input) while the practice has no name */
export async function readLetterhead(desk: Desk): Promise<Letterhead> {
  const practice = await readPractice(desk);
  if (practice === null) {
    throw badField(
      'practice',
      'Name the practice in the settings first: it stands at the head of every handout.',
    );
  }
  return {
    practice,
    logo: await readLogo(desk),
    rules: toRuleChanges(await readRules(desk.db)),
  };
}

/**
 * Reads the record for printing; the letterhead too, unless it was read before.
 * @throws Refusal when the dog, the practice or a weighing is missing
 */
export async function collect(
  desk: Desk,
  dogId: string,
  paper: Practice['paper'] | null,
  known?: Letterhead,
): Promise<Material> {
  const file = await readDogFile(desk, dogId);
  const { practice, logo, rules } = known ?? (await readLetterhead(desk));
  const latest = file.visits.at(-1);
  if (file.assessment === null || latest === undefined) {
    throw badField('dogId', 'There is nothing to print yet: weigh the dog at a visit first.');
  }
  return {
    file,
    assessment: file.assessment,
    language: practice.language,
    latest,
    plan: file.plans.find(({ current }) => current) ?? null,
    heat: heatTable({
      dog: heatDogOf(file, file.assessment, rules),
      rules,
    }),
    rules,
    amendments: await amendmentsOf(desk, latest.id),
    decision: file.foodDecisions.findLast(({ visitId }) => visitId === latest.id) ?? null,
    context: {
      practice: {
        ...practice,
        // Who wrote the visit answers for it; a practice of one has no initials to go by.
        practitioner: (await nameOf(desk.db, latest.author)) ?? practice.practitioner,
        paper: paper ?? practice.paper,
        accent: practice.accent === '' ? null : practice.accent,
        footer: practice.footer === '' ? null : practice.footer,
        logo,
      },
      dog: file.dog,
      owner: file.client,
      day: desk.today(),
      demo: desk.which === 'demo',
    },
  };
}

async function amendmentsOf({ db }: Desk, visitId: string): Promise<Amendment[]> {
  const rows = await db
    .selectFrom('history')
    .select(['at', 'author', 'reason'])
    .where('recordId', '=', visitId)
    .where('action', '=', 'amended')
    .orderBy('id')
    .execute();
  return Promise.all(
    rows.map(async ({ at, author, reason }) => ({
      day: localDay(new Date(at)),
      by: (await nameOf(db, author)) ?? author,
      reason,
    })),
  );
}

/** What was found at a visit; weight, score and muscle from the last visit up to it that has them. */
export function findingsAt({ file, assessment }: Material, visit: Visit): Findings {
  const upTo = file.visits.slice(0, file.visits.findIndex(({ id }) => id === visit.id) + 1);
  const known = <T>(pick: (visit: Visit) => T | null): T | null =>
    upTo.map(pick).findLast((value) => value !== null) ?? null;
  return {
    day: visit.day,
    weightKg: known(({ weightKg }) => weightKg),
    bcs: known(({ bcs }) => bcs),
    muscle: known(({ muscle }) => muscle),
    lamenessWalk: visit.lamenessWalk,
    lamenessTrot: visit.lamenessTrot,
    gaitNote: visit.gaitNote,
    targetWeightKg: assessment.targetWeightKg,
    consent: visit.consent,
    overrides: visit.overrides,
  };
}
