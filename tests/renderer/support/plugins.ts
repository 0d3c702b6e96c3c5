import { createPinia, setActivePinia } from 'pinia';
import { createApp, ref, type Plugin } from 'vue';
import { createMemoryHistory, createRouter } from 'vue-router';
import { blankPractice } from '../../../electron/contract/blank.ts';
import type { AppStatus } from '../../../electron/contract/contract.ts';
import type { Practice } from '../../../electron/contract/records.ts';
import { provideClient, type Client } from '../../../renderer/api/client.ts';
import { usePractice } from '../../../renderer/stores/practice.ts';

/** A transport that reaches nothing; what is mounted with it must not need the service. */
const silent: Client = {
  refused: ref(null),
  call: async () => ({ ok: false, error: { kind: 'unreachable', message: 'No service here.' } }),
};

/** What a component finds around it in the program: store, router, and a practice of some settings. */
export function appPlugins(settings: Partial<Practice> = {}): Plugin[] {
  const pinia = createPinia();
  const host = createApp({});
  provideClient(host, silent);
  host.use(pinia);
  setActivePinia(pinia);
  const status: AppStatus = {
    version: '0',
    open: 'own',
    ownExists: true,
    today: '2025-03-29',
    folder: '',
    practice: { ...blankPractice(), ...settings },
    logo: null,
    rules: [],
  };
  host.runWithContext(() => {
    usePractice().status = status;
  });
  const router = createRouter({
    history: createMemoryHistory(),
    routes: [{ path: '/:rest(.*)*', component: { template: '<p></p>' } }],
  });
  return [pinia, router, { install: (app) => provideClient(app, silent) }];
}
