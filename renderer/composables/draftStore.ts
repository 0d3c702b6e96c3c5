import type { Client } from '../api/client.ts';

/** What a draft keeps: the form's values, the text as typed, and when. */
export interface KeptDraft {
  readonly values: unknown;
  readonly typed: Record<string, string>;
  readonly savedAt: string;
}

/** What is still on its way to the service, by client. */
const onTheWay = new WeakMap<Client, Promise<unknown>>();

/** A draft the service has not taken yet. */
interface Untaken {
  readonly draft: KeptDraft;
  /** True once the service was asked and did not take it. */
  refused: boolean;
}

/** What the service has not taken yet, by client, practice and key. */
const untaken = new WeakMap<Client, Map<string, Untaken>>();

function untakenOf(client: Client): Map<string, Untaken> {
  const found = untaken.get(client) ?? new Map<string, Untaken>();
  untaken.set(client, found);
  return found;
}

/**
 * Sends one change after the other: two calls on two connections may arrive in either order, and a
 * draft that arrives after it was dropped would come back as input never saved.
 */
function inTurn<T>(client: Client, send: () => Promise<T>): Promise<T> {
  const turn = draftsKept(client).then(send);
  onTheWay.set(client, turn);
  return turn;
}

/** Sends without waiting for a turn, which a window that is left does not live to see. */
function atOnce<T>(client: Client, send: () => Promise<T>): Promise<T> {
  const sent = send();
  onTheWay.set(client, Promise.allSettled([onTheWay.get(client), sent]));
  return sent;
}

/** Resolves when the service has taken every draft given to it so far. */
export async function draftsKept(client: Client): Promise<void> {
  await onTheWay.get(client);
}

/** True while something typed would be lost with this window: the service does not take it. */
export function wouldLoseDrafts(client: Client): boolean {
  return [...untakenOf(client).values()].some(({ refused }) => refused);
}

/**
 * Drafts lie in the service, written shortly after they change, so that they survive the window.
 * What it has not taken yet lies in this window's memory, and nowhere in the browser's own files:
 * no erasure would reach those.
 */
export function draftStore(client: Client, practiceName: string, key: string) {
  const local = `${practiceName}:${key}`;
  const here = untakenOf(client);
  return {
    keepHere(draft: KeptDraft): void {
      here.set(local, { draft, refused: false });
    },
    /** @param leaving true where the window is about to go */
    async keepThere(draft: KeptDraft, leaving = false): Promise<boolean> {
      const json = JSON.stringify(draft);
      const send = leaving ? atOnce : inTurn;
      const { ok } = await send(client, () => client.call('drafts/put', { key, json }));
      const waiting = here.get(local);
      if (waiting?.draft === draft) {
        if (ok) here.delete(local);
        else waiting.refused = true;
      }
      return ok;
    },
    async find(): Promise<KeptDraft | null> {
      const waiting = here.get(local);
      if (waiting !== undefined) return waiting.draft;
      const there = await client.call('drafts/get', { key });
      return there.ok && there.value !== null ? readDraft(there.value.json) : null;
    },
    async drop(): Promise<void> {
      here.delete(local);
      await inTurn(client, () => client.call('drafts/drop', { key }));
    },
  };
}

function readDraft(json: string): KeptDraft | null {
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

/** What differs in `now` from `began`, laid over `base`: lists and single values as a whole. */
export function changedOver<T>(base: T, began: T, now: T): T {
  if (JSON.stringify(now) === JSON.stringify(began)) return base;
  if (!isPlain(base) || !isPlain(began) || !isPlain(now)) return now;
  return Object.fromEntries(
    Object.entries(base).map(([key, value]) => [key, changedOver(value, began[key], now[key])]),
  ) as T;
}

const isPlain = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
