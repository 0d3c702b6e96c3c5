import { LIMBS } from '../../../core/readiness/types.ts';
import type { DietItem, Footfall, LimbGrades, Measurement } from '../../contract/records.ts';
import type { TablesOf } from '../../contract/records/fieldKinds.ts';
import type { VISIT } from '../../contract/records/visit.ts';
import type {
  Db,
  DietItemRow,
  FootfallRow,
  LamenessRow,
  MeasurementRow,
} from '../database/schema.ts';

/** What belongs to a visit and is kept in tables of its own. */
export type VisitParts = TablesOf<typeof VISIT>;

export const PART_TABLES = [
  'visitLameness',
  'visitSign',
  'visitOverride',
  'dietItem',
  'visitMeasurement',
  'visitFootfall',
] as const;

const bit = (yes: boolean): 0 | 1 => (yes ? 1 : 0);

/** Reads the parts of many visits at once; returns a look-up by visit. */
export async function readVisitParts(
  db: Db,
  visitIds: readonly string[],
): Promise<(visitId: string) => VisitParts> {
  const [lameness, signs, overrides, diet, measurements, footfalls] = await Promise.all([
    db.selectFrom('visitLameness').selectAll().where('visitId', 'in', visitIds).execute(),
    db
      .selectFrom('visitSign')
      .selectAll()
      .where('visitId', 'in', visitIds)
      .orderBy('position')
      .execute(),
    db
      .selectFrom('visitOverride')
      .selectAll()
      .where('visitId', 'in', visitIds)
      .orderBy('position')
      .execute(),
    db
      .selectFrom('dietItem')
      .selectAll()
      .where('visitId', 'in', visitIds)
      .orderBy('position')
      .execute(),
    db
      .selectFrom('visitMeasurement')
      .selectAll()
      .where('visitId', 'in', visitIds)
      .orderBy('position')
      .execute(),
    db.selectFrom('visitFootfall').selectAll().where('visitId', 'in', visitIds).execute(),
  ]);
  const of = {
    lameness: Map.groupBy(lameness, visitOf),
    signs: Map.groupBy(signs, visitOf),
    overrides: Map.groupBy(overrides, visitOf),
    diet: Map.groupBy(diet, visitOf),
    measurements: Map.groupBy(measurements, visitOf),
    footfalls: Map.groupBy(footfalls, visitOf),
  };
  return (id) => ({
    lamenessWalk: grades(of.lameness.get(id) ?? [], 'walk'),
    lamenessTrot: grades(of.lameness.get(id) ?? [], 'trot'),
    signs: (of.signs.get(id) ?? []).map(({ sign }) => sign),
    overrides: (of.overrides.get(id) ?? []).map(({ code, reason }) => ({ code, reason })),
    diet: (of.diet.get(id) ?? []).map(dietItemFromRow),
    measurements: (of.measurements.get(id) ?? []).map(measurementFromRow),
    footfalls: (of.footfalls.get(id) ?? []).map(footfallFromRow),
  });
}

const visitOf = ({ visitId }: { visitId: string }): string => visitId;

function grades(rows: readonly LamenessRow[], gait: 'walk' | 'trot'): LimbGrades {
  const result: LimbGrades = { leftFore: null, rightFore: null, leftHind: null, rightHind: null };
  for (const row of rows) {
    if (row.gait === gait) result[row.limb as (typeof LIMBS)[number]] = row.grade;
  }
  return result;
}

function dietItemFromRow(row: DietItemRow): DietItem {
  const { proteinPct, fatPct, fibrePct, moisturePct, ashPct } = row;
  const label =
    proteinPct === null ||
    fatPct === null ||
    fibrePct === null ||
    moisturePct === null ||
    ashPct === null
      ? null
      : { proteinPct, fatPct, fibrePct, moisturePct, ashPct };
  return {
    name: row.name,
    treat: row.treat === 1,
    kcalPer100g: row.kcalPer100g,
    gramsPerDay: row.gramsPerDay,
    gramsPerCup: row.gramsPerCup,
    fixedGrams: row.fixedGrams === 1,
    energyFrom: row.energyFrom as DietItem['energyFrom'],
    label,
  };
}

function measurementFromRow(row: MeasurementRow): Measurement {
  const { visitId: _visit, position: _position, joint, movement, ...rest } = row;
  // The table's own CHECK keeps joint and movement together with the kind.
  return (rest.kind === 'joint angle' ? { ...rest, joint, movement } : rest) as Measurement;
}

function footfallFromRow(row: FootfallRow): Footfall {
  return {
    limb: row.limb as Footfall['limb'],
    touchDowns: JSON.parse(row.touchDowns) as number[],
    liftOffs: JSON.parse(row.liftOffs) as number[],
  };
}

/** Replaces all parts of a visit. Runs inside a transaction. */
export async function writeVisitParts(db: Db, visitId: string, parts: VisitParts): Promise<void> {
  for (const table of PART_TABLES) {
    await db.deleteFrom(table).where('visitId', '=', visitId).execute();
  }
  const rows = partRows(visitId, parts);
  for (const table of PART_TABLES) {
    if (rows[table].length > 0) await db.insertInto(table).values(rows[table]).execute();
  }
}

/** The rows of the parts of a visit, by table. */
export function partRows(visitId: string, parts: VisitParts) {
  return {
    visitLameness: [
      ...gradeRows(visitId, 'walk', parts.lamenessWalk),
      ...gradeRows(visitId, 'trot', parts.lamenessTrot),
    ],
    visitSign: parts.signs.map((sign, position) => ({ visitId, position, sign })),
    visitOverride: parts.overrides.map((entry, position) => ({ visitId, position, ...entry })),
    dietItem: parts.diet.map((item, position) => dietItemRow(visitId, position, item)),
    visitMeasurement: parts.measurements.map((entry, position) => ({
      joint: null,
      movement: null,
      ...entry,
      visitId,
      position,
    })),
    visitFootfall: parts.footfalls.map(({ limb, touchDowns, liftOffs }) => ({
      visitId,
      limb,
      touchDowns: JSON.stringify(touchDowns),
      liftOffs: JSON.stringify(liftOffs),
    })),
  };
}

function gradeRows(visitId: string, gait: 'walk' | 'trot', limbs: LimbGrades): LamenessRow[] {
  return LIMBS.flatMap((limb) => {
    const grade = limbs[limb];
    return grade === null ? [] : [{ visitId, gait, limb, grade }];
  });
}

const NO_LABEL = {
  proteinPct: null,
  fatPct: null,
  fibrePct: null,
  moisturePct: null,
  ashPct: null,
} as const;

function dietItemRow(visitId: string, position: number, item: DietItem): DietItemRow {
  const { label, ...own } = item;
  return {
    ...own,
    ...(label ?? NO_LABEL),
    visitId,
    position,
    treat: bit(own.treat),
    fixedGrams: bit(own.fixedGrams),
  };
}
