import type { Assessment, PresentState } from '../../core/index.ts';
import type { Shelf } from './food/shelf.ts';
import type { Trouble } from './errors.ts';
import type { Client, Dog, Practice, PracticeLogo, RuleChange } from './records.ts';
import type { FOOD_DECISIONS, PLANS } from './records/decided.ts';
import type { ValuesOf } from './records/fieldKinds.ts';
import type { KEPT } from './records/stored.ts';
import type { WeighingRecord } from './weighings/weighing.ts';

// What the calls answer with.

/** Which practice is open: the practitioner's own, the invented demonstration, or none yet. */
type OpenPractice = 'own' | 'demo' | null;

/** Why the own records cannot be opened. */
export interface RecordsTrouble {
  readonly kind: Trouble | null;
  /** A sentence for the practitioner. */
  readonly message: string;
}

/** Whether the own practice is locked by a passphrase. */
export interface LockState {
  readonly locked: boolean;
  readonly idleMinutes: number;
}

export interface AppStatus {
  readonly version: string;
  readonly open: OpenPractice;
  /** Set when the own records are there but cannot be opened; nothing is open then. */
  readonly trouble: RecordsTrouble | null;
  /** Why nothing can be saved, where the records could be opened for reading only; else null. */
  readonly limited: Trouble | null;
  /** Null where the open practice has no passphrase. While locked nothing below is told. */
  readonly lock: LockState | null;
  /** True when an own practice exists on this machine, open or not. */
  readonly ownExists: boolean;
  /** Today by the machine's clock and time zone, `YYYY-MM-DD`. */
  readonly today: string;
  /** Where the records lie, for display only; the front end never sends a path. */
  readonly folder: string;
  readonly practice: Practice | null;
  readonly logo: PracticeLogo | null;
  /** The rules the practice changed; every other one stands as published. */
  readonly rules: readonly RuleChange[];
  readonly shelf: Shelf;
}

/** A line of the list of dogs. */
export interface DogLine {
  readonly id: string;
  readonly name: string;
  readonly breed: string;
  readonly clientId: string;
  readonly clientName: string;
  readonly phone: string;
  readonly lastVisitDay: string | null;
  readonly lastWeightKg: number | null;
  readonly lastBcs: number | null;
  readonly archivedAt: string | null;
}

/** The beginning of a list of dogs. */
export interface FoundDogs {
  readonly dogs: readonly DogLine[];
  /** How many dogs the whole list holds. */
  readonly count: number;
  /** Notes, diagnosis and vet are read only where no name, breed, chip or number has the words. */
  readonly foundIn: 'names' | 'notes';
}

export type Visit = ValuesOf<typeof KEPT.visit>;
export type SessionRecord = ValuesOf<typeof KEPT.session>;

export type { PlanReview } from './records/decided.ts';

export type Plan = ValuesOf<typeof PLANS>;
export type FoodDecision = ValuesOf<typeof FOOD_DECISIONS>;

/** Everything the dog's page and the visit form need, in one answer. */
export interface DogFile {
  readonly dog: Dog;
  readonly client: Client;
  /** Oldest first. */
  readonly visits: readonly Visit[];
  /** Weighings between visits, oldest first. */
  readonly weighings: readonly WeighingRecord[];
  /** Oldest first; at most one is current. */
  readonly plans: readonly Plan[];
  /** Oldest first. */
  readonly foodDecisions: readonly FoodDecision[];
  /** Session results, oldest first. */
  readonly sessions: readonly SessionRecord[];
  /** What core makes of the record today; null before the first weighing. */
  readonly assessment: Assessment | null;
  /** Where the dog stands today: what every page and sheet says of it. Null as the assessment. */
  readonly state: PresentState<Plan, FoodDecision> | null;
  /** The day of the next weighing, before the first visit too; null before any weighing. */
  readonly weighDay: string | null;
}

export interface SavedVisit {
  readonly visit: Visit;
  readonly plan: Plan | null;
  readonly foodDecision: FoodDecision | null;
}

export interface Draft {
  readonly key: string;
  readonly json: string;
  readonly savedAt: string;
}

/** A draft of a record of a dog that is there. */
export interface DraftLine {
  readonly key: string;
  readonly savedAt: string;
  readonly dogId: string;
  readonly dogName: string;
  readonly clientName: string;
  /**
   * What was begun: a new visit, a saved one being amended, the dog's own form, changes to its plan
   * by hand, what is told of one session, or files chosen for a new visit.
   */
  readonly what: 'new visit' | 'visit' | 'dog' | 'plan' | 'session' | 'files';
  /** The visit being amended; null for the others. */
  readonly visitId: string | null;
  /** The day of the session; null for the others. */
  readonly day: string | null;
}

export interface RenderedHandout {
  readonly fileName: string;
  readonly mediaType: 'application/pdf';
  readonly base64: string;
  readonly pages: number;
  /** Why sheets that were asked for are not in it, a sentence each. */
  readonly leftOut: readonly string[];
}
