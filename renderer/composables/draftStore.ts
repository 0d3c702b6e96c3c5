import type { Client } from '../api/client.ts';

/** What a draft keeps: the form's values, the text as typed, and when. */
export interface KeptDraft {
  readonly values: unknown;
  readonly typed: Record<string, string>;
  readonly savedAt: string;
}

const PREFIX = 'trotwell:draft:';

/** What is still on its way to the service, by client. */
const onTheWay = new WeakMap<Client, Promise<unknown>>();

/**
 * Sends one change after the other: two calls on two connections may arrive in either order, and a
 * draft that arrives after it was dropped would come back as input never saved.
 */
function inTurn<T>(client: Client, send: () => Promise<T>): Promise<T> {
  const turn = draftsKept(client).then(send);
  onTheWay.set(client, turn);
  return turn;
}

/** Resolves when the service has taken every draft given to it so far. */
export async function draftsKept(client: Client): Promise<void> {
  await onTheWay.get(client);
}

/**
 * Drafts lie in two places: this window's session storage, written at once, and the service,
 * written shortly after. The first survives a reload and a service that is gone; the second
 * survives closing the window.
 */
export function draftStore(client: Client, practiceName: string, key: string) {
  const local = `${PREFIX}${practiceName}:${key}`;
  return {
    keepHere(draft: KeptDraft): void {
      sessionStorage.setItem(local, JSON.stringify(draft));
    },
    async keepThere(draft: KeptDraft): Promise<boolean> {
      const json = JSON.stringify(draft);
      return (await inTurn(client, () => client.call('drafts/put', { key, json }))).ok;
    },
    async find(): Promise<KeptDraft | null> {
      const here = readDraft(sessionStorage.getItem(local));
      if (here !== null) return here;
      const there = await client.call('drafts/get', { key });
      return there.ok && there.value !== null ? readDraft(there.value.json) : null;
    },
    async drop(): Promise<void> {
      sessionStorage.removeItem(local);
      await inTurn(client, () => client.call('drafts/drop', { key }));
    },
  };
}

function readDraft(json: string | null): KeptDraft | null {
  if (json === null) return null;
  try {
    const draft = JSON.parse(json) as Partial<KeptDraft> | null;
    if (typeof draft !== 'object' || draft === null) return null;
    if (typeof draft.values !== 'object' || typeof draft.savedAt !== 'string') return null;
    return { values: draft.values, typed: draft.typed ?? {}, savedAt: draft.savedAt };
  } catch {
    return null; // a draft that cannot be read is no draft
  }
}

/**
 * `kept` laid over `base`, key by key, so that a draft of an older shape cannot break a form:
 * unknown keys and values of another type are left out.
 */
export function layOver<T>(base: T, kept: unknown): T {
  if (base === null || base === undefined) return (kept ?? base) as T;
  if (kept === null) return typeof base === 'object' ? base : (kept as T);
  if (Array.isArray(base)) return (Array.isArray(kept) ? kept : base) as T;
  if (typeof base !== 'object') return (typeof kept === typeof base ? kept : base) as T;
  if (typeof kept !== 'object') return base;
  const source = kept as Record<string, unknown>;
  return Object.fromEntries(
    Object.entries(base).map(([key, value]) => [
      key,
      key in source ? layOver(value, source[key]) : value,
    ]),
  ) as T;
}
