import { z } from 'zod';
import type { DueLine } from '../due.ts';
import { id, line } from '../fields.ts';
import { clientInput, dogInput, type Client, type Dog } from '../records.ts';
import type { DogFile, DogLine } from '../results.ts';
import { call, nothing } from './call.ts';

export const dogCalls = {
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
} as const;
