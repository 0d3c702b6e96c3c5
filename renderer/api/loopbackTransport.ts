import type { CallName, Caller, InputOf, ResultOf } from '../../electron/contract/contract.ts';
import type { Answer } from '../../electron/contract/errors.ts';
import { NO_ANSWER, unreachable } from './unreachable.ts';

export interface LoopbackOptions {
  readonly key: string | null;
  /** Called when the host does not accept the key: the tab is from an earlier start. */
  readonly onRefusedKey: () => void;
}

/** Calls the service over HTTP on the loopback host that served this page. */
export function loopbackTransport({ key, onRefusedKey }: LoopbackOptions): Caller {
  return {
    async call<N extends CallName>(name: N, input: InputOf<N>): Promise<Answer<ResultOf<N>>> {
      const refused = () => {
        onRefusedKey();
        return unreachable('This window was opened by an earlier start of Trotwell.');
      };
      if (key === null) return refused();
      try {
        const response = await fetch(`/call/${name}`, {
          method: 'POST',
          headers: { 'content-type': 'application/json', authorization: `Bearer ${key}` },
          body: JSON.stringify(input),
        });
        if (response.status === 401) return refused();
        return (await response.json()) as Answer<ResultOf<N>>;
      } catch {
        return unreachable(NO_ANSWER);
      }
    },
  };
}
