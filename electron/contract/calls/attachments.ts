import { z } from 'zod';
import {
  ATTACHMENT_KINDS,
  ATTACHMENT_LIMITS,
  type Attachment,
  type AttachmentContent,
  type FileLook,
} from '../files/attachment.ts';
import { choice, id, requiredLine } from '../fields.ts';
import { call } from './call.ts';

/** Names a file that was taken in. */
export const fileToken = z
  .string({ error: 'The file is not named by its token.' })
  .max(100, { error: 'The file is not named by its token.' });
const one = z.strictObject({ id: id('The file') });

/** In base64 four characters stand for three bytes. */
const MOST_CHARACTERS = Math.ceil(ATTACHMENT_LIMITS.thumbnailBytes / 3) * 4;
const SMALL_PICTURE = `The small picture may have at most ${ATTACHMENT_LIMITS.thumbnailBytes / 1024} kB.`;
/** A small PNG or JPEG in base64; null for none. */
export const smallPicture = z
  .string({ error: SMALL_PICTURE })
  .max(MOST_CHARACTERS, { error: SMALL_PICTURE })
  .nullable();

// Taking a file out and back goes through `bin/put` and `bin/restore`, as for every record.
export const attachmentCalls = {
  /** All that can be seen at the visits of a dog, the oldest first. */
  'attachments/list': call<readonly Attachment[]>()(z.strictObject({ dogId: id('The dog') })),
  /** What a file is that was taken in; it stays ready to be added. */
  'attachments/look': call<FileLook>()(z.strictObject({ token: fileToken })),
  /** Keeps a file that was taken in at a visit. What a photo tells of its place is left out. */
  'attachments/add': call<Attachment>()(
    z.strictObject({
      visitId: id('The visit'),
      token: fileToken,
      kind: choice('Kind of file', ATTACHMENT_KINDS),
      name: requiredLine('Name of the file'),
      thumbnail: smallPicture,
    }),
  ),
  'attachments/show': call<AttachmentContent>()(one),
  /** A copy to be saved elsewhere, named by its token. */
  'attachments/open': call<{ readonly token: string; readonly name: string }>()(one),
} as const;
