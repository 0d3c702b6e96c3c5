import { onMounted } from 'vue';
import { useClient } from '../api/client.ts';
import { useLoad } from '../composables/useLoad.ts';

/** The photos and letters at the visits of a dog. */
export function useVisitFiles(dogId: () => string) {
  const client = useClient();
  const list = useLoad(() => client.call('attachments/list', { dogId: dogId() }));
  onMounted(list.reload);
  return {
    /** The files at one visit, oldest first. */
    of: (visitId: string) => list.value.value?.filter((file) => file.visitId === visitId) ?? [],
    /** Why they cannot be listed; null while they can. */
    problem: () => list.error.value,
    reload: list.reload,
  };
}
