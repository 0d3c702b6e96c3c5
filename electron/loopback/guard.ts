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
export const carriedKey = (headers: Headers): string =>
  keyIn(headers.get('authorization') ?? undefined);

/** The key in an Authorization header; empty when there is none. */
export function keyIn(authorization: string | undefined): string {
  const given = authorization ?? '';
  return given.startsWith('Bearer ') ? given.slice('Bearer '.length) : '';
}

/** True for a body that no plain form of another page can send. */
export function isJson(headers: Headers): boolean {
  return /^application\/json\s*(;|$)/i.test(headers.get('content-type') ?? '');
}

/** True for a file's bytes as they are; no plain form of another page can send this either. */
export function isFile(headers: Headers): boolean {
  return headers.get('content-type') === 'application/octet-stream';
}
