import { createPinia, setActivePinia, type Pinia } from 'pinia';
import { createApp, ref, type Plugin } from 'vue';
import { createMemoryHistory, createRouter } from 'vue-router';
import { EMPTY_SHELF } from '../../../electron/contract/food/shelf.ts';
import { blankPractice } from '../../../electron/contract/records/forms.ts';
import type { AppStatus } from '../../../electron/contract/contract.ts';
import type { Answer } from '../../../electron/contract/errors.ts';
import type { Practice } from '../../../electron/contract/records.ts';
import { provideClient, type Client } from '../../../renderer/api/client.ts';
import { usePractice } from '../../../renderer/stores/practice.ts';

const noService: Answer<never> = {
  ok: false,
  error: { kind: 'unreachable', message: 'No service here.' },
};

/** A transport that reaches nothing; what is mounted with it must not need the service. */
const silent: Client = {
  refused: ref(null),
  lockedAnswers: ref(0),
  call: async () => noService,
  files: {
    chooseFile: async () => noService,
    chooseFiles: async () => noService,
    sendFile: async () => noService,
    saveProduced: async () => 'not saved',
  },
};

/** What a component finds around it in the program: store, router, and a practice of some settings. */
export function appPlugins(
  settings: Partial<Practice> = {},
  client = silent,
  pinia: Pinia = createPinia(),
): Plugin[] {
  const host = createApp({});
  provideClient(host, client);
  host.use(pinia);
  setActivePinia(pinia);
  const status: AppStatus = {
    version: '0',
    open: 'own',
    ownExists: true,
    trouble: null,
    limited: null,
    lock: null,
    today: '2025-03-29',
    folder: '',
    practice: { ...blankPractice(), ...settings },
    logo: null,
    rules: [],
    shelf: EMPTY_SHELF,
  };
  host.runWithContext(() => {
    usePractice().status = status;
  });
  const router = createRouter({
    history: createMemoryHistory(),
    routes: [{ path: '/:rest(.*)*', component: { template: '<p></p>' } }],
  });
  return [pinia, router, { install: (app) => provideClient(app, client) }];
}
