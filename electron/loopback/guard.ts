import type { IncomingHttpHeaders, IncomingMessage } from 'node:http';

/** True when the request names this host as its own: keeps rebinding names and other pages out. */
export function sameHost({ headers, headersDistinct }: IncomingMessage, port: number): boolean {
  // Of a name that stands twice Node keeps the first.
  const [host, another] = headersDistinct['host'] ?? [];
  if (another !== undefined) return false;
  if (host !== `127.0.0.1:${port}` && host !== `localhost:${port}`) return false;
  const { origin, 'sec-fetch-site': site = 'none' } = headers;
  if (origin !== undefined && origin !== `http://${host}`) return false;
  return site === 'same-origin' || site === 'none';
}

/** The key in a request's Authorization header; empty when it carries none. */
export function carriedKey({ authorization = '' }: IncomingHttpHeaders): string {
  return authorization.startsWith('Bearer ') ? authorization.slice('Bearer '.length) : '';
}

/** True for a body that no plain form of another page can send. */
export function isJson(headers: IncomingHttpHeaders): boolean {
  return /^application\/json\s*(;|$)/i.test(headers['content-type'] ?? '');
}

/** True for a file's bytes as they are; no plain form of another page can send this either. */
export function isFile(headers: IncomingHttpHeaders): boolean {
  return headers['content-type'] === 'application/octet-stream';
}
