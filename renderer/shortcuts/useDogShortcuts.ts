import { useRouter } from 'vue-router';
import type { Scope } from './shortcut.ts';
import { useShortcut } from './useShortcut.ts';

/** What a dog's page has to offer at the moment. */
export interface DogPageState {
  readonly dogId: string;
  /** Whether it was seen at least once. */
  readonly seen: boolean;
  readonly assessed: boolean;
  readonly planned: boolean;
}

/** The shortcuts of a dog's page; each works where the page has the link it stands for. */
export function useDogShortcuts(state: () => DogPageState): void {
  const router = useRouter();
  const scope: Scope = 'dog';
  const go = (part: string) => () => router.push(`/dogs/${state().dogId}/${part}`);

  useShortcut({
    keys: ['v'],
    words: () => (state().seen ? 'New follow-up' : 'Start the intake'),
    scope,
    run: go('visits/new'),
  });
  useShortcut({
    keys: ['p'],
    words: 'Running plan',
    scope,
    when: () => state().planned,
    run: go('plan'),
  });
  useShortcut({ keys: ['h'], words: 'Heat', scope, when: () => state().assessed, run: go('heat') });
  useShortcut({
    keys: ['o'],
    words: 'Handouts for the owner',
    scope,
    when: () => state().seen,
    run: go('handouts'),
  });
  useShortcut({ keys: ['e'], words: 'Edit dog and owner', scope, run: go('edit') });
}
