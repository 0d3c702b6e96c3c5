import type { MuscleCondition } from '../condition/bodyCondition.ts';
import type { IsoDay } from '../day.ts';
import type { Reason } from '../figure.ts';
import type { StartLevel } from '../ramp/types.ts';
import type { RuleChanges } from '../rules/all.ts';
import type { Disease, HeatIllness, Injury, LamenessClearance, Limb } from './record.ts';

export { LIMBS, type Limb } from './record.ts';

export const SURGERY_STATES = ['none', 'cleared in writing', 'not cleared'] as const;
export type SurgeryState = (typeof SURGERY_STATES)[number];

export const WALK_BASES = ['passed', 'failed', 'not tested'] as const;
export type WalkBase = (typeof WALK_BASES)[number];

/** Lameness grade 0–5 per limb; null where the limb was not looked at. */
export type LimbGrades = Readonly<Record<Limb, number | null>>;

export interface ScreeningInput {
  /** Day of the screening. */
  readonly day?: IsoDay;
  readonly birthDay?: IsoDay;
  /** Used instead of day and birthDay where given. */
  readonly ageMonths?: number;
  readonly weightKg?: number;
  readonly adultWeightKg?: number;
  readonly bcs?: number;
  /** Age at neutering; under 12 months counts as early. */
  readonly neuteredAtMonths?: number;
  readonly shortNosed?: boolean;
  readonly airwayDisease?: boolean;
  /** The vet's written clearance to run for a short nose or airway disease. */
  readonly airwayClearance?: boolean;
  readonly lameness?: { readonly walk?: Partial<LimbGrades>; readonly trot?: Partial<LimbGrades> };
  /** Lameness that vets saw and cleared the dog for work with. */
  readonly lamenessClearances?: readonly LamenessClearance[];
  /** Ids from `RED_FLAGS`. Empty: none seen; left out: not asked, so walking only. */
  readonly signs?: readonly string[];
  readonly surgery?: SurgeryState;
  readonly injuries?: readonly Injury[];
  /** False: nobody asked for surgery, injury, disease, medicine and heat illness. */
  readonly historyAsked?: boolean;
  /** The latest girths of both thighs, cm. */
  readonly thighGirthCm?: { readonly leftHind: number; readonly rightHind: number };
  readonly disease?: Partial<Disease>;
  readonly heatIllness?: Partial<HeatIllness>;
  readonly medicine?: string;
  readonly muscle?: MuscleCondition;
  readonly radiographicClearance?: boolean;
  readonly walkBase?: WalkBase;
  readonly conditioning?: StartLevel;
  /** What the plan builds up to, minutes without a break; left out without a plan. */
  readonly goalMinutes?: number;
  /** The vet's written yes to runs over `goalLongMinutes`. */
  readonly longRunClearance?: boolean;
  readonly consent?: {
    readonly given: boolean;
    readonly vet?: string;
    readonly day?: IsoDay | null;
    readonly scope?: string;
    readonly expiryDay?: IsoDay | null;
  };
  /** Rules the practitioner sets aside, each with a written reason. */
  readonly overrides?: readonly { readonly code: string; readonly reason: string }[];
  /** The rules the practice changed. */
  readonly rules?: RuleChanges;
}

export type ScreeningOutcome = 'ready to start' | 'walking only' | 'vet first';

/** What a reason asks for; `note` changes no outcome. */
export type Gate = 'vet first' | 'walking only' | 'note';

export interface ScreeningReason extends Reason {
  readonly gate: Gate;
  /** Not looked at or asked yet: it asks for an answer, and says nothing of the dog. */
  readonly unseen: boolean;
  /** The practitioner's written reason, where the rule was set aside. */
  readonly overriddenBecause: string | null;
}

export interface Screening {
  readonly outcome: ScreeningOutcome;
  /**
   * What stops a plan in force: the outcome of what was found alone. What was not looked at or asked
   * yet keeps a new dog walking, but is no finding; lameness no worse than a vet cleared keeps a dog
   * from starting, but a plan goes on.
   */
  readonly found: ScreeningOutcome;
  /** All at once: emergencies, then vet first, walking only and notes. */
  readonly reasons: readonly ScreeningReason[];
  /** The level to start at; as after injury where lame, one lower for a senior. Null unless ready. */
  readonly recommendedStart: StartLevel | null;
  /** The first day old enough to run, where that lies ahead. */
  readonly oldEnoughOn: IsoDay | null;
}
