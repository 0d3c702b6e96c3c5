import type { ParsedOf } from '../../contract/contract.ts';
import type { Erased, EraseCheck } from '../../contract/keeping/bin.ts';
import { readPlace } from '../bin/place.ts';
import { countsOf, scopeOf, type Scope } from '../bin/scope.ts';
import type { Context } from '../database/context.ts';
import { removeUnusedFiles } from '../files/unused.ts';
import { keepingOf } from '../keeping/keeping.ts';
import { badField } from '../refuse.ts';
import type { Db } from '../database/schema.ts';
import { assertMayRemove, keepErasure } from './record.ts';
import { draftsNaming, removeRecords } from './remove.ts';
import { replaceBackups, wipeRemains } from './wipe.ts';

interface Found {
  readonly check: EraseCheck;
  readonly scope: Scope;
}

async function find(context: Context, db: Db, clientId: string): Promise<Found> {
  const { clientName } = await readPlace(db, 'client', clientId);
  const scope = await scopeOf(db, 'client', clientId, true);
  const dogs = await db
    .selectFrom('dog')
    .select('name')
    .where('clientId', '=', clientId)
    .orderBy('searchText')
    .execute();
  const ids = [clientId, ...scope.dogIds, ...scope.visitIds];
  return {
    scope,
    check: {
      clientId,
      clientName,
      dogNames: dogs.map(({ name }) => name),
      ...(await countsOf(db, scope)),
      drafts: (await draftsNaming(db, ids)).length,
      ...(await keepingOf(db, clientId, context.today())),
    },
  };
}

/** What erasing an owner would remove, in the bin or not. @throws Refusal (not-found). */
export async function checkErasure(
  context: Context,
  { clientId }: ParsedOf<'clients/eraseCheck'>,
): Promise<EraseCheck> {
  return (await find(context, context.db, clientId)).check;
}

type Erasing = ParsedOf<'clients/erase'>;

/**
 * Removes an owner with dogs, visits and all else, then whatever could still be read of them in
 * the data folder: contents of attachments, freed pages, the log, the automatic backups.
 * @throws Refusal (not-found; input when name or confirmation are wrong); nothing is removed then.
 */
export async function eraseClient(context: Context, erasing: Erasing): Promise<Erased> {
  const { dogs, visits, files } = await context.db
    .transaction()
    .execute((db) => removeClient(context, db, erasing));
  removeUnusedFiles(context);
  return { dogs, visits, files, ...(await finishErasure(context)) };
}

async function removeClient(
  context: Context,
  db: Db,
  { clientId, ground, confirmName, insideRetentionConfirmed }: Erasing,
): Promise<EraseCheck> {
  const { check, scope } = await find(context, db, clientId);
  if (confirmName.normalize('NFC') !== check.clientName.normalize('NFC')) {
    throw badField(
      'confirmName',
      'Name of the owner must be typed exactly as it stands in the records, to erase the owner’s records.',
    );
  }
  if (check.insideRetention) assertMayRemove(insideRetentionConfirmed);
  await removeRecords(db, scope);
  const { insideRetention, dogs, visits, files } = check;
  await keepErasure(context, db, { ground, insideRetention, dogs, visits, files }, [clientId]);
  return check;
}

/** The part of an erasure that disk or another program can hinder; it can be done again. */
export async function finishErasure(context: Context): Promise<Pick<Erased, 'clean' | 'backups'>> {
  const clean = wipeRemains(context);
  return { clean, backups: await replaceBackups(context) };
}
