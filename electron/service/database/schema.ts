import type { Generated, Kysely } from 'kysely';
import type { OwnFood, OwnPhrase } from '../../contract/food/shelf.ts';
import type { Practice } from '../../contract/records.ts';
import type { Bit, RowOf } from '../../contract/records/columns.ts';
import type { CLIENT } from '../../contract/records/client.ts';
import type { FOOD_DECISIONS, PLANS } from '../../contract/records/decided.ts';
import type { DOG } from '../../contract/records/dog.ts';
import type { SESSION } from '../../contract/records/session.ts';
import type {
  ARCHIVED,
  AUTHORED,
  BINNED,
  OF_DOG,
  REVISED,
  STORED,
} from '../../contract/records/stored.ts';
import type { ORIGIN, WEIGHING } from '../../contract/records/weighing.ts';
import type {
  DietItemRow,
  FootfallRow,
  LamenessRow,
  MeasurementRow,
  OverrideRow,
  SignRow,
  VisitRow,
} from '../visits/schema.ts';

export type * from '../visits/schema.ts';

// The rows of the database as Kysely sees them (camelCase, see `CamelCasePlugin`). Yes/no is 0 or 1.

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

interface Found {
  searchText: string;
}

export type ClientRow = RowOf<typeof CLIENT & typeof REVISED & typeof BINNED> & Found;

export type DogRow = RowOf<typeof DOG & typeof REVISED & typeof ARCHIVED & typeof BINNED> & Found;

export type SessionResultRow = RowOf<
  typeof SESSION & typeof STORED & typeof OF_DOG & typeof AUTHORED
>;

export interface RuleChangeRow {
  ruleId: string;
  value: number;
  reason: string;
  updatedAt: string;
}

export type OwnFoodRow = OwnFood & { updatedAt: string };
export type OwnPhraseRow = OwnPhrase & { updatedAt: string };

export type PlanRow = RowOf<typeof PLANS>;
export type FoodDecisionRow = RowOf<typeof FOOD_DECISIONS>;

export interface PractitionerRow {
  id: string;
  name: string;
  initials: string;
  active: Bit;
  createdAt: string;
  updatedAt: string;
}

export interface DeskSettingRow {
  id: 1;
  atDesk: string | null;
  retentionYears: number;
  dailyBackups: number;
  weeklyBackups: number;
}

export interface AppLockRow {
  id: 1;
  salt: Buffer;
  verifier: Buffer;
  idleMinutes: number;
  updatedAt: string;
}

/** What a record was before it was changed, binned or removed. Belongs to a dog or to an owner. */
export interface HistoryRow {
  id: Generated<number>;
  kind: string;
  recordId: string;
  clientId: string | null;
  dogId: string | null;
  action: string;
  revision: number | null;
  author: string;
  reason: string;
  before: string;
  at: string;
}

export type WeighingRow = RowOf<
  typeof WEIGHING & typeof REVISED & typeof OF_DOG & typeof AUTHORED & typeof ORIGIN
>;

export interface StoredFileRow {
  hash: string;
  mediaType: string;
  bytes: number;
  createdAt: string;
}

export interface AttachmentRow {
  id: string;
  visitId: string;
  hash: string;
  kind: string;
  name: string;
  thumbnail: Buffer | null;
  author: string;
  createdAt: string;
  binnedAt: string | null;
}

export interface ErasureRow {
  id: string;
  erasedAt: string;
  ground: string;
  insideRetention: Bit;
  dogs: number;
  visits: number;
  files: number;
}

/** Tells an owner who was erased, should an import bring the records back; see erasure/marks.ts. */
export interface ErasedOwnerRow {
  mark: string;
  erasureId: string;
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
  ownFood: OwnFoodRow;
  ownPhrase: OwnPhraseRow;
  plan: PlanRow;
  foodDecision: FoodDecisionRow;
  draft: DraftRow;
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
