import { ref, shallowRef } from 'vue';
import type { AttachmentKind } from '../../electron/contract/files/attachment.ts';
import type { Answer, AppError } from '../../electron/contract/errors.ts';
import type { TakenFile } from '../../electron/contract/files/purposes.ts';
import { useClient } from '../api/client.ts';
import type { FileAtHand } from '../api/files.ts';
import { smallPictureOf } from './smallPicture.ts';

/** Why one file was not added. */
export interface FileProblem {
  readonly name: string;
  readonly error: AppError;
}

/** A file that was taken in and looked at, ready to be kept. */
export interface LookedAt {
  readonly token: string;
  readonly name: string;
  readonly kind: AttachmentKind;
  readonly thumbnail: string | null;
}

/** Adds files by `keep`. Without a kind a picture is a photo and a PDF a letter. */
export function useAddFiles<T>(keep: (file: LookedAt) => Promise<Answer<T>>) {
  const client = useClient();
  const busy = ref(false);
  const problems = shallowRef<readonly FileProblem[]>([]);

  async function add({ token, name }: TakenFile, kind: AttachmentKind | null): Promise<Answer<T>> {
    const look = await client.call('attachments/look', { token });
    if (!look.ok) return look;
    const { mediaType, base64 } = look.value;
    return keep({
      token,
      name,
      kind: kind ?? (base64 === null ? 'letter of the vet' : 'photo'),
      thumbnail: base64 === null ? null : await smallPictureOf(base64, mediaType),
    });
  }

  async function addAll(
    given: () => Promise<Answer<readonly FileAtHand[]>>,
    kind: AttachmentKind | null,
  ): Promise<readonly T[]> {
    if (busy.value) return [];
    busy.value = true;
    problems.value = [];
    const files = await given();
    if (!files.ok) problems.value = [{ name: 'The files', error: files.error }];
    const added: T[] = [];
    for (const { name, take } of files.ok ? files.value : []) {
      const taken = await take();
      const answer = taken.ok ? await add(taken.value, kind) : taken;
      if (answer.ok) added.push(answer.value);
      else {
        const which = taken.ok ? taken.value.name : name;
        problems.value = [...problems.value, { name: which, error: answer.error }];
      }
    }
    busy.value = false;
    return added;
  }

  return {
    busy,
    problems,
    /** Opens the dialogue and adds what is chosen in it, one after the other. @returns what was added */
    choose: (kind: AttachmentKind | null) =>
      addAll(() => client.files.chooseFiles('attachment'), kind),
    /** Adds dropped files, one after the other. @returns those that were added */
    drop: (files: readonly File[], kind: AttachmentKind | null) => {
      const value = files.map((file) => ({
        name: file.name,
        take: () => client.files.sendFile(file, 'attachment'),
      }));
      return addAll(async () => ({ ok: true, value }), kind);
    },
  };
}
