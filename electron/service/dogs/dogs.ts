import type { Dog } from '../../contract/records.ts';
import { readClient } from './clients.ts';
import type { Context, Handlers } from '../database/context.ts';
import { seenDogs } from '../database/rows.ts';
import { badField, notFound } from '../refuse.ts';
import type { Db } from '../database/schema.ts';
import { amendRecord, insertRecord, recordFrom } from './records.ts';

/** Reads one dog. @throws Refusal (not-found); also while its owner lies in the bin. */
export async function readDog(db: Db, id: string): Promise<Dog> {
  const row = await seenDogs(db)
    .selectAll('dog')
    .where('dog.id', '=', id)
    .executeTakeFirstOrThrow(() => notFound('The dog'));
  return recordFrom('dog', row);
}

function assertBornBy(context: Context, birthDay: string): void {
  if (birthDay <= context.today()) return;
  throw badField('dog.birthDay', 'Day of birth must not lie in the future.');
}

type DogCall = 'dogs/save' | 'dogs/saveWithOwner' | 'dogs/amendWithOwner';

export const dogHandlers: Handlers<DogCall> = {
  'dogs/save': async (context, { id, basedOn, reason, dog }) => {
    assertBornBy(context, dog.birthDay);
    await readClient(context.db, dog.clientId);
    if (id === null) return insertRecord(context, context.db, 'dog', dog);
    return context.db.transaction().execute(async (db) => {
      const sent = { facts: dog, basedOn, reason };
      return amendRecord(context, db, 'dog', await readDog(db, id), sent);
    });
  },
  'dogs/amendWithOwner': async (
    context,
    { id, reason, dog, dogBasedOn, client, clientBasedOn },
  ) => {
    assertBornBy(context, dog.birthDay);
    return context.db.transaction().execute(async (db) => {
      const stored = await readDog(db, id);
      const { clientId } = stored;
      const owner = { facts: client, basedOn: clientBasedOn, reason, path: 'clientBasedOn' };
      await amendRecord(context, db, 'client', await readClient(db, clientId), owner);
      const facts = { ...dog, clientId };
      const sent = { facts, basedOn: dogBasedOn, reason, path: 'dogBasedOn' };
      return amendRecord(context, db, 'dog', stored, sent);
    });
  },
  'dogs/saveWithOwner': async (context, { client, dog }) => {
    assertBornBy(context, dog.birthDay);
    return context.db.transaction().execute(async (transaction) => {
      const owner = await insertRecord(context, transaction, 'client', client);
      return insertRecord(context, transaction, 'dog', { ...dog, clientId: owner.id });
    });
  },
};
