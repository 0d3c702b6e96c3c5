import { z } from 'zod';
import type { DueLine } from '../dogs/due.ts';
import { DOG_FILTERS, DOG_ORDERS, type OffCourseLine, type OwnersDog } from '../dogs/list.ts';
import { choice, flag, id, line, whole } from '../fields.ts';
import { clientInput, dogInput, type Client, type Dog } from '../records.ts';
import type { DogFile, DogLine, FoundDogs } from '../results.ts';
import { amending, call, nothing } from './call.ts';

const listing = {
  query: line('Search text'),
  /** Only dogs that all of these hold for. */
  filters: z
    .array(choice('Filter', DOG_FILTERS))
    .max(DOG_FILTERS.length, { error: `At most ${DOG_FILTERS.length} filters can be set.` })
    .optional(),
  order: choice('Order of the list', DOG_ORDERS).optional(),
  descending: flag('Order turned round').optional(),
};

export const dogCalls = {
  'clients/list': call<readonly Client[]>()(() => z.strictObject({ query: line('Search text') })),
  'clients/save': call<Client>()(() =>
    z.strictObject({ id: id('The owner').nullable(), ...amending, client: clientInput() }),
  ),
  /** At most `MOST_LISTED` dogs from `offset` on, latest seen first unless ordered otherwise. */
  'dogs/list': call<readonly DogLine[]>()(() =>
    z.strictObject({ ...listing, offset: whole('listOffset').optional() }),
  ),
  /** The list from its beginning, and how many dogs it would hold in all. */
  'dogs/find': call<FoundDogs>()(() => z.strictObject(listing)),
  /** All dogs of an owner, archived ones too, by name. */
  'dogs/ofOwner': call<readonly OwnersDog[]>()(() => z.strictObject({ clientId: id('The owner') })),
  /** Dogs whose weight has left its corridor or drifts, the longest since weighed last. */
  'dogs/offCourse': call<readonly OffCourseLine[]>()(() => nothing),
  /** Who should be weighed or reviewed, most overdue first. */
  'dogs/due': call<readonly DueLine[]>()(() => nothing),
  'dogs/save': call<Dog>()(() =>
    z.strictObject({ id: id('The dog').nullable(), ...amending, dog: dogInput() }),
  ),
  /** A new dog of a new owner, in one step: both are kept or neither. */
  'dogs/saveWithOwner': call<Dog>()(() =>
    z.strictObject({ client: clientInput(), dog: dogInput().omit({ clientId: true }) }),
  ),
  /** A dog and its owner put right in one step; each counts its own changes. */
  'dogs/amendWithOwner': call<Dog>()(() =>
    z.strictObject({
      id: id('The dog'),
      reason: amending.reason,
      dog: dogInput().omit({ clientId: true }),
      dogBasedOn: whole('revision'),
      client: clientInput(),
      clientBasedOn: whole('revision'),
    }),
  ),
  'dogs/file': call<DogFile>()(() => z.strictObject({ dogId: id('The dog') })),
} as const;
