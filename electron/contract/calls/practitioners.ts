import { z } from 'zod';
import { flag, id, requiredLine } from '../fields.ts';
import type { Stored } from '../records.ts';
import { call, nothing } from './call.ts';

const INITIALS = 'Initials must be 1 to 4 letters.';

export const practitionerInput = z.object({
  name: requiredLine('Name of the practitioner'),
  initials: z
    .string({ error: INITIALS })
    .trim()
    .regex(/^\p{L}{1,4}$/u, { error: INITIALS }),
  /** False for someone who no longer works here; their entries keep their initials. */
  active: flag('Works here'),
});
export type PractitionerInput = z.output<typeof practitionerInput>;

export type Practitioner = PractitionerInput & Stored;

/** Who works in the practice, and who is at the desk. */
export interface People {
  /** By name; those who no longer work here come last. */
  readonly practitioners: readonly Practitioner[];
  /** Id of who is at the desk; new entries carry their initials. */
  readonly atDesk: string | null;
}

export const practitionerCalls = {
  'practitioners/list': call<People>()(nothing),
  /** Initials are unique, and stay as they are once they stand on an entry. */
  'practitioners/save': call<People>()(
    z.strictObject({ id: id('The practitioner').nullable(), practitioner: practitionerInput }),
  ),
  /** Only someone who works here can be at the desk; null for nobody. */
  'practitioners/atDesk': call<People>()(
    z.strictObject({ practitionerId: id('The practitioner').nullable() }),
  ),
} as const;
