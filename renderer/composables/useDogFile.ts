import { onMounted } from 'vue';
import type { DogFile } from '../../electron/contract/contract.ts';
import { useClient } from '../api/client.ts';
import { useLoad, type Load } from './useLoad.ts';
import { usePageTitle } from './usePageTitle.ts';

/**
 * The file of the dog a page is about, read when the page appears, and the page's title from it.
 * @param kind what the page is called until the dog is known
 */
export function useDogFile(
  dogId: () => string,
  kind: (file: DogFile | null) => string,
  title: (name: string, file: DogFile) => string,
): Load<DogFile> {
  const client = useClient();
  const file = useLoad(() => client.call('dogs/file', { dogId: dogId() }));
  usePageTitle(
    () => kind(file.value.value),
    () => {
      const known = file.value.value;
      return known === null ? null : title(known.dog.name, known);
    },
  );
  onMounted(file.reload);
  return file;
}
