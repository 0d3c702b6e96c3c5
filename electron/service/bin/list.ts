import { BIN_KINDS, type BinLine } from '../../contract/keeping/bin.ts';
import type { Context } from '../database/context.ts';
import { keepingOf } from '../keeping/keeping.ts';
import type { Db } from '../database/schema.ts';
import { binnedPlaces, type Place } from './place.ts';
import { countsOf, scopeOf } from './scope.ts';

/** What lies in the bin, the latest first. */
export async function listBin(context: Context): Promise<BinLine[]> {
  const { db } = context;
  const places: Place[] = [];
  for (const kind of BIN_KINDS) places.push(...(await binnedPlaces(db, kind)));
  const lines: BinLine[] = [];
  for (const place of places) {
    const { clientId, dogId: _dogId, revision: _revision, ...line } = place;
    const { kind, id } = line;
    lines.push({
      ...line,
      binnedAt: line.binnedAt!,
      ...(await lastPut(db, id)),
      ...(await countsOf(db, await scopeOf(db, kind, id, true))),
      ...(await keepingOf(db, clientId, context.today())),
    });
  }
  return lines.sort((a, b) => b.binnedAt.localeCompare(a.binnedAt) || a.id.localeCompare(b.id));
}

/** Who put a record into the bin last, and why. */
async function lastPut(db: Db, id: string): Promise<{ author: string; reason: string }> {
  const row = await db
    .selectFrom('history')
    .select(['author', 'reason'])
    .where('recordId', '=', id)
    .where('action', '=', 'binned')
    .orderBy('id', 'desc')
    .executeTakeFirst();
  return row ?? { author: '', reason: '' };
}
