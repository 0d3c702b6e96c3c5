import { computed, reactive, shallowRef } from 'vue';
import type { DogLine, FoundDogs } from '../../electron/contract/contract.ts';
import type { DogFilter, DogOrder } from '../../electron/contract/dogs/list.ts';
import { useClient } from '../api/client.ts';
import { useLoad } from '../composables/useLoad.ts';
import {
  destinationsFor,
  ownerDestinations,
  placesFor,
  splitDestination,
  type Destination,
} from './destinations.ts';

interface Found extends FoundDogs {
  /** What was asked for; the list stays until the next answer is there. */
  readonly query: string;
  readonly filters: readonly DogFilter[];
  readonly destinations: readonly Destination[];
}

/** The list of dogs on the desk: searched, ordered, narrowed, and read on page by page. */
export function useDogList() {
  const client = useClient();
  const asked = reactive({
    query: '',
    order: 'last visit' as DogOrder,
    descending: undefined as boolean | undefined,
    filters: [] as DogFilter[],
  });
  const further = shallowRef<readonly DogLine[]>([]);

  const load = useLoad<Found>(async () => {
    const query = asked.query.trim();
    const { filters, order, descending } = { ...asked, filters: [...asked.filters] };
    const [found, owners] = await Promise.all([
      client.call('dogs/find', { query, filters, order, descending }),
      query === '' ? null : client.call('clients/list', { query }),
    ]);
    if (!found.ok) return found;
    const ofOwners = owners?.ok === true ? ownerDestinations(owners.value, found.value.dogs) : [];
    const destinations = [
      ...(await destinationsOfWords(query, found.value)),
      ...ofOwners,
      ...placesFor(query),
    ];
    return { ok: true, value: { query, filters, ...found.value, destinations } };
  });

  /** "visit bramble", where no dog is called so: what can be done with the dogs that are called bramble. */
  async function destinationsOfWords(
    query: string,
    { dogs, foundIn }: FoundDogs,
  ): Promise<Destination[]> {
    const split = splitDestination(query);
    if (split === null || (dogs.length > 0 && foundIn === 'names')) return [];
    const named = await client.call('dogs/list', { query: split.name });
    return named.ok ? destinationsFor(split.destinations, named.value) : [];
  }

  async function reload(): Promise<void> {
    await load.reload();
    further.value = [];
  }

  async function more(): Promise<void> {
    const { query, filters, order, descending } = asked;
    const answer = await client.call('dogs/list', {
      query: query.trim(),
      filters: [...filters],
      order,
      descending,
      offset: dogs.value.length,
    });
    if (answer.ok) further.value = [...further.value, ...answer.value];
  }

  const dogs = computed(() => [...(load.value.value?.dogs ?? []), ...further.value]);
  const count = computed(() => load.value.value?.count ?? 0);
  const destinations = computed(() => load.value.value?.destinations ?? []);
  const inNotes = computed(() => load.value.value?.foundIn === 'notes');
  return { asked, load, reload, more, dogs, count, inNotes, destinations };
}
