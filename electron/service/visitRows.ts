import type { Kysely } from 'kysely';
import type { Visit } from '../contract/contract.ts';
import { LIMBS, type DietItem, type LimbGrades, type VisitFacts } from '../contract/records.ts';
import type { DietItemRow, LamenessRow, Schema, VisitRow } from './schema.ts';

const bit = (yes: boolean): 0 | 1 => (yes ? 1 : 0);

/** The visits of a dog, oldest first, each with all that belongs to it. */
export async function readVisits(db: Kysely<Schema>, dogId: string): Promise<Visit[]> {
  const rows = await db
    .selectFrom('visit')
    .selectAll()
    .where('dogId', '=', dogId)
    .orderBy('day')
    .orderBy('createdAt')
    .execute();
  const ids = rows.map((row) => row.id);
  if (ids.length === 0) return [];
  const [lameness, signs, overrides, diet] = await Promise.all([
    db.selectFrom('visitLameness').selectAll().where('visitId', 'in', ids).execute(),
    db
      .selectFrom('visitSign')
      .selectAll()
      .where('visitId', 'in', ids)
      .orderBy('position')
      .execute(),
    db
      .selectFrom('visitOverride')
      .selectAll()
      .where('visitId', 'in', ids)
      .orderBy('position')
      .execute(),
    db.selectFrom('dietItem').selectAll().where('visitId', 'in', ids).orderBy('position').execute(),
  ]);
  const lamenessOf = groupByVisit(lameness);
  const signsOf = groupByVisit(signs);
  const overridesOf = groupByVisit(overrides);
  const dietOf = groupByVisit(diet);
  return rows.map((row) => ({
    ...visitFromRow(row),
    lamenessWalk: grades(lamenessOf.get(row.id) ?? [], 'walk'),
    lamenessTrot: grades(lamenessOf.get(row.id) ?? [], 'trot'),
    signs: (signsOf.get(row.id) ?? []).map(({ sign }) => sign),
    overrides: (overridesOf.get(row.id) ?? []).map(({ code, reason }) => ({ code, reason })),
    diet: (dietOf.get(row.id) ?? []).map(dietItemFromRow),
  }));
}

function groupByVisit<Row extends { visitId: string }>(rows: readonly Row[]): Map<string, Row[]> {
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const group = groups.get(row.visitId);
    if (group === undefined) groups.set(row.visitId, [row]);
    else group.push(row);
  }
  return groups;
}

function grades(rows: readonly LamenessRow[], gait: 'walk' | 'trot'): LimbGrades {
  const result: LimbGrades = { leftFore: null, rightFore: null, leftHind: null, rightHind: null };
  for (const row of rows) {
    if (row.gait === gait) result[row.limb as (typeof LIMBS)[number]] = row.grade;
  }
  return result;
}

function dietItemFromRow({ visitId: _visit, position: _position, ...row }: DietItemRow): DietItem {
  return { ...row, treat: row.treat === 1, fixedGrams: row.fixedGrams === 1 };
}

type VisitOwnFacts = Omit<Visit, 'lamenessWalk' | 'lamenessTrot' | 'signs' | 'overrides' | 'diet'>;

function visitFromRow(row: VisitRow): VisitOwnFacts {
  const { consentGiven, consentVet, consentDay, consentScope, consentExpiryDay, ...rest } = row;
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
    airwayDisease: rest.airwayDisease === 1,
    radiographicClearance: rest.radiographicClearance === 1,
    consent: {
      given: consentGiven === 1,
      vet: consentVet,
      day: consentDay,
      scope: consentScope,
      expiryDay: consentExpiryDay,
    },
  };
}

/** The row of a visit, without id and times. */
export function visitToRow(visit: VisitFacts): Omit<VisitRow, 'id' | 'createdAt' | 'updatedAt'> {
  const { lamenessWalk: _w, lamenessTrot: _t, signs: _s, overrides: _o, diet: _d, ...own } = visit;
  const { consent, ...rest } = own;
  return {
    ...rest,
    airwayDisease: bit(rest.airwayDisease),
    radiographicClearance: bit(rest.radiographicClearance),
    consentGiven: bit(consent.given),
    consentVet: consent.vet,
    consentDay: consent.day,
    consentScope: consent.scope,
    consentExpiryDay: consent.expiryDay,
  };
}

/** Replaces all that belongs to a visit: grades, signs, overrides, diet. Runs inside a transaction. */
export async function writeVisitParts(
  db: Kysely<Schema>,
  visitId: string,
  visit: VisitFacts,
): Promise<void> {
  for (const table of ['visitLameness', 'visitSign', 'visitOverride', 'dietItem'] as const) {
    await db.deleteFrom(table).where('visitId', '=', visitId).execute();
  }
  const lameness = [
    ...gradeRows(visitId, 'walk', visit.lamenessWalk),
    ...gradeRows(visitId, 'trot', visit.lamenessTrot),
  ];
  const signs = visit.signs.map((sign, position) => ({ visitId, position, sign }));
  const overrides = visit.overrides.map((override, position) => ({
    visitId,
    position,
    ...override,
  }));
  const diet = visit.diet.map((item, position) => ({
    ...item,
    visitId,
    position,
    treat: bit(item.treat),
    fixedGrams: bit(item.fixedGrams),
  }));
  if (lameness.length > 0) await db.insertInto('visitLameness').values(lameness).execute();
  if (signs.length > 0) await db.insertInto('visitSign').values(signs).execute();
  if (overrides.length > 0) await db.insertInto('visitOverride').values(overrides).execute();
  if (diet.length > 0) await db.insertInto('dietItem').values(diet).execute();
}

function gradeRows(visitId: string, gait: 'walk' | 'trot', limbs: LimbGrades): LamenessRow[] {
  return LIMBS.flatMap((limb) => {
    const grade = limbs[limb];
    return grade === null ? [] : [{ visitId, gait, limb, grade }];
  });
}
