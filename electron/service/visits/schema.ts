import type { Bit, RowOf } from '../../contract/records/columns.ts';
import type { AUTHORED, BINNED, REVISED } from '../../contract/records/stored.ts';
import type { VISIT } from '../../contract/records/visit.ts';

// The rows of a visit and of its parts, as Kysely sees them; see schema.ts.

export type VisitRow = RowOf<typeof VISIT & typeof REVISED & typeof AUTHORED & typeof BINNED>;

export interface LamenessRow {
  visitId: string;
  gait: string;
  limb: string;
  grade: number;
}

export interface SignRow {
  visitId: string;
  position: number;
  sign: string;
}

export interface OverrideRow {
  visitId: string;
  position: number;
  code: string;
  reason: string;
}

export interface DietItemRow {
  visitId: string;
  position: number;
  name: string;
  treat: Bit;
  kcalPer100g: number;
  gramsPerDay: number;
  gramsPerCup: number | null;
  fixedGrams: Bit;
  energyFrom: string;
  proteinPct: number | null;
  fatPct: number | null;
  fibrePct: number | null;
  moisturePct: number | null;
  ashPct: number | null;
}

export interface MeasurementRow {
  visitId: string;
  position: number;
  kind: string;
  limb: string;
  joint: string | null;
  movement: string | null;
  value: number;
  note: string;
}

export interface FootfallRow {
  visitId: string;
  limb: string;
  touchDowns: string;
  liftOffs: string;
}
