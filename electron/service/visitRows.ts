import type { Kysely } from 'kysely';
import type { Visit } from '../contract/contract.ts';
import type { VisitFacts } from '../contract/records.ts';
import type { Schema, VisitRow } from './schema.ts';
import { readVisitParts, type VisitParts } from './visitParts.ts';

const bit = (yes: boolean): 0 | 1 => (yes ? 1 : 0);

/** The visits of a dog, oldest first, each with all that belongs to it. */
export async function readVisits(db: Kysely<Schema>, dogId: string): Promise<Visit[]> {
  const rows = await db
    .selectFrom('visit')
    .selectAll()
    .where('dogId', '=', dogId)
    .where('binnedAt', 'is', null)
    .orderBy('day')
    .orderBy('createdAt')
    .execute();
  if (rows.length === 0) return [];
  const partsOf = await readVisitParts(
    db,
    rows.map(({ id }) => id),
  );
  return rows.map((row) => ({ ...visitFromRow(row), ...partsOf(row.id) }));
}

/** One visit, in the bin or not; null when there is none. */
export async function readVisit(db: Kysely<Schema>, id: string): Promise<Visit | null> {
  const row = await db.selectFrom('visit').selectAll().where('id', '=', id).executeTakeFirst();
  if (row === undefined) return null;
  const partsOf = await readVisitParts(db, [id]);
  return { ...visitFromRow(row), ...partsOf(id) };
}

export function visitFromRow(row: VisitRow): Omit<Visit, keyof VisitParts> {
  const { consentGiven, consentVet, consentDay, consentScope, consentExpiryDay, ...others } = row;
  const { binnedAt: _binnedAt, ...rest } = others;
  return {
    ...rest,
    kind: rest.kind as Visit['kind'],
    weighingMethod: rest.weighingMethod as Visit['weighingMethod'],
    muscle: rest.muscle as Visit['muscle'],
    surgery: rest.surgery as Visit['surgery'],
    conditioning: rest.conditioning as Visit['conditioning'],
    walkBase: rest.walkBase as Visit['walkBase'],
    activity: rest.activity as Visit['activity'],
    foodGoal: rest.foodGoal as Visit['foodGoal'],
    trotLamenessAssessed: rest.trotLamenessAssessed === 1,
    airwayDisease: rest.airwayDisease === 1,
    airwayClearance: rest.airwayClearance === 1,
    radiographicClearance: rest.radiographicClearance === 1,
    weightLossDiet: rest.weightLossDiet === 1,
    consent: {
      given: consentGiven === 1,
      vet: consentVet,
      day: consentDay,
      scope: consentScope,
      expiryDay: consentExpiryDay,
    },
  };
}

type KeptByService = 'id' | 'createdAt' | 'updatedAt' | 'revision' | 'author' | 'binnedAt';

/** The row of a visit, without what the service adds. */
export function visitToRow(visit: VisitFacts): Omit<VisitRow, KeptByService> {
  const { consent } = visit;
  return {
    dogId: visit.dogId,
    kind: visit.kind,
    day: visit.day,
    weightKg: visit.weightKg,
    weighingMethod: visit.weighingMethod,
    scaleStepKg: visit.scaleStepKg,
    bcs: visit.bcs,
    muscle: visit.muscle,
    trotLamenessAssessed: bit(visit.trotLamenessAssessed),
    gaitNote: visit.gaitNote,
    surgery: visit.surgery,
    airwayDisease: bit(visit.airwayDisease),
    airwayClearance: bit(visit.airwayClearance),
    radiographicClearance: bit(visit.radiographicClearance),
    conditioning: visit.conditioning,
    walkBase: visit.walkBase,
    activity: visit.activity,
    consentGiven: bit(consent.given),
    consentVet: consent.vet,
    consentDay: consent.day,
    consentScope: consent.scope,
    consentExpiryDay: consent.expiryDay,
    targetWeightKg: visit.targetWeightKg,
    foodGoal: visit.foodGoal,
    mealsPerDay: visit.mealsPerDay,
    weightLossDiet: bit(visit.weightLossDiet),
    notes: visit.notes,
  };
}
