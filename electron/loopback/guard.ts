import { createHash, timingSafeEqual } from 'node:crypto';

/** Compares in constant time, whatever the lengths. */
function equal(a: string, b: string): boolean {
  const digest = (text: string): Buffer => createHash('sha256').update(text).digest();
  return timingSafeEqual(digest(a), digest(b));
}

/** True when the request names this host as its own: keeps rebinding names and other pages out. */
export function sameHost(headers: Headers, port: number): boolean {
  const host = headers.get('host');
  if (host !== `127.0.0.1:${port}` && host !== `localhost:${port}`) return false;
  const origin = headers.get('origin');
  if (origin !== null && origin !== `http://${host}`) return false;
  const site = headers.get('sec-fetch-site');
  return site === null || site === 'same-origin' || site === 'none';
}

/** True when the request carries the key of this start. */
export function carriesKey(headers: Headers, key: string): boolean {
  const given = headers.get('authorization') ?? '';
  return given.startsWith('Bearer ') && equal(given.slice('Bearer '.length), key);
}
