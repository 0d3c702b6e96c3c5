import type { HistoryAction, HistoryKind } from '../../contract/calls/history.ts';
import { authorNow } from '../practice/practitioners.ts';
import type { Context } from '../database/context.ts';
import type { Db } from '../database/schema.ts';

/** What is done to a record, and what it was before. */
export interface Deed {
  readonly kind: HistoryKind;
  readonly recordId: string;
  /** Whose record it is: an owner's own, or a dog's. */
  readonly of: { readonly clientId: string } | { readonly dogId: string };
  readonly action: HistoryAction;
  /** The revision before; null for records that are not counted. */
  readonly revision: number | null;
  readonly reason: string;
  /** The complete facts before, null where it was not there: enough to bring that state back. */
  readonly before: object | null;
}

/** Keeps what a record was before a deed. Runs inside the transaction of the deed itself. */
export async function keepHistory(context: Context, db: Db, deed: Deed): Promise<void> {
  const { of, before, ...rest } = deed;
  await db
    .insertInto('history')
    .values({
      ...rest,
      clientId: 'clientId' in of ? of.clientId : null,
      dogId: 'dogId' in of ? of.dogId : null,
      before: JSON.stringify(before),
      author: await authorNow(db),
      at: context.instant(),
    })
    .execute();
}
