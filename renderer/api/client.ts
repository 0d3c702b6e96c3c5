import { inject, readonly, ref, type App, type InjectionKey, type Ref } from 'vue';
import type { Caller } from '../../electron/contract/contract.ts';
import { electronTransport } from './electronTransport.ts';
import { electronFiles, loopbackFiles, type FileWays } from './files.ts';
import { loopbackTransport } from './loopbackTransport.ts';
import { openSession, type RefusedBecause } from './sessionKey.ts';

export interface Client extends Caller {
  /** Why the host does not let this window in; null while it does. */
  readonly refused: Readonly<Ref<RefusedBecause | null>>;
  /** How often an answer said that the records are locked. */
  readonly lockedAnswers: Readonly<Ref<number>>;
  /** How files come and go. */
  readonly files: FileWays;
}

const CLIENT: InjectionKey<Client> = Symbol('client');

/** Picks the transport: the Electron bridge where there is one, else the loopback host. */
export async function createClient(): Promise<Client> {
  const refused = ref<RefusedBecause | null>(null);
  if (window.trotwell !== undefined) {
    const { trotwell: bridge } = window;
    const files = electronFiles(bridge);
    return { ...noticingLocks(electronTransport(bridge)), files, refused: readonly(refused) };
  }
  const session = await openSession(window);
  refused.value = session.refused;
  const onRefusedKey = () => {
    refused.value ??= 'no-key';
  };
  const options = { key: session.key, onRefusedKey };
  const files = loopbackFiles(options);
  return { ...noticingLocks(loopbackTransport(options)), files, refused: readonly(refused) };
}

/** Counts the answers of locked records, so that the page can shut itself. */
function noticingLocks(caller: Caller): Pick<Client, 'call' | 'lockedAnswers'> {
  const lockedAnswers = ref(0);
  return {
    lockedAnswers: readonly(lockedAnswers),
    async call(name, input) {
      const answer = await caller.call(name, input);
      if (!answer.ok && answer.error.kind === 'locked') lockedAnswers.value += 1;
      return answer;
    },
  };
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
