import { onMounted } from 'vue';
import type { Attachment } from '../../electron/contract/files/attachment.ts';
import type { AppError } from '../../electron/contract/errors.ts';
import { useClient } from '../api/client.ts';
import { useLoad } from '../composables/useLoad.ts';

export interface VisitFiles {
  /** The files at one visit, oldest first. */
  of(visitId: string): readonly Attachment[];
  /** Why they cannot be listed; null while they can. */
  problem(): AppError | null;
  reload(): Promise<void>;
}

/** The photos and letters at the visits of a dog. */
export function useVisitFiles(dogId: () => string): VisitFiles {
  const client = useClient();
  const list = useLoad(() => client.call('attachments/list', { dogId: dogId() }));
  onMounted(list.reload);
  return {
    of: (visitId) => list.value.value?.filter((file) => file.visitId === visitId) ?? [],
    problem: () => list.error.value,
    reload: list.reload,
  };
}
