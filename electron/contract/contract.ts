import { z } from 'zod';
import type {
  Assessment,
  Breach,
  ChangeoverCalendar,
  Figure,
  FoodProposal,
  Ramp,
  Ration,
  Reason,
} from '../../core/index.ts';
import type { DueLine } from './due.ts';
import type { Answer } from './errors.ts';
import { choice, day, id, line, notes, requiredLine } from './fields.ts';
import { keptBreach, rampEdit } from './rampEdit.ts';
import {
  clientInput,
  dogInput,
  foodDecisionInput,
  HANDOUT_KINDS,
  LANGUAGES,
  planRequest,
  PAPERS,
  practiceInput,
  sessionInput,
  sheetList,
  visitFacts,
  type Client,
  type Dog,
  type FoodDecisionInput,
  type FoodSwitch,
  type PlanRequest,
  type Practice,
  type PracticeLogo,
  type RuleChange,
  type SessionInput,
  type Stored,
  type VisitFacts,
} from './records.ts';

/** Which practice is open: the practitioner's own, the invented demonstration, or none yet. */
export type OpenPractice = 'own' | 'demo' | null;

export interface AppStatus {
  readonly version: string;
  readonly open: OpenPractice;
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
}

export type Visit = VisitFacts & Stored;

export type SessionRecord = SessionInput & Stored & { readonly dogId: string };

export interface PlanReview {
  readonly decision: string;
  readonly reasons: readonly Reason[];
}

/** A ramp as it was made, kept with what was asked for. Earlier versions stay. */
export interface Plan {
  readonly id: string;
  readonly dogId: string;
  /** The visit it was made at; null when made between visits. */
  readonly visitId: string | null;
  readonly version: number;
  readonly madeOn: string;
  readonly current: boolean;
  /** How this version came about. */
  readonly origin: 'built' | 'reviewed' | 'edited';
  readonly request: PlanRequest;
  readonly ramp: Ramp;
  /** What the review said that led to this version. */
  readonly review: PlanReview | null;
  /** Rules the practitioner's edit breaks on purpose, each with the reason. */
  readonly keptBreaches: readonly Breach[];
  readonly note: string;
  readonly createdAt: string;
}

/** What the dog is to eat from a day on, and what was known when it was decided. */
export interface FoodDecision {
  readonly id: string;
  readonly dogId: string;
  readonly visitId: string;
  readonly decidedOn: string;
  readonly decision: FoodDecisionInput['decision'];
  readonly kcalPerDay: number;
  readonly ration: Ration | null;
  /** The food that changes, and how, day by day; null where none does. */
  readonly foodSwitch: FoodSwitch | null;
  readonly changeover: ChangeoverCalendar | null;
  readonly proposal: FoodProposal;
  /** What was known when it was decided. */
  readonly known: {
    readonly weightKg: number;
    readonly targetWeightKg: number;
    readonly intakeKcal: number;
    /** Planned running that the ration holds, kcal/day. */
    readonly runningKcalPerDay: number;
    readonly maintenance: Figure;
    readonly own: Figure;
    readonly trend: Figure | null;
  };
  readonly note: string;
  readonly createdAt: string;
}

/** Everything the dog's page and the visit form need, in one answer. */
export interface DogFile {
  readonly dog: Dog;
  readonly client: Client;
  /** Oldest first. */
  readonly visits: readonly Visit[];
  /** Oldest first; at most one is current. */
  readonly plans: readonly Plan[];
  /** Oldest first. */
  readonly foodDecisions: readonly FoodDecision[];
  /** Session results, oldest first. */
  readonly sessions: readonly SessionRecord[];
  /** What core makes of the record today; null before the first weighing. */
  readonly assessment: Assessment | null;
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

export interface RenderedHandout {
  readonly fileName: string;
  readonly mediaType: 'application/pdf';
  readonly base64: string;
  readonly pages: number;
}

interface CallDefinition<In extends z.ZodType, Out> {
  readonly input: In;
  /** Carries the result's type only; never set. */
  readonly result?: Out;
}

const call =
  <Out>() =>
  <In extends z.ZodType>(input: In): CallDefinition<In, Out> => ({ input });

const nothing = z.strictObject({});
const draftKey = requiredLine('Key of the draft');

/**
 * The one list of what the front end may ask of the service. Both transports carry exactly these
 * calls; the service parses every input with the schema given here.
 */
export const contract = {
  'app/status': call<AppStatus>()(nothing),
  /** Opens the own practice (creating it) or a fresh copy of the demonstration practice. */
  'app/open': call<AppStatus>()(
    z.strictObject({ which: choice('Practice to open', ['own', 'demo']) }),
  ),
  'practice/save': call<Practice>()(practiceInput),
  /** Checks and keeps a PNG, JPEG or SVG logo; null removes it. */
  'practice/setLogo': call<PracticeLogo | null>()(
    z.strictObject({
      base64: z
        .base64({ error: 'The logo must be sent as base64.' })
        .max(1_000_000, { error: 'The logo file is too large.' })
        .nullable(),
    }),
  ),
  'clients/list': call<readonly Client[]>()(z.strictObject({ query: line('Search text') })),
  'clients/save': call<Client>()(
    z.strictObject({ id: id('The owner').nullable(), client: clientInput }),
  ),
  'dogs/list': call<readonly DogLine[]>()(z.strictObject({ query: line('Search text') })),
  /** Who should be weighed or reviewed, most overdue first. */
  'dogs/due': call<readonly DueLine[]>()(nothing),
  'dogs/save': call<Dog>()(z.strictObject({ id: id('The dog').nullable(), dog: dogInput })),
  /** A new dog of a new owner, in one step: both are kept or neither. */
  'dogs/saveWithOwner': call<Dog>()(
    z.strictObject({ client: clientInput, dog: dogInput.omit({ clientId: true }) }),
  ),
  'dogs/file': call<DogFile>()(z.strictObject({ dogId: id('The dog') })),
  /** Saves a visit with the plan and the food decision made at it: all or none. */
  'visits/save': call<SavedVisit>()(
    z.strictObject({
      id: id('The visit').nullable(),
      visit: visitFacts,
      plan: planRequest.nullable(),
      food: foodDecisionInput.nullable(),
    }),
  ),
  /** Keeps the result of one session; a second one for the same day replaces the first. */
  'sessions/save': call<SessionRecord>()(
    z.strictObject({ dogId: id('The dog'), session: sessionInput }),
  ),
  'sessions/drop': call<null>()(
    z.strictObject({ dogId: id('The dog'), day: day('Day of the session') }),
  ),
  /** Has core review the plan in force by the record of today, and keeps the new version. */
  'plans/review': call<Plan>()(
    z.strictObject({
      dogId: id('The dog'),
      visitId: id('The visit').nullable(),
      clearedByVetOn: day('Day the vet cleared the dog').nullable(),
      note: notes('Note on the review'),
    }),
  ),
  /** Keeps a plan changed by hand; every broken rule needs a written reason. */
  'plans/edit': call<Plan>()(
    z.strictObject({
      dogId: id('The dog'),
      edits: z.array(rampEdit).min(1, { error: 'Nothing was changed.' }).max(200),
      kept: z.array(keptBreach).max(200),
      note: notes('Note on the change'),
    }),
  ),
  /** Changes a rule inside its range; a null value goes back to the value as published. */
  'rules/set': call<readonly RuleChange[]>()(
    z.strictObject({
      ruleId: requiredLine('Rule'),
      value: z.number({ error: 'The value of the rule must be a number.' }).nullable(),
      reason: line('Reason for the change'),
    }),
  ),
  'drafts/get': call<Draft | null>()(z.strictObject({ key: draftKey })),
  'drafts/put': call<null>()(
    z.strictObject({
      key: draftKey,
      json: z
        .string({ error: 'The draft must be text.' })
        .max(500_000, { error: 'The draft may have at most 500000 characters.' }),
    }),
  ),
  'drafts/drop': call<null>()(z.strictObject({ key: draftKey })),
  'handouts/render': call<RenderedHandout>()(
    z.strictObject({
      kind: choice('Handout', HANDOUT_KINDS),
      dogId: id('The dog'),
      paper: choice('Paper size', PAPERS).nullable(),
      /** Language of the owner's sheets; the practice's own when left out. */
      language: choice('Language', LANGUAGES).optional(),
    }),
  ),
  /** Several sheets as one file, numbered through. */
  'handouts/bundle': call<RenderedHandout>()(
    z.strictObject({
      kinds: sheetList('Handout').min(1, { error: 'Choose at least one sheet.' }),
      dogId: id('The dog'),
      paper: choice('Paper size', PAPERS).nullable(),
      language: choice('Language', LANGUAGES).optional(),
    }),
  ),
} as const;

export type Contract = typeof contract;
export type CallName = keyof Contract;
export type InputOf<N extends CallName> = z.input<Contract[N]['input']>;
export type ParsedOf<N extends CallName> = z.output<Contract[N]['input']>;
export type ResultOf<N extends CallName> = Exclude<Contract[N]['result'], undefined>;

/** What both transports and the service itself offer. */
export interface Caller {
  call<N extends CallName>(name: N, input: InputOf<N>): Promise<Answer<ResultOf<N>>>;
}
