import { readFile, writeFile } from 'node:fs/promises';
import { extname } from 'node:path';
import {
  ATTACHMENT_LIMITS,
  ATTACHMENT_TYPES,
  isPicture,
  type Attachment,
  type AttachmentKind,
  type AttachmentType,
} from '../../contract/files/attachment.ts';
import type { CallName } from '../../contract/contract.ts';
import { plainFileName } from '../../contract/files/name.ts';
import { FILE_PURPOSES, tooLargeSentence } from '../../contract/files/purposes.ts';
import { Refusal } from '../../contract/errors.ts';
import { authorNow } from '../practice/practitioners.ts';
import type { Context, Handlers } from '../database/context.ts';
import { readDog } from '../dogs/dogs.ts';
import { contentToKeep, typeOf } from './content.ts';
import { hasContent, keepContent, readContent } from './store.ts';
import { badField, notFound } from '../refuse.ts';
import type { Db, AttachmentRow, StoredFileRow } from '../database/schema.ts';
import type { Transfer } from './transfer.ts';

type Row = AttachmentRow & Pick<StoredFileRow, 'mediaType' | 'bytes'>;

/** Attachments that can be seen: neither they, their visit, their dog nor its owner are binned. */
const seen = (db: Db) =>
  db
    .selectFrom('attachment')
    .innerJoin('storedFile', 'storedFile.hash', 'attachment.hash')
    .innerJoin('visit', 'visit.id', 'attachment.visitId')
    .innerJoin('dog', 'dog.id', 'visit.dogId')
    .innerJoin('client', 'client.id', 'dog.clientId')
    .where('attachment.binnedAt', 'is', null)
    .where('visit.binnedAt', 'is', null)
    .where('dog.binnedAt', 'is', null)
    .where('client.binnedAt', 'is', null)
    .selectAll('attachment')
    .select(['storedFile.mediaType', 'storedFile.bytes']);

/** The data address of a small picture. */
export const pictureAddress = (picture: Buffer): string =>
  `data:${typeOf(picture) ?? 'image/png'};base64,${picture.toString('base64')}`;

function fromRow(
  folder: string,
  { hash, thumbnail, binnedAt: _binnedAt, ...row }: Row,
): Attachment {
  return {
    ...row,
    thumbnail: thumbnail === null ? null : pictureAddress(thumbnail),
    missing: !hasContent(folder, hash),
  };
}

function readOne(db: Db, id: string): Promise<Row> {
  return seen(db)
    .where('attachment.id', '=', id)
    .executeTakeFirstOrThrow(() => notFound('The file'));
}

async function assertRoom(db: Db, visitId: string): Promise<void> {
  const visit = await db
    .selectFrom('visit')
    .select('dogId')
    .where('id', '=', visitId)
    .where('binnedAt', 'is', null)
    .executeTakeFirstOrThrow(() => notFound('The visit'));
  await readDog(db, visit.dogId);
  const { files } = await db
    .selectFrom('attachment')
    .select((eb) => eb.fn.countAll<number>().as('files'))
    .where('visitId', '=', visitId)
    .where('binnedAt', 'is', null)
    .executeTakeFirstOrThrow();
  if (files >= ATTACHMENT_LIMITS.perVisit) {
    throw badField('file', `A visit may have at most ${ATTACHMENT_LIMITS.perVisit} files.`);
  }
}

/** The same content twice at one visit is a slip of the hand. @throws Refusal (conflict) */
async function assertNew(db: Db, visitId: string, hash: string): Promise<void> {
  const same = await db
    .selectFrom('attachment')
    .select('name')
    .where('visitId', '=', visitId)
    .where('hash', '=', hash)
    .where('binnedAt', 'is', null)
    .executeTakeFirst();
  if (same === undefined) return;
  throw new Refusal({
    kind: 'conflict',
    message: `This file is already at the visit, as “${same.name}”.`,
  });
}

/** The plain name of a file, with an ending that fits what it is. */
export function nameFor(given: string, type: AttachmentType): string {
  const endings: readonly string[] = ATTACHMENT_TYPES[type];
  const name = plainFileName(given, `file.${endings[0]}`);
  const fits = endings.includes(extname(name).slice(1).toLowerCase());
  return fits ? name : plainFileName(`${name}.${endings[0]}`, name);
}

/** @throws Refusal (input) when it is neither a PNG nor a JPEG */
export function smallPicture(base64: string | null): Buffer | null {
  if (base64 === null) return null;
  const picture = Buffer.from(base64, 'base64');
  const type = typeOf(picture);
  if (type === 'image/png' || type === 'image/jpeg') return contentToKeep(picture).content;
  throw badField('thumbnail', 'The small picture must be a PNG or JPEG.');
}

/** Notes a content that was kept; backups go by it. */
export async function noteContent(db: Db, content: StoredFileRow): Promise<void> {
  await db
    .insertInto('storedFile')
    .values(content)
    .onConflict((conflict) => conflict.doNothing())
    .execute();
}

interface Adding {
  readonly visitId: string;
  readonly kind: AttachmentKind;
  readonly name: string;
  readonly thumbnail: Buffer | null;
}

/** Keeps what was taken in by its hash. @throws Refusal (input) for what is too large or no file of ours */
export async function keepTaken(
  context: Context,
  file: string,
  asked?: { readonly recording: boolean },
) {
  const bytes = await readFile(file);
  const { maxBytes } = FILE_PURPOSES.attachment;
  if (bytes.length > maxBytes) throw badField('file', tooLargeSentence(maxBytes));
  const { type, content } = contentToKeep(bytes, asked);
  return { type, hash: await keepContent(context.folder, content), bytes: content.length };
}

async function add(context: Context, adding: Adding, file: string): Promise<Attachment> {
  const { type, hash, bytes } = await keepTaken(context, file);
  const id = context.newId();
  await context.db.transaction().execute(async (db) => {
    await assertNew(db, adding.visitId, hash);
    const createdAt = context.instant();
    await noteContent(db, { hash, mediaType: type, bytes, createdAt });
    const author = await authorNow(db);
    const name = nameFor(adding.name, type);
    const row = { ...adding, id, hash, name, author, createdAt, binnedAt: null };
    await db.insertInto('attachment').values(row).execute();
  });
  return fromRow(context.folder, await readOne(context.db, id));
}

export function attachmentHandlers(
  transfer: Transfer,
): Handlers<Extract<CallName, `attachments/${string}`>> {
  return {
    'attachments/list': async (context, { dogId }) => {
      await readDog(context.db, dogId);
      const rows = await seen(context.db)
        .where('visit.dogId', '=', dogId)
        .orderBy('visit.day')
        .orderBy('attachment.createdAt')
        .execute();
      return rows.map((row) => fromRow(context.folder, row));
    },
    'attachments/look': async (_context, { token }) => {
      const { type, content } = contentToKeep(await readFile(transfer.open(token).file));
      return { mediaType: type, base64: isPicture(type) ? content.toString('base64') : null };
    },
    'attachments/add': (context, { token, visitId, kind, name, thumbnail }) =>
      transfer.use(token, async ({ file }) => {
        await assertRoom(context.db, visitId);
        const adding = { visitId, kind, name, thumbnail: smallPicture(thumbnail) };
        return add(context, adding, file);
      }),
    'attachments/show': async (context, { id }) => {
      const { name, hash, mediaType } = await readOne(context.db, id);
      const content = await readContent(context.folder, hash, name);
      return {
        name,
        mediaType,
        base64: content.toString('base64'),
      };
    },
    'attachments/open': async (context, { id }) => {
      const { name, hash, mediaType } = await readOne(context.db, id);
      const content = await readContent(context.folder, hash, name);
      const copy = transfer.room();
      await writeFile(copy, content, { mode: 0o600 });
      return { token: await transfer.produced(copy, name, mediaType), name };
    },
  };
}
