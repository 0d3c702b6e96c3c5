const STORED = 'trotwell:key';

/** Why a browser window has no key. */
export type RefusedBecause =
  /** Opened by hand, or by an earlier start whose key the host no longer knows. */
  | 'no-key'
  /** Its address was opened before. */
  | 'used'
  /** Its address is too old. */
  | 'late';

export type SessionKey =
  | { readonly key: string; readonly refused: null }
  | { readonly key: null; readonly refused: RefusedBecause };

/** What of a browser window is needed here. */
export type Tab = Pick<
  Window & typeof globalThis,
  'location' | 'history' | 'sessionStorage' | 'fetch'
>;

/**
 * The key of this tab. A start code in the address (`#start=…`, and after an `&` the page to open) is
 * taken out before anything else reads it, and exchanged for a key that stays in the tab's session
 * storage, so that a reload needs no new one. Must run before the router starts.
 */
export async function openSession(tab: Tab): Promise<SessionKey> {
  const { location, history, sessionStorage: store } = tab;
  const [, code, route = '/'] = /^#start=([^&]+)(?:&(\/.*))?/.exec(location.hash) ?? [];
  if (code === undefined) return kept(store, 'no-key');
  history.replaceState(history.state, '', `/${location.search}#${route}`);
  const exchanged = await exchange(tab, code);
  if (exchanged.key === null) return exchanged;
  store.setItem(STORED, exchanged.key);
  return exchanged;
}

function kept(store: Storage, otherwise: RefusedBecause): SessionKey {
  const key = store.getItem(STORED);
  return key === null ? { key, refused: otherwise } : { key, refused: null };
}

async function exchange(tab: Tab, code: string): Promise<SessionKey> {
  try {
    const response = await tab.fetch('/start', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ code }),
    });
    const answer = (await response.json()) as { key?: string; refused?: RefusedBecause };
    return answer.key === undefined
      ? { key: null, refused: answer.refused ?? 'no-key' }
      : { key: answer.key, refused: null };
  } catch {
    return { key: null, refused: 'no-key' };
  }
}
