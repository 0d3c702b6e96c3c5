import type { Db } from '../database/schema.ts';
import { seenDogs } from '../database/rows.ts';
import { searchText } from '../dogs/searchText.ts';
import type { Read } from './cells.ts';

/** What an import needs to know of a dog. */
export interface KnownDog {
  readonly id: string;
  readonly name: string;
  readonly birthDay: string;
  readonly ownerName: string;
}

/**
 * Finds dogs by what a table calls them: every dog that is not in the bin; archived ones too, whose old weights may still come in.
 */
export async function dogFinder(db: Db) {
  const dogs = await seenDogs(db)
    .select(['dog.id', 'dog.name', 'dog.birthDay', 'client.name as ownerName'])
    .execute();
  const ids = new Map(dogs.map((dog) => [dog.id, dog]));
  const names = new Map<string, KnownDog[]>();
  for (const dog of dogs) {
    const key = searchText(dog.name);
    names.set(key, [...(names.get(key) ?? []), dog]);
  }
  return {
    byId: (id: string): KnownDog | null => ids.get(id) ?? null,
    /** `owner` is empty where the table does not say; case, accents and spaces do not count. */
    byName(name: string, owner: string): Read<KnownDog> {
      if (name === '') return { value: null, problem: 'The dog is missing.' };
      const own = ids.get(name.toLowerCase());
      if (own !== undefined) return { value: own, problem: null };
      const called = names.get(searchText(name)) ?? [];
      const found =
        owner === ''
          ? called
          : called.filter(({ ownerName }) => searchText(ownerName) === searchText(owner));
      if (found.length === 1) return { value: found[0]!, problem: null };
      return { value: null, problem: whyNone(name, owner, found.length) };
    },
  };
}
export type DogFinder = Awaited<ReturnType<typeof dogFinder>>;

function whyNone(name: string, owner: string, found: number): string {
  const shown = name.length > 60 ? `${name.slice(0, 60)}…` : name;
  const with_ = owner === '' ? '' : ' of this owner';
  if (found === 0) return `No dog named “${shown}”${with_} is in the records.`;
  const how = owner === '' ? ' Choose the column of the owner, or one dog for all rows.' : '';
  return `${found} dogs are named “${shown}”${with_}.${how}`;
}
