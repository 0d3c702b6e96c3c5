import type { CallName, Caller, InputOf, ResultOf } from '../../electron/contract/contract.ts';
import type { Answer } from '../../electron/contract/errors.ts';
import type { Bridge } from './bridge.ts';
import { NO_ANSWER, unreachable } from './unreachable.ts';

/** Calls the service through the bridge of the Electron preload. */
export function electronTransport(bridge: Bridge): Caller {
  return {
    async call<N extends CallName>(name: N, input: InputOf<N>): Promise<Answer<ResultOf<N>>> {
      try {
        // Vue's reactive proxies cannot cross the structured clone of the bridge; plain JSON can.
        const plain = JSON.parse(JSON.stringify(input)) as InputOf<N>;
        return await bridge.calls[name](plain);
      } catch {
        return unreachable(NO_ANSWER);
      }
    },
  };
}
