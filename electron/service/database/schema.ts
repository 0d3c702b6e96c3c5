import type { Generated, Kysely } from 'kysely';
import type { HistoryAction, HistoryKind } from '../../contract/calls/history.ts';
import type { Practitioner } from '../../contract/calls/practice.ts';
import type { Attachment, AttachmentType } from '../../contract/files/attachment.ts';
import type { OwnFood, OwnPhrase } from '../../contract/food/shelf.ts';
import type { Erasure } from '../../contract/keeping/bin.ts';
import type { Draft } from '../../contract/results.ts';
import type {
  DietItem,
  FoodLabel,
  Measurement,
  Practice,
  PracticeLogo,
  RuleChange,
} from '../../contract/records.ts';
import type { Bit, RowOf } from '../../contract/records/columns.ts';
import type { FOOD_DECISIONS, PLANS } from '../../contract/records/decided.ts';
import type { Footfall, LimbGrades, Override } from '../../contract/records/parts.ts';
import type { BINNED, KEPT } from '../../contract/records/stored.ts';

// The rows of the database as Kysely sees them (camelCase, see `CamelCasePlugin`). Yes/no is 0 or 1.

interface PracticeRow extends Omit<Practice, 'intakeSheets' | 'followUpSheets'> {
  id: 1;
  intakeSheets: string;
  followUpSheets: string;
  updatedAt: string;
}

type PracticeLogoRow = PracticeLogo & { id: 1 };

interface Found {
  searchText: string;
}

type ClientRow = RowOf<typeof KEPT.client & typeof BINNED> & Found;
type DogRow = RowOf<typeof KEPT.dog & typeof BINNED> & Found;
export type VisitRow = RowOf<typeof KEPT.visit & typeof BINNED>;
export type SessionResultRow = RowOf<typeof KEPT.session>;
export type WeighingRow = RowOf<typeof KEPT.weighing>;

/** A part of a visit; the entries of a list have their place in it. */
interface Part {
  visitId: string;
}
interface Entry extends Part {
  position: number;
}

export type LamenessRow = Part & { gait: string; limb: keyof LimbGrades; grade: number };
export type DietItemRow = Entry &
  Omit<DietItem, 'treat' | 'fixedGrams' | 'label'> & {
    treat: Bit;
    fixedGrams: Bit;
  } & { [K in keyof FoodLabel]: number | null };
export type MeasurementRow = Entry &
  Omit<Measurement, 'joint' | 'movement'> & { joint: string | null; movement: string | null };
export type FootfallRow = Part & Pick<Footfall, 'limb'> & { touchDowns: string; liftOffs: string };

type PlanRow = RowOf<typeof PLANS>;
type FoodDecisionRow = RowOf<typeof FOOD_DECISIONS>;

export type PractitionerRow = Omit<Practitioner, 'active'> & { active: Bit };

interface DeskSettingRow {
  id: 1;
  atDesk: string | null;
  retentionYears: number;
  dailyBackups: number;
  weeklyBackups: number;
}

interface AppLockRow {
  id: 1;
  salt: Buffer;
  verifier: Buffer;
  idleMinutes: number;
  updatedAt: string;
}

/** What a record was before it was changed, binned or removed. Belongs to a dog or to an owner. */
export interface HistoryRow {
  id: Generated<number>;
  kind: HistoryKind;
  recordId: string;
  clientId: string | null;
  dogId: string | null;
  action: HistoryAction;
  revision: number | null;
  author: string;
  reason: string;
  before: string;
  at: string;
}

export interface StoredFileRow {
  hash: string;
  mediaType: AttachmentType;
  bytes: number;
  createdAt: string;
}

export type AttachmentRow = Omit<Attachment, 'mediaType' | 'bytes' | 'thumbnail' | 'missing'> & {
  hash: string;
  thumbnail: Buffer | null;
  binnedAt: string | null;
};

type ErasureRow = Omit<Erasure, 'insideRetention'> & { insideRetention: Bit };

/** Tells an owner who was erased, should an import bring the records back; see erasure/record.ts. */
interface ErasedOwnerRow {
  mark: string;
  erasureId: string;
}

export interface Schema {
  practice: PracticeRow;
  practiceLogo: PracticeLogoRow;
  client: ClientRow;
  dog: DogRow;
  visit: VisitRow;
  visitLameness: LamenessRow;
  visitSign: Entry & { sign: string };
  visitOverride: Entry & Override;
  dietItem: DietItemRow;
  visitMeasurement: MeasurementRow;
  visitFootfall: FootfallRow;
  sessionResult: SessionResultRow;
  ruleChange: RuleChange;
  ownFood: OwnFood & { updatedAt: string };
  ownPhrase: OwnPhrase & { updatedAt: string };
  plan: PlanRow;
  foodDecision: FoodDecisionRow;
  draft: Draft;
  practitioner: PractitionerRow;
  deskSetting: DeskSettingRow;
  appLock: AppLockRow;
  history: HistoryRow;
  weighing: WeighingRow;
  storedFile: StoredFileRow;
  attachment: AttachmentRow;
  erasure: ErasureRow;
  erasedOwner: ErasedOwnerRow;
}

/** Typed queries on an open file, inside a transaction or not. */
export type Db = Kysely<Schema>;
