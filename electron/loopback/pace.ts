import type { IncomingMessage, Server } from 'node:http';

/** How long requests may take to arrive, in milliseconds. */
export interface Pace {
  /** For a call; and for a file, the longest silence. */
  readonly slowestRequestMs: number;
  /** For a file as a whole. */
  readonly slowestFileMs: number;
  /** True for a request that may bring a file: one that carries a key, at the address of files. */
  readonly bringsFile: (request: IncomingMessage) => boolean;
}

/**
 * Cuts off requests that take too long. Node knows one limit for all of them, which must leave a
 * large backup its time; so the shorter one for everything else is kept here.
 */
export function keepPace(server: Server, pace: Pace): void {
  server.requestTimeout = pace.slowestFileMs;
  server.headersTimeout = pace.slowestRequestMs;
  server.prependListener('request', (request) => {
    const { socket } = request;
    const mayGoOn = pace.bringsFile(request);
    let arrived = socket.bytesRead;
    const watch = setInterval(() => {
      if (!mayGoOn || socket.bytesRead === arrived) socket.destroy();
      arrived = socket.bytesRead;
    }, pace.slowestRequestMs);
    const stop = (): void => clearInterval(watch);
    request.once('end', stop);
    request.once('close', stop);
  });
}
