import type { EventEmitter } from 'node:events';
import type { Seen } from './seen.ts';

/**
 * The two worlds of a page and the line to main. What crosses the bridge is copied: plain values are
 * cloned, functions are replaced by ones that copy what they are given and what they answer, and
 * anything else is refused (the table of `contextBridge` in Electron's documentation).
 */
export function bridgeOf(seen: Seen, toPage: EventEmitter) {
  const ipcMain = {
    handle(channel: string, handler: (event: unknown, ...args: unknown[]) => unknown): void {
      if (seen.handlers.has(channel)) {
        throw new Error(`Attempted to register a second handler for '${channel}'`);
      }
      seen.handlers.set(channel, handler);
    },
  };
  const ipcRenderer = {
    async invoke(channel: string, ...args: unknown[]): Promise<unknown> {
      const handler = seen.handlers.get(channel);
      const event = { senderFrame: seen.senderFrame };
      seen.invoked = { channel, words: args.length };
      const copies = structuredClone(args);
      try {
        if (handler === undefined) throw new Error(`No handler registered for '${channel}'`);
        return structuredClone(await handler(event, ...copies));
      } catch (error) {
        // Only the words of an error come over.
        throw new Error(`Error invoking remote method '${channel}': ${String(error)}`, {
          cause: null,
        });
      }
    },
    on: (channel: string, listener: (...args: unknown[]) => void) => toPage.on(channel, listener),
  };
  const contextBridge = {
    exposeInMainWorld: (name: string, api: unknown): void =>
      void (seen.bridge = { name, api: across(api) }),
  };
  return { ipcMain, ipcRenderer, contextBridge };
}

type Anything = (...args: unknown[]) => unknown;

function across(value: unknown): unknown {
  if (typeof value === 'function') {
    return (...args: unknown[]): unknown => {
      const answer = (value as Anything)(...args.map(across));
      return answer instanceof Promise ? answer.then(across) : across(answer);
    };
  }
  if (typeof value === 'symbol') throw new TypeError('A symbol cannot cross the bridge');
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return value.map(across);
  const { prototype } = Object;
  if (Object.getPrototypeOf(value) !== prototype) return structuredClone(value);
  return Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, across(inner)]));
}
