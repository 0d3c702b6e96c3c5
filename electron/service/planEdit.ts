import type { Kysely } from 'kysely';
import { checkRamp, editRamp, type KeptBreach, type RampEdit } from '../../core/index.ts';
import type { Plan } from '../contract/contract.ts';
import { readRecord } from './assessment.ts';
import type { Desk, Handlers } from './context.ts';
import { currentPlan, keepPlan } from './plans.ts';
import { badField } from './refuse.ts';
import type { Schema } from './schema.ts';

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
export function keepEdit(desk: Desk, db: Kysely<Schema>, edit: HandEdit): Promise<Plan> {
  const { plan, edits, kept, note, visitId, madeOn, path } = edit;
  const ramp = editRamp(plan.ramp, edits);
  const breaches = checkRamp(ramp, kept).filter(({ gravity }) => gravity === 'breach');
  const open = breaches.find(({ keptBecause }) => keptBecause === null);
  if (open !== undefined) {
    throw badField(path, `A written reason is needed to keep this: ${open.text}`);
  }
  return keepPlan(desk, db, {
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

export const planEditHandlers: Handlers<'plans/edit'> = {
  'plans/edit': (desk, { dogId, edits, kept, note }) =>
    desk.db.transaction().execute(async (db) => {
      const plan = currentPlan(await readRecord(db, dogId));
      const madeOn = desk.today();
      return keepEdit(desk, db, { plan, edits, kept, note, visitId: null, madeOn, path: 'kept' });
    }),
};
