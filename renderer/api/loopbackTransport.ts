import type { CallName, Caller, InputOf, ResultOf } from '../../electron/contract/contract.ts';
import type { Answer } from '../../electron/contract/errors.ts';
import { NO_ANSWER, unreachable } from './unreachable.ts';

/** Browsers finish so much for a page that is gone (Fetch standard: 64 KiB, all requests together). */
const MOST_BYTES_AFTER_LEAVING = 60_000;

/** What was typed last arrives although the window is closed or read again. */
const outlivesPage = (name: CallName, body: string): boolean =>
  name === 'drafts/put' && new TextEncoder().encode(body).length <= MOST_BYTES_AFTER_LEAVING;

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
      const body = JSON.stringify(input);
      try {
        const response = await fetch(`/call/${name}`, {
          method: 'POST',
          headers: { 'content-type': 'application/json', authorization: `Bearer ${key}` },
          body,
          keepalive: outlivesPage(name, body),
        });
        if (response.status === 401) return refused();
        return (await response.json()) as Answer<ResultOf<N>>;
      } catch {
        return unreachable(NO_ANSWER);
      }
    },
  };
}
