import { z } from 'zod';
import type { CountedDog, PracticeYear } from '../../../core/index.ts';
import { flag, id, requiredLine, whole } from '../fields.ts';
import type { ValuesOf } from '../records/fieldKinds.ts';
import type { STORED } from '../records/stored.ts';
import { call, nothing } from './call.ts';

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

const INITIALS = 'Initials must be 1 to 4 letters.';

const practitionerInput = z.object({
  name: requiredLine('Name of the practitioner'),
  initials: z
    .string({ error: INITIALS })
    .trim()
    .regex(/^\p{L}{1,4}$/u, { error: INITIALS }),
  /** False for someone who no longer works here; their entries keep their initials. */
  active: flag('Works here'),
});
export type PractitionerInput = z.output<typeof practitionerInput>;

export type Practitioner = PractitionerInput & ValuesOf<typeof STORED>;

/** Who works in the practice, and who is at the desk. */
export interface People {
  /** By name; those who no longer work here come last. */
  readonly practitioners: readonly Practitioner[];
  /** Id of who is at the desk; new entries carry their initials. */
  readonly atDesk: string | null;
}

export const practiceCalls = {
  'practitioners/list': call<People>()(() => nothing),
  /** Initials are unique, and stay as they are once they stand on an entry. */
  'practitioners/save': call<People>()(() =>
    z.strictObject({ id: id('The practitioner').nullable(), practitioner: practitionerInput }),
  ),
  /** Only someone who works here can be at the desk; null for nobody. */
  'practitioners/atDesk': call<People>()(() =>
    z.strictObject({ practitionerId: id('The practitioner').nullable() }),
  ),
  /** A calendar year, or for null the month of today and the eleven before it. */
  'practice/year': call<YearAccount>()(() =>
    z.strictObject({ year: whole('calendarYear').nullable() }),
  ),
} as const;
