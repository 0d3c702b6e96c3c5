import { z } from 'zod';
import {
  ATTACHMENT_KINDS,
  ATTACHMENT_LIMITS,
  MEDIA_TYPES,
  type WaitingFile,
} from '../../contract/files/attachment.ts';
import type { CallName } from '../../contract/contract.ts';
import { Refusal } from '../../contract/errors.ts';
import { keepTaken, nameFor, noteContent, pictureAddress, smallPicture } from './attachments.ts';
import { authorNow } from '../practice/practitioners.ts';
import type { Context, Handlers } from '../database/context.ts';
import { putRow } from '../database/rows.ts';
import { readDog } from '../dogs/dogs.ts';
import { badField, notFound } from '../refuse.ts';
import type { Db } from '../database/schema.ts';
import type { Transfer } from './transfer.ts';
import { hasContent } from './store.ts';

// The list lies among the drafts, under the dog, so that it goes with the dog when it is erased; the
// contents lie in the store already and are noted, so that a backup holds them too.

const entry = z.object({
  hash: z.string().regex(/^[0-9a-f]{64}$/),
  kind: z.enum(ATTACHMENT_KINDS),
  name: z.string().min(1),
  mediaType: z.enum(MEDIA_TYPES),
  bytes: z.int().min(1),
  /** Base64. */
  thumbnail: z.base64().nullable(),
  leftOut: z.boolean(),
  chosenAt: z.string(),
});
type Entry = z.output<typeof entry>;
const list = z.object({ files: z.array(entry) });

/** Begins the keys of the lists; no page may write there. */
export const WAITING_KEYS = 'files:';
const keyOf = (dogId: string): string => `${WAITING_KEYS}${dogId}`;

async function readEntries(db: Db, dogId: string): Promise<Entry[]> {
  const row = await db
    .selectFrom('draft')
    .select('json')
    .where('key', '=', keyOf(dogId))
    .executeTakeFirst();
  return row === undefined ? [] : (list.safeParse(JSON.parse(row.json)).data?.files ?? []);
}

async function writeEntries(
  context: Context,
  db: Db,
  dogId: string,
  files: readonly Entry[],
): Promise<void> {
  const key = keyOf(dogId);
  if (files.length === 0) {
    await db.deleteFrom('draft').where('key', '=', key).execute();
    return;
  }
  const savedAt = context.instant();
  await putRow(db, 'draft', 'key', { key, json: JSON.stringify({ files }), savedAt });
}

const shownFrom = (context: Context, files: readonly Entry[]): WaitingFile[] =>
  files.map(({ thumbnail, ...file }) => ({
    ...file,
    thumbnail: thumbnail === null ? null : pictureAddress(Buffer.from(thumbnail, 'base64')),
    missing: !hasContent(context.folder, file.hash),
  }));

/** @throws Refusal (input) when more would wait than a visit takes */
function assertFits(files: readonly Entry[]): void {
  if (files.filter(({ leftOut }) => !leftOut).length <= ATTACHMENT_LIMITS.perVisit) return;
  throw badField('file', `A visit may have at most ${ATTACHMENT_LIMITS.perVisit} files.`);
}

type Chosen = Pick<Entry, 'hash' | 'kind' | 'name' | 'mediaType' | 'bytes' | 'thumbnail'>;

async function addEntry(context: Context, db: Db, dogId: string, chosen: Chosen): Promise<Entry[]> {
  const files = await readEntries(db, dogId);
  const same = files.find(({ hash }) => hash === chosen.hash);
  if (same !== undefined && !same.leftOut) {
    throw new Refusal({
      kind: 'conflict',
      message: `This file waits for the visit already, as “${same.name}”.`,
    });
  }
  const chosenAt = context.instant();
  const next = [...files.filter((file) => file !== same), { ...chosen, leftOut: false, chosenAt }];
  assertFits(next);
  const { hash, mediaType, bytes } = chosen;
  await noteContent(db, { hash, mediaType, bytes, createdAt: chosenAt });
  await writeEntries(context, db, dogId, next);
  return next;
}

/**
 * Adds what waits for a dog's new visit to it. Runs inside the transaction of the save. One whose
 * content is missing goes on waiting: a backup may still bring it back.
 * @returns true when files that were left out are gone from the list, and with it for good
 */
export async function addWaitingFiles(
  context: Context,
  db: Db,
  { dogId, visitId }: { readonly dogId: string; readonly visitId: string },
): Promise<boolean> {
  const files = await readEntries(db, dogId);
  if (files.length === 0) return false;
  const author = await authorNow(db);
  const taken = files.filter(({ leftOut }) => !leftOut);
  const missing = taken.filter(({ hash }) => !hasContent(context.folder, hash));
  for (const { hash, kind, name, thumbnail } of taken.filter((file) => !missing.includes(file))) {
    await db
      .insertInto('attachment')
      .values({
        id: context.newId(),
        visitId,
        hash,
        kind,
        name,
        thumbnail: thumbnail === null ? null : Buffer.from(thumbnail, 'base64'),
        author,
        createdAt: context.instant(),
        binnedAt: null,
      })
      .execute();
  }
  await writeEntries(context, db, dogId, missing);
  return files.some(({ leftOut }) => leftOut);
}

/** A recorded run waits like a chosen file; one that waits already is no matter. */
export async function keepRecording(
  context: Context,
  dogId: string,
  { name, file }: { readonly name: string; readonly file: string },
): Promise<void> {
  const { type, hash, bytes } = await keepTaken(context, file, { recording: true });
  const kept = { hash, bytes, mediaType: type, name: nameFor(name, type) };
  await context.db.transaction().execute(async (db) => {
    const waits = await readEntries(db, dogId);
    if (waits.some((entry) => entry.hash === hash && !entry.leftOut)) return;
    await addEntry(context, db, dogId, { ...kept, kind: 'other', thumbnail: null });
  });
}

export function waitingFileHandlers(
  transfer: Transfer,
): Handlers<Extract<CallName, `waiting/${string}`>> {
  return {
    'waiting/list': async (context, { dogId }) => {
      await readDog(context.db, dogId);
      return shownFrom(context, await readEntries(context.db, dogId));
    },
    'waiting/add': (context, { dogId, token, kind, name, thumbnail }) =>
      transfer.use(token, async ({ file }) => {
        await readDog(context.db, dogId);
        const small = smallPicture(thumbnail)?.toString('base64') ?? null;
        const { type, hash, bytes } = await keepTaken(context, file);
        const chosen = {
          hash,
          kind,
          bytes,
          mediaType: type,
          name: nameFor(name, type),
          thumbnail: small,
        };
        const files = await context.db
          .transaction()
          .execute((db) => addEntry(context, db, dogId, chosen));
        return shownFrom(context, files);
      }),
    'waiting/leaveOut': async (context, { dogId, hash, leftOut }) => {
      const files = await context.db.transaction().execute(async (db) => {
        await readDog(db, dogId);
        const before = await readEntries(db, dogId);
        if (hash !== null && !before.some((file) => file.hash === hash)) throw notFound('The file');
        const next = before.map((file) =>
          hash === null || file.hash === hash ? { ...file, leftOut } : file,
        );
        assertFits(next);
        await writeEntries(context, db, dogId, next);
        return next;
      });
      return shownFrom(context, files);
    },
  };
}
