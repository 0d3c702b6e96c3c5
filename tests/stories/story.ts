import type {
  ClientInput,
  DogInput,
  FoodSwitch,
  PlanRequest,
  Practice,
  SessionInput,
  VisitFacts,
} from '../../electron/contract/records.ts';
import type { RampEdit } from '../../core/index.ts';

// A dog's history over months, as data. `play.ts` plays it through the real service; what every
// surface then says of the dog is held against where it stands.

/** The Monday that every story begins on; a step's `on` counts days from it. */
export const BEGINS = '2026-03-02';

/** What the owner told of the outings that are over and that nothing was told of yet. */
export type ToldOutings =
  | SessionInput['outcome']
  | { readonly all: SessionInput['outcome']; readonly last: Partial<SessionInput> };

export type Food =
  | 'accepted'
  | 'declined'
  | { readonly kcalPerDay: number; readonly note: string }
  | { readonly newFood: Pick<FoodSwitch, 'replaces' | 'name' | 'kcalPer100g' | 'days'> };

export type Step = { readonly on: number } & (
  | {
      /** What differs from a sound dog at an intake, or from what a follow-up begins with. */
      readonly visit: Partial<VisitFacts>;
      readonly told?: ToldOutings;
      readonly food?: Food;
      /** A new plan that begins so many days after the visit. */
      readonly plan?: Partial<PlanRequest> & { readonly inDays: number };
      /** The plan in force is reviewed, and what comes of it taken over. */
      readonly review?: 'accepted';
    }
  | { readonly weighed: number }
  | { readonly told: ToldOutings }
  /** The plan in force is changed by hand. */
  | {
      readonly edits: (day: (count: number) => string) => readonly RampEdit[];
      readonly why: string;
    }
  /** The last visit is put right. */
  | { readonly amended: Partial<VisitFacts>; readonly why: string }
  /** The owner's bundle is read into an empty practice; the story goes on there. */
  | { readonly restored: 'from a bundle' }
  /** Nothing happens; the story is looked at on this day. */
  | { readonly passes: true }
);

export interface Story {
  readonly name: string;
  readonly practice?: Partial<Practice>;
  readonly owner?: Partial<ClientInput>;
  readonly dog?: Partial<DogInput>;
  /** Another dog of the same owner, seen on the first day. */
  readonly secondDog?: Partial<VisitFacts>;
  /** In order of days. The dog is looked at on the day of the last one. */
  readonly steps: readonly Step[];
}
