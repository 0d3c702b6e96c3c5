import { rationOrNull, type Assessment, type Ration } from '../../../core/index.ts';
import type { FoodDecision, SavedVisit, Visit } from '../../contract/contract.ts';
import type { FoodDecisionInput } from '../../contract/records.ts';
import { fromRow, toRow } from '../../contract/records/columns.ts';
import { FOOD_DECISIONS } from '../../contract/records/decided.ts';
import { changeoverFor, switchedDiet } from '../../contract/food/switch.ts';
import { LIMITS, limitSentence } from '../../contract/limits.ts';
import { assessRecord, readRecord } from './assessment.ts';
import { authorNow } from '../practice/practitioners.ts';
import type { Context, Handlers } from '../database/context.ts';
import { readDog } from '../dogs/dogs.ts';
import { badField } from '../refuse.ts';
import { removeUnusedFiles } from '../files/unused.ts';
import { addWaitingFiles } from '../files/waiting.ts';
import type { Db } from '../database/schema.ts';
import { keepSession } from '../plans/sessions.ts';
import { planAt } from './plan.ts';
import { writeVisit } from './write.ts';

/** Keeps the practitioner's answer together with the proposal it answers. */
async function decideFood(
  context: Context,
  db: Db,
  visit: Visit,
  input: FoodDecisionInput,
  assessment: Assessment | null,
): Promise<FoodDecision> {
  if (assessment === null) {
    throw badField('visit.weightKg', 'The food can be decided once the dog has been weighed.');
  }
  if (input.foodSwitch !== null) assertFedNow(visit, input.foodSwitch.replaces);
  const settled = settledFood(assessment, visit, input);
  const row = await db
    .insertInto('foodDecision')
    .values(
      toRow(FOOD_DECISIONS, {
        ...input,
        ...settled,
        id: context.newId(),
        dogId: visit.dogId,
        visitId: visit.id,
        decidedOn: visit.day,
        changeover: changeoverFor(visit.diet, input.foodSwitch, settled.ration),
        proposal: assessment.food,
        known: whatWasKnown(assessment),
        author: await authorNow(db),
        createdAt: context.instant(),
      }),
    )
    .returningAll()
    .executeTakeFirstOrThrow();
  return fromRow(FOOD_DECISIONS, row);
}

/** What the decision rested on; the rest of the assessment can be computed again from the record. */
function whatWasKnown(assessment: Assessment): FoodDecision['known'] {
  const { weightKg, targetWeightKg, intakeKcal, running, trendOnRation, own, maintenance } =
    assessment;
  return {
    weightKg,
    targetWeightKg,
    intakeKcal,
    runningKcalPerDay: running?.current?.kcalPerDay ?? 0,
    maintenance: maintenance.figure,
    own: own.figure,
    trend: trendOnRation.figure,
  };
}

type Settled = Pick<FoodDecision, 'kcalPerDay' | 'ration'>;

/** What the dog is to eat after the practitioner's answer. */
function settledFood(assessment: Assessment, visit: Visit, input: FoodDecisionInput): Settled {
  const { food, intakeKcal } = assessment;
  if (input.decision === 'accepted') {
    if (food.kcalPerDay === null) {
      throw badField(
        'food.decision',
        'There is no proposed ration to accept: edit it, or decline.',
      );
    }
    const { kcalPerDay } = food;
    assertSeen(input.kcalPerDay, kcalPerDay);
    return {
      kcalPerDay,
      ration: input.foodSwitch === null ? food.ration : rationFor(kcalPerDay, visit, input),
    };
  }
  const kcalPerDay = input.decision === 'edited' ? input.kcalPerDay : intakeKcal;
  if (kcalPerDay === null || kcalPerDay < 1) {
    throw badField('food.kcalPerDay', limitSentence(LIMITS.kcalPerDay));
  }
  return { kcalPerDay, ration: rationFor(kcalPerDay, visit, input) };
}

/** Nothing is kept that the practitioner did not see: a proposal that changed since asks anew. */
function assertSeen(seen: number | null, proposed: number): void {
  if (seen === null || Math.abs(seen - proposed) <= 0.5) return;
  throw badField(
    'food.decision',
    `The proposal is now ${Math.round(proposed)} kcal/day, and you accepted ${Math.round(seen)}. Look at it again; nothing was saved.`,
  );
}

function assertFedNow(visit: Visit, name: string): void {
  if (visit.diet.some((item) => !item.treat && item.name === name)) return;
  throw badField(
    'food.foodSwitch.replaces',
    'Food to be replaced must be one of the foods fed now.',
  );
}

/** Null while no food is listed whose amount could follow, or fixed foods take the whole day. */
function rationFor(kcalPerDay: number, visit: Visit, input: FoodDecisionInput): Ration | null {
  const foods = switchedDiet(visit.diet, input.foodSwitch);
  return rationOrNull({ kcalPerDay, foods, mealsPerDay: visit.mealsPerDay });
}

/** Refuses a target weight that speaks against the aim; a target reached since is none. */
function assertAimFits(assessment: Assessment | null): void {
  const problem = assessment?.aimProblem ?? null;
  if (problem !== null) throw badField('visit.targetWeightKg', problem.text, problem.said);
}

export const visitHandlers: Handlers<'visits/save'> = {
  'visits/save': async (context, input) => {
    await readDog(context.db, input.visit.dogId);
    if (input.visit.day > context.today()) {
      throw badField('visit.day', 'Day of the visit must not lie in the future.');
    }
    const { wellSince } = input.visit;
    if (wellSince != null && wellSince > input.visit.day) {
      throw badField('visit.wellSince', 'Well again since: a day up to that of the visit.');
    }
    let leftOut = false;
    const saved = await context.db.transaction().execute(async (db): Promise<SavedVisit> => {
      const { dogId, day } = input.visit;
      for (const [index, session] of (input.sessions ?? []).entries()) {
        await keepSession(context, db, { dogId, session, path: `sessions.${index}` });
      }
      const id = await writeVisit(context, db, input);
      if (input.id === null) leftOut = await addWaitingFiles(context, db, { dogId, visitId: id });
      const record = await readRecord(db, dogId);
      const visit = record.visits.find((entry) => entry.id === id)!;
      const assessment = await assessRecord(db, record, day, id);
      assertAimFits(assessment);
      const plan = await planAt(context, db, { visit, record, assessment }, input);
      if (input.food === null) return { visit, plan, foodDecision: null };
      // The food is for the running of the plan just made, where there is one.
      const known =
        plan === null ? assessment : await assessRecord(db, await readRecord(db, dogId), day, id);
      return { visit, plan, foodDecision: await decideFood(context, db, visit, input.food, known) };
    });
    // What was left out goes for good, unless something else names it.
    if (leftOut) removeUnusedFiles(context);
    return saved;
  },
};
