import {
  checkRamp,
  editRamp,
  goalLimitsOf,
  isGoalSetAside,
  type KeptBreach,
  type Ramp,
  type RampEdit,
} from '../../../core/index.ts';
import { assessInput } from '../../contract/visits/assessInput.ts';
import type { Plan } from '../../contract/contract.ts';
import { readRecord } from '../visits/assessment.ts';
import type { Context, Handlers } from '../database/context.ts';
import { currentPlan, keepPlan } from './plans.ts';
import { badField } from '../refuse.ts';
import { readRules } from '../practice/rules.ts';
import type { Db } from '../database/schema.ts';

export interface HandEdit {
  readonly plan: Plan;
  readonly edits: readonly RampEdit[];
  readonly kept: readonly KeptBreach[];
  readonly note: string;
  readonly visitId: string | null;
  readonly madeOn: string;
  /** Names the input of the written reasons, where one is missing. */
  readonly path: string;
}

/** Keeps a plan as changed by hand. Runs inside a transaction. @throws Refusal for a missing reason. */
export async function keepEdit(context: Context, db: Db, edit: HandEdit): Promise<Plan> {
  const { plan, edits, kept, note, visitId, madeOn, path } = edit;
  const ramp = editRamp(plan.ramp, edits);
  const breaches = checkRamp(ramp, kept).filter(({ gravity }) => gravity === 'breach');
  const open = breaches.find(({ keptBecause }) => keptBecause === null);
  if (open !== undefined) {
    throw badField(path, `A written reason is needed to keep this: ${open.text}`);
  }
  await assertInsideGoal(db, plan, { ramp, day: madeOn, reasons: kept.length > 0 });
  return keepPlan(context, db, {
    dogId: plan.dogId,
    visitId,
    madeOn,
    origin: 'edited',
    request: plan.request,
    ramp,
    review: null,
    keptBreaches: breaches,
    note,
  });
}

/**
 * No run by hand goes beyond what this dog may be trained for; a written reason for the edit sets
 * aside what a reason can. @throws Refusal (input)
 */
async function assertInsideGoal(
  db: Db,
  { dogId, ramp: before }: Plan,
  { ramp, day, reasons }: { readonly ramp: Ramp; readonly day: string; readonly reasons: boolean },
): Promise<void> {
  const continuousMinutes = longestRun(ramp);
  if (continuousMinutes <= longestRun(before)) return;
  const [record, rules] = [await readRecord(db, dogId), await readRules(db)];
  const asked = { ...ramp.request, goal: { continuousMinutes } };
  const limit = goalLimitsOf(assessInput(record, rules, day, null), asked).find(
    ({ code }) => !(reasons && isGoalSetAside(code)),
  );
  if (limit !== undefined) throw badField('edits', `${limit.text} ${limit.change}`);
}

const longestRun = ({ weeks }: Ramp): number =>
  Math.max(
    0,
    ...weeks.flatMap(({ sessions }) =>
      sessions.map(({ kind, runMin }) => (kind === 'walk' ? 0 : runMin)),
    ),
  );

export const planEditHandlers: Handlers<'plans/edit'> = {
  'plans/edit': (context, { dogId, edits, kept, note }) =>
    context.db.transaction().execute(async (db) => {
      const plan = currentPlan(await readRecord(db, dogId));
      const madeOn = context.today();
      return keepEdit(context, db, {
        plan,
        edits,
        kept,
        note,
        visitId: null,
        madeOn,
        path: 'kept',
      });
    }),
};
