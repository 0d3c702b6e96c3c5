import type {
  Breach,
  ChangeoverCalendar,
  Figure,
  FoodProposal,
  Ramp,
  Ration,
  Reason,
} from '../../../core/index.ts';
import type { FoodSwitch } from '../food/records.ts';
import { made, type Fields } from './fieldKinds.ts';
import type { PlanRequest } from './planRequest.ts';
import { QUANTITIES } from './quantities.ts';
import { AUTHORED, OF_DOG, REVISED, STORED } from './stored.ts';

// What was decided, kept with what core made of it at the time: no form asks for it field by field,
// and it never changes.

export interface PlanReview {
  readonly decision: string;
  readonly reasons: readonly Reason[];
}

/** A ramp as it was made, kept with what was asked for. Earlier versions stay. */
export const PLANS = {
  id: STORED.id,
  ...OF_DOG,
  /** The visit it was made at; null when made between visits. */
  visitId: { kind: 'id', label: 'The visit', nullable: true, since: 1 },
  version: { ...REVISED.revision, since: 1 },
  madeOn: { kind: 'day', label: 'Day of the plan', since: 1 },
  /** At most one of a dog's. */
  current: { kind: 'flag', label: 'Plan in force', since: 1 },
  /** How this version came about. */
  origin: {
    kind: 'word',
    label: 'Origin of the plan',
    words: ['built', 'reviewed', 'edited'],
    since: 1,
  },
  request: made<PlanRequest>('What was asked of the plan'),
  ramp: made<Ramp>('Weeks and sessions'),
  /** What the review said that led to this version. */
  review: made<PlanReview | null>('Review', true),
  /** Rules the practitioner's edit breaks on purpose, each with the reason. */
  keptBreaches: made<readonly Breach[]>('Rules broken on purpose'),
  note: { kind: 'text', label: 'Note', as: 'notes', since: 1 },
  ...AUTHORED,
  createdAt: STORED.createdAt,
} as const satisfies Fields;

/** What the dog is to eat from a day on, and what was known when it was decided. */
export const FOOD_DECISIONS = {
  id: STORED.id,
  ...OF_DOG,
  visitId: { kind: 'id', label: 'The visit', since: 1 },
  decidedOn: { kind: 'day', label: 'Day of the decision', since: 1 },
  decision: {
    kind: 'word',
    label: 'Decision',
    words: ['accepted', 'edited', 'declined'],
    since: 1,
  },
  kcalPerDay: { kind: 'number', ...QUANTITIES.kcalPerDay, since: 1 },
  ration: made<Ration | null>('Ration', true),
  /** The food that changes, and how, day by day; null where none does. */
  foodSwitch: made<FoodSwitch | null>('Change of food', true),
  changeover: made<ChangeoverCalendar | null>('Changeover', true),
  proposal: made<FoodProposal>('Proposal'),
  known: made<KnownAtDecision>('What was known'),
  note: { kind: 'text', label: 'Note', as: 'notes', since: 1 },
  ...AUTHORED,
  createdAt: STORED.createdAt,
} as const satisfies Fields;

/** What was known when the food was decided. */
interface KnownAtDecision {
  readonly weightKg: number;
  readonly targetWeightKg: number;
  readonly intakeKcal: number;
  /** Planned running that the ration holds, kcal/day. */
  readonly runningKcalPerDay: number;
  readonly maintenance: Figure;
  readonly own: Figure;
  readonly trend: Figure | null;
}
