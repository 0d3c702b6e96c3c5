import { z } from 'zod';
import { ATTACHMENT_KINDS, type WaitingFile } from '../files/attachment.ts';
import { choice, flag, id, requiredLine } from '../fields.ts';
import { fileToken, smallPicture } from './attachments.ts';
import { call } from './call.ts';

const dogId = id('The dog');

// Files chosen at a new visit, before it is saved: kept at once, and added by `visits/save`.
export const waitingFileCalls = {
  /** Those that wait for the next new visit of a dog, in the order they were chosen. */
  'waiting/list': call<readonly WaitingFile[]>()(z.strictObject({ dogId })),
  /** Keeps a file that was taken in until the visit is saved. Answers with all that wait. */
  'waiting/add': call<readonly WaitingFile[]>()(
    z.strictObject({
      dogId,
      token: fileToken,
      kind: choice('Kind of file', ATTACHMENT_KINDS),
      name: requiredLine('Name of the file'),
      thumbnail: smallPicture,
    }),
  ),
  /** Leaves one file out of the visit, or all; or takes it in again. Answers with all that wait. */
  'waiting/leaveOut': call<readonly WaitingFile[]>()(
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
