import type { Attachment, AttachmentKind } from '../../../electron/contract/files/attachment.ts';
import { KIND_WORDS } from '../../files/words.ts';
import type { ReadRow } from './rows.ts';

/** Files of two visits in rows of one kind each, so that photos from the same side stand together. */
export interface FileRow extends ReadRow {
  readonly files: readonly (readonly Attachment[])[];
}

/** `of` are the files of each visit; a kind that none of them has is left out. */
export function fileRows(of: readonly (readonly Attachment[])[]): FileRow[] {
  return (Object.keys(KIND_WORDS) as AttachmentKind[])
    .map((kind) => ({ kind, files: of.map((here) => here.filter((file) => file.kind === kind)) }))
    .filter(({ files }) => files.some((here) => here.length > 0))
    .map(({ kind, files }) => ({
      key: kind,
      label: KIND_WORDS[kind],
      texts: files.map((here) => (here.length === 0 ? null : here.map(({ name }) => name).join())),
      // Two pictures are never the same; the eye tells what differs.
      differs: false,
      files,
    }));
}
