import type { Kysely } from 'kysely';
import { Refusal } from '../contract/errors.ts';
import { badField } from './refuse.ts';
import type { Schema } from './schema.ts';

interface Counted {
  readonly id: string;
  readonly revision: number;
}

/**
 * Lets a save through only on the latest state of its record: `basedOn` is the revision that was
 * read. Called inside the transaction of the save.
 * @throws Refusal (input) without a revision, (conflict) when the record has changed since.
 */
export async function assertLatest(
  db: Kysely<Schema>,
  what: string,
  stored: Counted,
  basedOn: number | null | undefined,
  path = 'basedOn',
): Promise<void> {
  if (basedOn === null || basedOn === undefined) {
    throw badField(
      path,
      `${what} is there already: the save must name the revision it was read at.`,
    );
  }
  if (basedOn === stored.revision) return;
  const last = await db
    .selectFrom('history')
    .select('author')
    .where('recordId', '=', stored.id)
    .orderBy('id', 'desc')
    .executeTakeFirst();
  const by = last === undefined || last.author === '' ? '' : ` by ${last.author}`;
  throw new Refusal({
    kind: 'conflict',
    message: `${what} was changed${by} after you opened it. Nothing of yours was saved, and nothing stored was changed.`,
  });
}
