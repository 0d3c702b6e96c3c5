import { defineStore } from 'pinia';
import { computed, shallowRef } from 'vue';
import type { People } from '../../electron/contract/calls/practice.ts';
import type { Answer } from '../../electron/contract/errors.ts';
import { useClient } from '../api/client.ts';

const NOBODY: People = { practitioners: [], atDesk: null };

/** Who works in the practice, and who is at the desk. */
export const usePeople = defineStore('people', () => {
  const client = useClient();
  const people = shallowRef<People>(NOBODY);
  const active = computed(() => people.value.practitioners.filter((one) => one.active));

  function keep(known: People): void {
    people.value = known;
  }

  function forget(): void {
    people.value = NOBODY;
  }

  /** Reads them again; nobody is shown while another practice opens. */
  async function load(): Promise<void> {
    forget();
    const answer = await client.call('practitioners/list', {});
    if (answer.ok) keep(answer.value);
  }

  async function sitDown(practitionerId: string | null): Promise<Answer<People>> {
    const answer = await client.call('practitioners/atDesk', { practitionerId });
    if (answer.ok) keep(answer.value);
    return answer;
  }

  /** The name behind initials; empty where nobody here has them. */
  function nameOf(initials: string): string {
    return people.value.practitioners.find((one) => one.initials === initials)?.name ?? '';
  }
  return { people, active, load, forget, keep, sitDown, nameOf };
});
