// The rows of a visit and of its parts, as Kysely sees them; see schema.ts.

/** Yes or no. */
export type Bit = 0 | 1;

export interface VisitRow {
  id: string;
  dogId: string;
  kind: string;
  day: string;
  weightKg: number | null;
  weighingMethod: string;
  scaleStepKg: number;
  bcs: number | null;
  muscle: string | null;
  gaitNote: string;
  surgery: string;
  airwayDisease: Bit;
  airwayClearance: Bit;
  radiographicClearance: Bit;
  conditioning: string;
  walkBase: string;
  activity: string;
  consentGiven: Bit;
  consentVet: string;
  consentDay: string | null;
  consentScope: string;
  consentExpiryDay: string | null;
  targetWeightKg: number | null;
  foodGoal: string;
  mealsPerDay: number;
  weightLossDiet: Bit;
  notes: string;
  createdAt: string;
  updatedAt: string;
  trotLamenessAssessed: Bit;
  revision: number;
  author: string;
  binnedAt: string | null;
}

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
