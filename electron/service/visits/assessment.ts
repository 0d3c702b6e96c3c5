import { assess, presentState, type Assessment, type PresentState } from '../../../core/index.ts';
import {
  assessInput,
  presentInput,
  type AssessedRecord,
} from '../../contract/visits/assessInput.ts';
import type { FoodDecision, Plan } from '../../contract/contract.ts';
import type { RuleChange } from '../../contract/records.ts';
import type { Context } from '../database/context.ts';
import { readDog } from '../dogs/dogs.ts';
import { readFoodDecisions } from '../food/decisions.ts';
import { readPlans } from '../plans/plans.ts';
import { readRules } from '../practice/rules.ts';
import type { Db } from '../database/schema.ts';
import { readSessions } from '../plans/sessions.ts';
import { readVisits } from './rows.ts';
import { readWeighings } from '../weighings/weighings.ts';

/** Reads a dog's record. @throws Refusal (not-found). */
export async function readRecord(db: Db, dogId: string): Promise<AssessedRecord> {
  const [dog, visits, weighings, plans, foodDecisions, sessions] = await Promise.all([
    readDog(db, dogId),
    readVisits(db, dogId),
    readWeighings(db, dogId),
    readPlans(db, dogId),
    readFoodDecisions(db, dogId),
    readSessions(db, dogId),
  ]);
  return { dog, visits, weighings, plans, foodDecisions, sessions };
}

/** What core makes of a record on `day`; null before the first weighing. */
export async function assessRecord(
  db: Db,
  record: AssessedRecord,
  day: string,
  decidingVisitId: string | null = null,
): Promise<Assessment | null> {
  return assess(assessInput(record, await readRules(db), day, decidingVisitId));
}

/** Where a dog stands today; null before the first weighing. @throws Refusal (not-found). */
export async function readState(
  context: Context,
  dogId: string,
  rules: readonly RuleChange[],
): Promise<PresentState<Plan, FoodDecision> | null> {
  return presentState(presentInput(await readRecord(context.db, dogId), rules, context.today()));
}
