import { inject, readonly, ref, type App, type InjectionKey, type Ref } from 'vue';
import type { Caller } from '../../electron/contract/contract.ts';
import { electronTransport } from './electronTransport.ts';
import { loopbackTransport } from './loopbackTransport.ts';
import { takeSessionKey } from './sessionKey.ts';

export interface Client extends Caller {
  /** True once the host refused this window's key; nothing can be asked any more. */
  readonly refused: Readonly<Ref<boolean>>;
}

const CLIENT: InjectionKey<Client> = Symbol('client');

/** Picks the transport: the Electron bridge where there is one, else the loopback host. */
export function createClient(): Client {
  const refused = ref(false);
  if (window.trotwell !== undefined) {
    return { ...electronTransport(window.trotwell), refused: readonly(refused) };
  }
  const key = takeSessionKey(window.location, window.history, window.sessionStorage);
  const onRefusedKey = () => {
    refused.value = true;
  };
  if (key === null) onRefusedKey();
  return { ...loopbackTransport({ key, onRefusedKey }), refused: readonly(refused) };
}

export function provideClient(app: App, client: Client): void {
  app.provide(CLIENT, client);
}

/** The one way to the service from a component or composable. */
export function useClient(): Client {
  const client = inject(CLIENT);
  if (client === undefined) throw new Error('No client is provided.');
  return client;
}
