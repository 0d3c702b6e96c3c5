import type { Provenance } from '../figure.ts';
import { from } from '../origin.ts';
import type { IsoDay } from '../day.ts';

// What is told and found at a visit beside gait, weight and signs. Null: not known, not asked.

export const YES_NO = ['no', 'yes'] as const;
export type YesNo = (typeof YES_NO)[number];

export const LIMBS = ['leftFore', 'rightFore', 'leftHind', 'rightHind'] as const;
export type Limb = (typeof LIMBS)[number];

export const GAITS = ['walk', 'trot'] as const;

/** A vet saw this lameness and cleared the dog for work with it. */
export interface LamenessClearance {
  readonly vet: string;
  readonly day: IsoDay;
  readonly gait: (typeof GAITS)[number];
  readonly limb: Limb;
  /** The highest grade the vet cleared, 0–5. */
  readonly grade: number;
  /** What the dog was cleared for. */
  readonly scope: string;
}

export const INJURY_KINDS = ['injury', 'surgery'] as const;
export const SIDES = ['left', 'right', 'both', 'middle'] as const;

/** An injury or a surgery in the history. */
export interface Injury {
  readonly kind: (typeof INJURY_KINDS)[number];
  /** Such as the cranial cruciate ligament. */
  readonly structure: string;
  readonly side: (typeof SIDES)[number];
  /** Null where nobody knows: it counts as recent. */
  readonly day: IsoDay | null;
  /** What was done. */
  readonly done: string;
}

/** Known disease of what running loads. */
export interface Disease {
  readonly joints: YesNo | null;
  readonly spine: YesNo | null;
  readonly heart: YesNo | null;
  readonly words: string;
}

/** Heat illness at any time before. */
export interface HeatIllness {
  readonly had: YesNo | null;
  readonly day: IsoDay | null;
}

/** Where hands press for pain, from head to tail; limbs as a whole. */
export const PALPATION_REGIONS = [
  'neck',
  'back',
  'loin and pelvis',
  'left fore',
  'right fore',
  'left hind',
  'right hind',
] as const;
export type PalpationRegion = (typeof PALPATION_REGIONS)[number];

/** Pain on palpation, 0–4 by region; null where the region was not pressed. */
export type Palpation = Readonly<Record<PalpationRegion, number | null>>;

/** Pain on palpation in our own words, by grade (D). */
export const PALPATION_WORDS = [
  'no reaction',
  'turns or tenses, once',
  'turns or tenses each time',
  'pulls away or cries',
  'does not let itself be touched',
] as const;

/** How the dog gets up. */
export const RISES = ['even', 'leans left', 'leans right', 'cannot'] as const;
export type Rise = (typeof RISES)[number];

/** The total of a published owner questionnaire; its items stay with its publisher. */
export interface QuestionnaireTotal {
  readonly name: string;
  readonly day: IsoDay;
  readonly total: number;
}

/** A change of a total that owners notice, in points; falling is better in both (A, S). */
const LEAST_DIFFERENCE: Readonly<Record<string, number>> = { load: 4, coi: 14 };

export const LEAST_DIFFERENCE_PROVENANCE: Provenance = from('A', 'S', 'alvesInnes2023');

/**
 * The least change of a questionnaire's total that counts, by its usual short name; null for one
 * whose least difference is not known here.
 * @example leastDifference('LOAD') // => 4
 */
export const leastDifference = (name: string): number | null => {
  const short = name.trim().toLowerCase();
  return Object.hasOwn(LEAST_DIFFERENCE, short) ? LEAST_DIFFERENCE[short]! : null;
};

export const FOOD_KINDS = ['complete', 'home-made', 'raw', 'mixed'] as const;
export const APPETITES = ['normal', 'less than usual', 'more than usual'] as const;
export type Appetite = (typeof APPETITES)[number];
export const STOOLS = ['normal', 'soft', 'loose', 'hard'] as const;
export type Stool = (typeof STOOLS)[number];
