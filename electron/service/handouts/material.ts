import {
  heatTable,
  lastKnown,
  targetInForce,
  toldTarget,
  weighingsUpTo,
  type Assessment,
  type HeatTable,
  type PresentState,
  type RuleChanges,
} from '../../../core/index.ts';
import { heatDogOf } from '../../contract/dogs/heatDog.ts';
import { toWeighing } from '../../contract/visits/assessInput.ts';
import { toRuleChanges } from '../../contract/plans/request.ts';
import { readRules } from '../practice/rules.ts';
import type { Amendment, Findings, HandoutContext } from '../../../templates/index.ts';
import type { DogFile, FoodDecision, Plan, Visit } from '../../contract/contract.ts';
import type { Practice, PracticeLogo } from '../../contract/records.ts';
import type { Context } from '../database/context.ts';
import { localDay } from '../day.ts';
import { readDogFile } from '../dogs/file.ts';
import { readLogo, readPractice } from '../practice/practice.ts';
import { nameOf } from '../practice/practitioners.ts';
import { badField } from '../refuse.ts';

/** Everything the sheets of a dog are built from, read once. */
export interface Material {
  readonly file: DogFile;
  readonly assessment: Assessment;
  /** Where the dog stands: what every sheet says of it. */
  readonly state: PresentState<Plan, FoodDecision>;
  readonly context: HandoutContext;
  /** The practice's own language. */
  readonly language: Practice['language'];
  readonly latest: Visit;
  /** The sheets the practice chose for such a visit. */
  readonly chosen: Practice['intakeSheets'];
  /** The rules the practice changed. */
  readonly rules: RuleChanges;
  /** The bands of this dog in the practice's rules. */
  readonly heat: HeatTable;
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
export async function readLetterhead(context: Context): Promise<Letterhead> {
  const practice = await readPractice(context);
  if (practice === null) {
    throw badField(
      'practice',
      'Name the practice in the settings first: it stands at the head of every handout.',
    );
  }
  return {
    practice,
    logo: await readLogo(context),
    rules: toRuleChanges(await readRules(context.db)),
  };
}

/**
 * Reads the record for printing; the letterhead too, unless it was read before.
 * @throws Refusal when the dog, the practice or a weighing is missing
 */
export async function collect(
  context: Context,
  dogId: string,
  paper: Practice['paper'] | null,
  known?: Letterhead,
): Promise<Material> {
  const file = await readDogFile(context, dogId);
  const { practice, logo, rules } = known ?? (await readLetterhead(context));
  const latest = file.visits.at(-1);
  const { state } = file;
  if (state === null || latest === undefined) {
    throw badField('dogId', 'There is nothing to print yet: weigh the dog at a visit first.');
  }
  return {
    file,
    assessment: state.assessment,
    state,
    language: practice.language,
    latest,
    chosen: latest.kind === 'intake' ? practice.intakeSheets : practice.followUpSheets,
    heat: heatTable({
      dog: heatDogOf(file, state.assessment, rules),
      rules,
    }),
    rules,
    amendments: await amendmentsOf(context, latest.id),
    context: {
      practice: {
        ...practice,
        // Who wrote the visit answers for it; a practice of one has no initials to go by.
        practitioner: (await nameOf(context.db, latest.author)) ?? practice.practitioner,
        paper: paper ?? practice.paper,
        accent: practice.accent === '' ? null : practice.accent,
        footer: practice.footer === '' ? null : practice.footer,
        logo,
      },
      dog: file.dog,
      owner: file.client,
      day: latest.day,
      printedOn: context.today(),
      demo: context.which === 'demo',
    },
  };
}

async function amendmentsOf({ db }: Context, visitId: string): Promise<Amendment[]> {
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

/**
 * What was found at a visit; score and muscle from the last visit up to it that has them. Weight and
 * target are those of where the dog stood: at the latest visit, of where it stands now.
 */
export function findingsAt(material: Material, visit: Visit): Findings {
  const { file, latest } = material;
  const upTo = file.visits.slice(0, file.visits.findIndex(({ id }) => id === visit.id) + 1);
  const stood = visit.id === latest.id ? standsNow(material) : stoodAt(material, upTo);
  const known = <T>(pick: (visit: Visit) => T | null): T | null => lastKnown(upTo, pick);
  return {
    day: visit.day,
    weightKg: stood.weightKg,
    weighedOn: stood.weighedOn === visit.day ? null : stood.weighedOn,
    bcs: known(({ bcs }) => bcs),
    muscle: known(({ muscle }) => muscle),
    lamenessWalk: visit.lamenessWalk,
    lamenessTrot: visit.lamenessTrot,
    gaitNote: visit.gaitNote,
    targetWeightKg: stood.targetKg,
    consent: visit.consent,
  };
}

/** How the weight of the latest visit was taken; null without one, or where no scale came before. */
export function weighedBy({ file, latest }: Material): Visit['weighingMethod'] | null {
  const { weightKg, weighingMethod } = latest;
  if (weightKg === null) return null;
  const weighings = weighingsUpTo(latest.day, file.visits, file.weighings.map(toWeighing));
  return weighings.length === 1 && weighingMethod === 'same scale' ? null : weighingMethod;
}

/** A weight with its day, and the target in force with it. */
interface Stood {
  readonly weightKg: number | null;
  readonly weighedOn: string | null;
  readonly targetKg: number | null;
}

function standsNow({ assessment, state }: Material): Stood {
  const weighedOn = assessment.trend.points.at(-1)?.day ?? null;
  return { weightKg: state.weight.kg, weighedOn, targetKg: state.targetKg };
}

function stoodAt({ file }: Material, upTo: readonly Visit[]): Stood {
  const { day } = upTo.at(-1)!;
  const weighings = weighingsUpTo(day, upTo, file.weighings.map(toWeighing));
  const last = weighings.at(-1);
  if (last === undefined) return { weightKg: null, weighedOn: null, targetKg: null };
  const targetKg = toldTarget(targetInForce({ visits: upTo, weighings, day }));
  return { weightKg: last.weightKg, weighedOn: last.day, targetKg };
}
