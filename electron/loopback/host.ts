import type { IncomingMessage, Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { keepCrowdOut } from './crowd.ts';
import { FILES_IN } from './files.ts';
import { carriedKey } from './guard.ts';
import { keepPace } from './pace.ts';
import { answerRequests, OPENING, type HostState, type RouteOptions } from './routes.ts';

const SLOWEST_REQUEST_MS = 10_000;
/** A hundred gigabytes from and to the same disk. Silence is cut off long before. Ours (D). */
const SLOWEST_FILE_MS = 4 * 60 * 60_000;
/** How long answers under way may take once the host is asked to close. */
const CLOSE_LIMIT_MS = 5_000;
/** A browser may stop reading while it writes a large file to a slow stick. Ours (D). */
const SILENT_READER_MS = 60_000;
/** A window has at most six at once; the limit of open files is often 1,024. Ours (D). */
const MOST_STRANGERS = 128;

export interface HostOptions extends RouteOptions {
  /** 0 or absent for any free port. */
  readonly port?: number;
  /** How long a request may take to arrive, in milliseconds; slower ones are cut off. */
  readonly slowestRequestMs?: number;
  /** The same for a file as a whole, in milliseconds. */
  readonly slowestFileMs?: number;
  /** How long the reader of an answer may take nothing, in milliseconds. */
  readonly silentReaderMs?: number;
}

export interface Host {
  readonly port: number;
  /**
   * An address that opens one window, for a short time. Its code is in the fragment, which browsers
   * do not send. The address given before it no longer opens anything.
   * @param route the page it opens, with a leading slash; the first one where left out
   */
  newAddress(route?: string): string;
  close(): Promise<void>;
}

/** Serves the front end and the contract's calls on 127.0.0.1 only. */
export async function startHost(options: HostOptions): Promise<Host> {
  const state: HostState = { port: 0, closing: false };
  const slowest = options.slowestRequestMs ?? SLOWEST_REQUEST_MS;
  // Imported, Node's server would bring along the client of its fetch: a seventh of the start.
  const { createServer } = process.getBuiltinModule('node:http');
  // Node looks for late requests at this interval only.
  const server = createServer({ connectionsCheckingInterval: slowest / 4 });
  server.on('request', answerRequests(options, state));
  const hasKey = ({ headers }: IncomingMessage): boolean => options.door.opens(carriedKey(headers));
  keepCrowdOut(server, MOST_STRANGERS, hasKey);
  keepPace(server, {
    slowestRequestMs: slowest,
    slowestFileMs: options.slowestFileMs ?? SLOWEST_FILE_MS,
    silentReaderMs: options.silentReaderMs ?? SILENT_READER_MS,
    bringsFile: (request) => request.url === FILES_IN && hasKey(request),
  });
  server.on('upgrade', (_request, socket) => socket.destroy());
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(options.port ?? 0, '127.0.0.1', resolve);
  });
  const { port } = server.address() as AddressInfo;
  state.port = port;
  return {
    port,
    newAddress: (route = '') =>
      `http://127.0.0.1:${port}${OPENING}#start=${options.door.newCode()}${route === '' ? '' : `&${route}`}`,
    close() {
      state.closing = true;
      return closeServer(server);
    },
  };
}

/** Takes no new request, lets answers under way go out, and cuts off what is left after a while. */
function closeServer(server: Server): Promise<void> {
  return new Promise((resolve, reject) => {
    const cutOff = setTimeout(() => server.closeAllConnections(), CLOSE_LIMIT_MS);
    server.close((error) => {
      clearTimeout(cutOff);
      if (error === undefined) resolve();
      else reject(error);
    });
    server.closeIdleConnections();
  });
}
