import { Refusal } from '../../contract/errors.ts';
import { badField } from '../refuse.ts';
import type { Db } from '../database/schema.ts';

/** Letters, digits or signs: neither empty nor of invisible characters alone. */
const SHOWS_SOMETHING = /[^\p{Z}\p{C}\p{M}]/u;

/** @throws Refusal (input) where what was saved before is to be changed without a reason. */
export function assertReasonGiven(what: string, reason: string | undefined): void {
  if (SHOWS_SOMETHING.test(reason ?? '')) return;
  throw badField('reason', `Reason for the amendment is needed: ${what} was saved before.`);
}

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
  db: Db,
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
    .where('action', '<>', 'made')
    .orderBy('id', 'desc')
    .executeTakeFirst();
  const by = last === undefined || last.author === '' ? '' : ` by ${last.author}`;
  throw new Refusal({
    kind: 'conflict',
    message: `${what} was changed${by} after you opened it. Nothing of yours was saved, and nothing stored was changed.`,
  });
}
