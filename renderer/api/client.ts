import { inject, readonly, ref, type App, type InjectionKey, type Ref } from 'vue';
import type { Caller } from '../../electron/contract/contract.ts';
import { electronTransport } from './electronTransport.ts';
import { loopbackTransport } from './loopbackTransport.ts';
import { openSession, type RefusedBecause } from './sessionKey.ts';

export interface Client extends Caller {
  /** Why the host does not let this window in; null while it does. */
  readonly refused: Readonly<Ref<RefusedBecause | null>>;
}

const CLIENT: InjectionKey<Client> = Symbol('client');

/** Picks the transport: the Electron bridge where there is one, else the loopback host. */
export async function createClient(): Promise<Client> {
  const refused = ref<RefusedBecause | null>(null);
  if (window.trotwell !== undefined) {
    return { ...electronTransport(window.trotwell), refused: readonly(refused) };
  }
  const session = await openSession(window);
  refused.value = session.refused;
  const onRefusedKey = () => {
    refused.value ??= 'no-key';
  };
  const transport = loopbackTransport({ key: session.key, onRefusedKey });
  return { ...transport, refused: readonly(refused) };
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
