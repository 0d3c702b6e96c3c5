const STORED = 'trotwell:key';

/**
 * Takes the loopback host's key out of the address (`#key=…`) into this tab's session storage, so
 * that it is neither bookmarked nor seen by the router. Must run before the router starts.
 * @returns the key of this tab, or null when the tab was opened without one.
 */
export function takeSessionKey(place: Location, history: History, store: Storage): string | null {
  const given = /^#key=([^&]+)/.exec(place.hash);
  if (given?.[1] !== undefined) {
    store.setItem(STORED, decodeURIComponent(given[1]));
    history.replaceState(history.state, '', `${place.pathname}${place.search}#/`);
  }
  return store.getItem(STORED);
}
