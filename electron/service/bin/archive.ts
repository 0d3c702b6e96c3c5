import type { Dog } from '../../contract/records.ts';
import { dogFactsOf } from '../../contract/records/facts.ts';
import type { Context } from '../database/context.ts';
import { readDog } from '../dogs/dogs.ts';
import { keepHistory } from '../history/history.ts';

/** Puts a dog away that no longer comes, or takes it back. @throws Refusal (not-found). */
export async function archiveDog(context: Context, id: string, archived: boolean): Promise<Dog> {
  return context.db.transaction().execute(async (db) => {
    const dog = await readDog(db, id);
    if ((dog.archivedAt !== null) === archived) return dog;
    await keepHistory(context, db, {
      kind: 'dog',
      recordId: id,
      of: { dogId: id },
      action: archived ? 'archived' : 'unarchived',
      revision: dog.revision,
      reason: '',
      before: dogFactsOf(dog),
    });
    const archivedAt = archived ? context.instant() : null;
    await db.updateTable('dog').set({ archivedAt }).where('id', '=', id).execute();
    return { ...dog, archivedAt };
  });
}
