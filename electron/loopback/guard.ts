/** True when the request names this host as its own: keeps rebinding names and other pages out. */
export function sameHost(headers: Headers, port: number): boolean {
  const host = headers.get('host');
  if (host !== `127.0.0.1:${port}` && host !== `localhost:${port}`) return false;
  const origin = headers.get('origin');
  if (origin !== null && origin !== `http://${host}`) return false;
  const site = headers.get('sec-fetch-site');
  return site === null || site === 'same-origin' || site === 'none';
}

/** The key a request carries; empty when it carries none. */
export function carriedKey(headers: Headers): string {
  const given = headers.get('authorization') ?? '';
  return given.startsWith('Bearer ') ? given.slice('Bearer '.length) : '';
}

/** True for a body that no plain form of another page can send. */
export function isJson(headers: Headers): boolean {
  return /^application\/json\s*(;|$)/i.test(headers.get('content-type') ?? '');
}
