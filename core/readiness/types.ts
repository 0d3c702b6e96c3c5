import type { IsoDay } from '../day.ts';
import type { Reason } from '../figure.ts';
import type { StartLevel } from '../ramp/types.ts';
import type { RuleChanges } from '../rules/all.ts';

export type Limb = 'leftFore' | 'rightFore' | 'leftHind' | 'rightHind';

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
  /** True once a vet has assessed a lameness at trot and cleared the dog for work. */
  readonly trotLamenessAssessed?: boolean;
  /** Ids from `RED_FLAGS`. Empty: none seen; left out: not asked, so walking only. */
  readonly signs?: readonly string[];
  readonly surgery?: 'none' | 'cleared in writing' | 'not cleared';
  readonly radiographicClearance?: boolean;
  readonly walkBase?: 'passed' | 'failed' | 'not tested';
  readonly conditioning?: StartLevel;
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
  /** The practitioner's written reason, where the rule was set aside. */
  readonly overriddenBecause: string | null;
}

export interface Screening {
  readonly outcome: ScreeningOutcome;
  /** All at once: emergencies, then vet first, walking only and notes. */
  readonly reasons: readonly ScreeningReason[];
  /** The level to start at; as after injury where lame, one lower for a senior. Null unless ready. */
  readonly recommendedStart: StartLevel | null;
  /** The first day old enough to run, where that lies ahead. */
  readonly oldEnoughOn: IsoDay | null;
}
