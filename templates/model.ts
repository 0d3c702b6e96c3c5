import type { MuscleCondition } from '../core/condition/bodyCondition.ts';
import type { IsoDay } from '../core/day.ts';
import type { LimbGrades } from '../core/readiness/types.ts';
import type { Exercise } from '../core/training.ts';
import type { PrintSettings } from './format.ts';

/** A practice's checked logo; `data` is base64 for PNG and JPEG, markup for SVG. */
export interface Logo {
  readonly mediaType: 'image/png' | 'image/jpeg' | 'image/svg+xml';
  readonly data: string;
}

/** Letterhead and print settings of the practice; any text may be empty. */
export interface PracticePrint extends PrintSettings {
  readonly name: string;
  readonly practitioner: string;
  readonly address: string;
  readonly phone: string;
  readonly email: string;
  readonly registration: string;
  readonly logo?: Logo | null;
  /** `#rrggbb`; darkened on paper where it would be too faint to read. */
  readonly accent?: string | null;
  /** A line of the practice's own at the foot of every page. */
  readonly footer?: string | null;
}

export interface DogFacts {
  readonly name: string;
  readonly breed: string;
  readonly sex: 'female' | 'male';
  readonly neuter: 'intact' | 'neutered' | 'unknown';
  readonly birthDay: IsoDay;
  readonly withersCm: number | null;
  /** Fifteen digits, or empty. */
  readonly chip: string;
}

interface OwnerFacts {
  readonly name: string;
  readonly phone: string;
  readonly email: string;
  readonly vetPractice: string;
  readonly vetName: string;
  readonly vetContact: string;
}

/** What every handout needs to know. */
export interface HandoutContext {
  readonly practice: PracticePrint;
  readonly dog: DogFacts;
  readonly owner: OwnerFacts;
  /** The day of the visit the sheet speaks of. */
  readonly day: IsoDay;
  /** The day it is printed, for the foot of the page. */
  readonly printedOn: IsoDay;
  /** True for the invented demonstration practice; every page says so. */
  readonly demo: boolean;
}

interface Consent {
  readonly given: boolean;
  readonly vet: string;
  readonly day: IsoDay | null;
  readonly scope: string;
  readonly expiryDay: IsoDay | null;
}

/** One thing that was told or noted at the visit, in one line. */
export interface ToldFact {
  readonly label: string;
  readonly text: string;
  /** How to read it. */
  readonly note?: string;
}

/** What was told and found beside gait, weight and signs; nothing where nothing was noted. */
export interface ToldFacts {
  readonly history: readonly ToldFact[];
  readonly found: readonly ToldFact[];
  readonly feeding: readonly ToldFact[];
  /** What was chosen for between the runs. */
  readonly exercises: readonly Exercise[];
  /** False where nobody asked for the signs, and none was told. */
  readonly signsAsked: boolean;
  /** False where nobody asked for surgery, injury, disease and medicine, and nothing was told. */
  readonly historyAsked: boolean;
}

/** What was found at the visit; `null` where it was not looked at. */
export interface Findings {
  readonly day: IsoDay;
  readonly weightKg: number | null;
  /** Null where it was weighed that day, or never. */
  readonly weighedOn: IsoDay | null;
  readonly bcs: number | null;
  readonly muscle: MuscleCondition | null;
  readonly lamenessWalk: LimbGrades;
  readonly lamenessTrot: LimbGrades;
  readonly gaitNote: string;
  readonly targetWeightKg: number | null;
  readonly consent: Consent;
}
