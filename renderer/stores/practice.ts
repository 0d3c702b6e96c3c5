import { defineStore } from 'pinia';
import { computed, shallowRef } from 'vue';
import type { AppStatus } from '../../electron/contract/contract.ts';
import type { AppError } from '../../electron/contract/errors.ts';
import type { Practice, PracticeLogo, RuleChange } from '../../electron/contract/records.ts';
import { EMPTY_SHELF } from '../../electron/contract/food/shelf.ts';
import { useClient } from '../api/client.ts';
import { DEFAULT_CHOICES, type ShownChoices } from '../units/shown.ts';

/** Which practice is open, its settings, and today by the service's clock. */
export const usePractice = defineStore('practice', () => {
  const client = useClient();
  const status = shallowRef<AppStatus | null>(null);
  const error = shallowRef<AppError | null>(null);

  const practice = computed<Practice | null>(() => status.value?.practice ?? null);
  const choices = computed<ShownChoices>(() => practice.value ?? DEFAULT_CHOICES);
  const rules = computed<readonly RuleChange[]>(() => status.value?.rules ?? []);
  const today = computed(() => status.value?.today ?? '');
  const isDemo = computed(() => status.value?.open === 'demo');

  async function load(): Promise<void> {
    const answer = await client.call('app/status', {});
    error.value = answer.ok ? null : answer.error;
    if (answer.ok) status.value = answer.value;
  }

  /** Opens the own or the demonstration practice. @returns true when it is open. */
  async function open(which: 'own' | 'demo'): Promise<boolean> {
    const answer = await client.call('app/open', { which });
    error.value = answer.ok ? null : answer.error;
    if (answer.ok) status.value = answer.value;
    return answer.ok;
  }

  /** Takes over a status that came with the answer of another call. */
  function take(next: AppStatus): void {
    status.value = next;
  }

  /** Shows nothing of the records any more, ahead of the service's own locking. */
  function shut(): void {
    if (status.value === null || status.value.lock === null) return;
    const lock = { ...status.value.lock, locked: true };
    const nothing = { practice: null, logo: null, rules: [], shelf: EMPTY_SHELF, folder: '' };
    status.value = { ...status.value, lock, ...nothing };
  }

  /** Takes over settings that the service has just kept. */
  function keep(saved: Practice): void {
    if (status.value !== null) status.value = { ...status.value, practice: saved };
  }

  /** Takes over the logo that the service has just checked and kept. */
  function keepLogo(logo: PracticeLogo | null): void {
    if (status.value !== null) status.value = { ...status.value, logo };
  }

  /** Takes over the rules that the service has just changed. */
  function keepRules(changed: readonly RuleChange[]): void {
    if (status.value !== null) status.value = { ...status.value, rules: changed };
  }

  return {
    status,
    error,
    practice,
    choices,
    rules,
    today,
    isDemo,
    load,
    take,
    shut,
    open,
    keep,
    keepLogo,
    keepRules,
  };
});
