import { sql } from 'kysely';
import { LIMBS } from '../../../core/readiness/types.ts';
import type {
  DietItem,
  FoodLabel,
  Footfall,
  LimbGrades,
  Measurement,
} from '../../contract/records.ts';
import { bit } from '../../contract/records/columns.ts';
import type { TablesOf } from '../../contract/records/fieldKinds.ts';
import type { VISIT } from '../../contract/records/visit.ts';
import type {
  Db,
  DietItemRow,
  FootfallRow,
  LamenessRow,
  MeasurementRow,
  Schema,
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

type PartTable = (typeof PART_TABLES)[number];

/** What is timed and graded limb by limb is stored without an order. */
const UNORDERED: ReadonlySet<PartTable> = new Set(['visitLameness', 'visitFootfall']);

/** The rows of one table of parts, those of each visit in their order. */
async function readTable<T extends PartTable>(db: Db, table: T, visitIds: readonly string[]) {
  const order = UNORDERED.has(table) ? sql`` : sql`order by position`;
  const { rows } = await sql<Schema[T]>`select * from ${sql.table(table)}
    where visit_id in (${sql.join(visitIds)}) ${order}`.execute(db);
  const byVisit = Map.groupBy(rows, ({ visitId }) => visitId);
  return (visitId: string): readonly Schema[T][] => byVisit.get(visitId) ?? [];
}

/** Reads the parts of many visits at once; returns a look-up by visit. */
export async function readVisitParts(
  db: Db,
  visitIds: readonly string[],
): Promise<(visitId: string) => VisitParts> {
  const read = <T extends PartTable>(table: T) => readTable(db, table, visitIds);
  const [lameness, signs, overrides, diet, measurements, footfalls] = await Promise.all([
    read('visitLameness'),
    read('visitSign'),
    read('visitOverride'),
    read('dietItem'),
    read('visitMeasurement'),
    read('visitFootfall'),
  ]);
  return (id) => ({
    lamenessWalk: grades(lameness(id), 'walk'),
    lamenessTrot: grades(lameness(id), 'trot'),
    signs: signs(id).map(({ sign }) => sign),
    overrides: overrides(id).map(({ code, reason }) => ({ code, reason })),
    diet: diet(id).map(dietItemFromRow),
    measurements: measurements(id).map(measurementFromRow),
    footfalls: footfalls(id).map(footfallFromRow),
  });
}

function grades(rows: readonly LamenessRow[], gait: 'walk' | 'trot'): LimbGrades {
  const result: LimbGrades = { leftFore: null, rightFore: null, leftHind: null, rightHind: null };
  for (const row of rows) {
    if (row.gait === gait) result[row.limb] = row.grade;
  }
  return result;
}

function dietItemFromRow(row: DietItemRow): DietItem {
  const { visitId: _visit, position: _position, treat, fixedGrams, ...rest } = row;
  const { proteinPct, fatPct, fibrePct, moisturePct, ashPct, ...item } = rest;
  const label = { proteinPct, fatPct, fibrePct, moisturePct, ashPct };
  return {
    ...item,
    treat: treat === 1,
    fixedGrams: fixedGrams === 1,
    label: Object.values(label).includes(null) ? null : (label as FoodLabel),
  };
}

function measurementFromRow(row: MeasurementRow): Measurement {
  const { visitId: _visit, position: _position, joint, movement, ...rest } = row;
  // The table's own CHECK keeps joint and movement together with the kind.
  return (rest.kind === 'joint angle' ? { ...rest, joint, movement } : rest) as Measurement;
}

function footfallFromRow(row: FootfallRow): Footfall {
  return {
    limb: row.limb,
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
