import type { ParsedOf } from '../../contract/contract.ts';
import type { Emptied } from '../../contract/keeping/bin.ts';
import type { Context } from '../database/context.ts';
import { assertMayRemove, keepErasure } from '../erasure/record.ts';
import { removeRecords } from '../erasure/remove.ts';
import { emptyLog } from '../erasure/wipe.ts';
import { removeUnusedFiles } from '../files/unused.ts';
import { keepHistory } from '../history/history.ts';
import { keepingOf } from '../keeping/keeping.ts';
import { notFound } from '../refuse.ts';
import type { Db } from '../database/schema.ts';
import { readPlace, RECORD_NAMES, type Place } from './place.ts';
import { scopeOf, type Scope } from './scope.ts';

type Emptying = ParsedOf<'bin/empty'>;

/** Removes entries of the bin for good, all or none. @throws Refusal (not-found, input). */
export async function emptyBin(context: Context, emptying: Emptying): Promise<Emptied> {
  const gone = await context.db.transaction().execute((db) => removeEntries(context, db, emptying));
  removeUnusedFiles(context);
  emptyLog(context);
  return gone;
}

async function removeEntries(
  context: Context,
  db: Db,
  { entries, ground, insideRetentionConfirmed }: Emptying,
): Promise<Emptied> {
  const places: Place[] = [];
  for (const { kind, id } of entries) {
    const place = await readPlace(db, kind, id);
    if (place.binnedAt === null) throw notFound(`${RECORD_NAMES[kind]} in the bin`);
    places.push(place);
  }
  const inside = await anyInsideRetention(context, db, places);
  if (inside) assertMayRemove(insideRetentionConfirmed);
  const scope = together(
    await Promise.all(places.map(({ kind, id }) => scopeOf(db, kind, id, true))),
  );
  await removeRecords(db, scope);
  for (const place of places) await noteRemoval(context, db, place, scope, ground);
  const counts = {
    dogs: scope.dogIds.length,
    visits: scope.visitIds.length,
    files: scope.attachmentIds.length,
  };
  const erasure = { ground, insideRetention: inside, ...counts };
  await keepErasure(context, db, erasure, scope.clientIds);
  return { entries: places.length, visits: counts.visits, files: counts.files };
}

async function anyInsideRetention(
  context: Context,
  db: Db,
  places: readonly Place[],
): Promise<boolean> {
  for (const clientId of new Set(places.map((place) => place.clientId))) {
    if ((await keepingOf(db, clientId, context.today())).insideRetention) return true;
  }
  return false;
}

/** What lies in several scopes counts once. */
function together(scopes: readonly Scope[]): Scope {
  const all = (pick: (scope: Scope) => readonly string[]) => [...new Set(scopes.flatMap(pick))];
  return {
    clientIds: all(({ clientIds }) => clientIds),
    dogIds: all(({ dogIds }) => dogIds),
    visitIds: all(({ visitIds }) => visitIds),
    attachmentIds: all(({ attachmentIds }) => attachmentIds),
  };
}

/**
 * Leaves in the record around it that something was removed, when and by whom; nothing of what it
 * said. Nothing is left where the record around it is gone too.
 */
async function noteRemoval(
  context: Context,
  db: Db,
  { kind, id, dogId, clientId }: Place,
  gone: Scope,
  reason: string,
): Promise<void> {
  const ofDog = dogId !== null && !gone.dogIds.includes(dogId);
  if (!ofDog && gone.clientIds.includes(clientId)) return;
  await keepHistory(context, db, {
    kind,
    recordId: id,
    of: ofDog ? { dogId } : { clientId },
    action: 'removed',
    revision: null,
    reason,
    before: null,
  });
}
