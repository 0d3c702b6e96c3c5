import type { Attachment, AttachmentKind } from '../../electron/contract/files/attachment.ts';

// A megabyte as file managers count it, as in the limits; spelled out since only types of the
// contract come along.
const MEGABYTE = 1024 * 1024;

export const KIND_WORDS: Readonly<Record<AttachmentKind, string>> = {
  photo: 'Photo',
  'photo from the left': 'Photo from the left',
  'photo from the right': 'Photo from the right',
  'photo from above': 'Photo from above',
  'photo from the front': 'Photo from the front',
  'photo from behind': 'Photo from behind',
  'letter of the vet': 'Letter of the vet',
  other: 'Other',
};

/** The size of a file in MB, e.g. "1.3 MB". */
export function sizeOf(bytes: number): string {
  const megabytes = bytes / MEGABYTE;
  return megabytes < 0.1 ? 'less than 0.1 MB' : `${megabytes.toFixed(1)} MB`;
}

/** Kind and size in one line. */
export const aboutFile = ({ kind, bytes }: Pick<Attachment, 'kind' | 'bytes'>): string =>
  `${KIND_WORDS[kind]}, ${sizeOf(bytes)}`;
