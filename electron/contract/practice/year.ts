import type { CountedDog, PracticeYear } from '../../../core/index.ts';

/** A dog of the year as it is listed. */
export interface YearDog extends CountedDog {
  readonly name: string;
  readonly clientName: string;
}

/** The practice's year as the records stand today. */
export interface YearAccount {
  readonly fromDay: string;
  readonly toDay: string;
  /** Calendar years that have visits, the latest first. */
  readonly years: readonly number[];
  /** Everybody who counts anywhere in it, by name. */
  readonly dogs: readonly YearDog[];
  readonly year: PracticeYear;
}
