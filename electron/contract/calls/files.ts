import { z } from 'zod';
import { choice, flag, id, requiredLine } from '../fields.ts';
import {
  ATTACHMENT_KINDS,
  ATTACHMENT_LIMITS,
  type Attachment,
  type AttachmentContent,
  type FileLook,
  type WaitingFile,
} from '../files/attachment.ts';
import { call } from './call.ts';

/** Names a file that was taken in. */
const fileToken = z
  .string({ error: 'The file is not named by its token.' })
  .max(100, { error: 'The file is not named by its token.' });
const one = z.strictObject({ id: id('The file') });

/** In base64 four characters stand for three bytes. */
const MOST_CHARACTERS = Math.ceil(ATTACHMENT_LIMITS.thumbnailBytes / 3) * 4;
const SMALL_PICTURE = `The small picture may have at most ${ATTACHMENT_LIMITS.thumbnailBytes / 1024} kB.`;
/** A small PNG or JPEG in base64; null for none. */
const smallPicture = z
  .string({ error: SMALL_PICTURE })
  .max(MOST_CHARACTERS, { error: SMALL_PICTURE })
  .nullable();

const dogId = id('The dog');
/** A file that was taken in and is to be kept. */
const added = {
  token: fileToken,
  kind: choice('Kind of file', ATTACHMENT_KINDS),
  name: requiredLine('Name of the file'),
  thumbnail: smallPicture,
};

export const fileCalls = {
  // Taking a file out and back goes through `bin/put` and `bin/restore`, as for every record.

  /** All that can be seen at the visits of a dog, the oldest first. */
  'attachments/list': call<readonly Attachment[]>()(() => z.strictObject({ dogId })),
  /** What a file is that was taken in; it stays ready to be added. */
  'attachments/look': call<FileLook>()(() => z.strictObject({ token: fileToken })),
  /** Keeps a file that was taken in at a visit. What a photo tells of its place is left out. */
  'attachments/add': call<Attachment>()(() =>
    z.strictObject({ visitId: id('The visit'), ...added }),
  ),
  'attachments/show': call<AttachmentContent>()(() => one),
  /** A copy to be saved elsewhere, named by its token. */
  'attachments/open': call<{ readonly token: string; readonly name: string }>()(() => one),

  // Files chosen at a new visit, before it is saved: kept at once, and added by `visits/save`.

  /** Those that wait for the next new visit of a dog, in the order they were chosen. */
  'waiting/list': call<readonly WaitingFile[]>()(() => z.strictObject({ dogId })),
  /** Keeps a file that was taken in until the visit is saved. Answers with all that wait. */
  'waiting/add': call<readonly WaitingFile[]>()(() => z.strictObject({ dogId, ...added })),
  /** Leaves one file out of the visit, or all; or takes it in again. Answers with all that wait. */
  'waiting/leaveOut': call<readonly WaitingFile[]>()(() =>
    z.strictObject({
      dogId,
      hash: z
        .string({ error: 'The file is not named by its hash.' })
        .regex(/^[0-9a-f]{64}$/, { error: 'The file is not named by its hash.' })
        .nullable(),
      leftOut: flag('Left out'),
    }),
  ),
} as const;
