import type { Practice } from '../contract/records.ts';

// The rows of the database as Kysely sees them (camelCase, see `CamelCasePlugin`). Yes/no is 0 or 1.

type Bit = 0 | 1;

export interface PracticeRow extends Omit<Practice, 'intakeSheets' | 'followUpSheets'> {
  id: 1;
  intakeSheets: string;
  followUpSheets: string;
  updatedAt: string;
}

export interface PracticeLogoRow {
  id: 1;
  mediaType: string;
  data: string;
}

export interface ClientRow {
  id: string;
  name: string;
  phone: string;
  email: string;
  address: string;
  vetPractice: string;
  vetName: string;
  vetContact: string;
  notes: string;
  searchText: string;
  createdAt: string;
  updatedAt: string;
}

export interface DogRow {
  id: string;
  clientId: string;
  name: string;
  breed: string;
  sex: string;
  neuter: string;
  neuteredAtMonths: number | null;
  birthDay: string;
  adultWeightKg: number | null;
  withersCm: number | null;
  coat: string;
  shortNosed: Bit;
  sighthound: Bit;
  notes: string;
  searchText: string;
  createdAt: string;
  updatedAt: string;
}

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

export interface SessionResultRow {
  id: string;
  dogId: string;
  day: string;
  outcome: string;
  runMinutes: number | null;
  nextDay: string | null;
  signs: string;
  note: string;
  createdAt: string;
  updatedAt: string;
}

export interface RuleChangeRow {
  ruleId: string;
  value: number;
  reason: string;
  updatedAt: string;
}

export interface PlanRow {
  id: string;
  dogId: string;
  visitId: string | null;
  version: number;
  madeOn: string;
  current: Bit;
  origin: string;
  request: string;
  ramp: string;
  review: string | null;
  keptBreaches: string;
  note: string;
  createdAt: string;
}

export interface FoodDecisionRow {
  id: string;
  dogId: string;
  visitId: string;
  decidedOn: string;
  decision: string;
  kcalPerDay: number;
  ration: string | null;
  foodSwitch: string | null;
  changeover: string | null;
  proposal: string;
  known: string;
  note: string;
  createdAt: string;
}

export interface DraftRow {
  key: string;
  json: string;
  savedAt: string;
}

export interface Schema {
  practice: PracticeRow;
  practiceLogo: PracticeLogoRow;
  client: ClientRow;
  dog: DogRow;
  visit: VisitRow;
  visitLameness: LamenessRow;
  visitSign: SignRow;
  visitOverride: OverrideRow;
  dietItem: DietItemRow;
  visitMeasurement: MeasurementRow;
  visitFootfall: FootfallRow;
  sessionResult: SessionResultRow;
  ruleChange: RuleChangeRow;
  plan: PlanRow;
  foodDecision: FoodDecisionRow;
  draft: DraftRow;
}
