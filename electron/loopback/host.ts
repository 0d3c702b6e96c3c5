import { readFileSync } from 'node:fs';
import { createAdaptorServer, type HttpBindings } from '@hono/node-server';
import { Hono, type MiddlewareHandler } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import type { AddressInfo } from 'node:net';
import type { IncomingMessage, Server } from 'node:http';
import type { CallName } from '../contract/contract.ts';
import type { Answer } from '../contract/errors.ts';
import type { Service } from '../service/service.ts';
import { listAssets } from '../service/frontEnd/assets.ts';
import { keepCrowdOut } from './crowd.ts';
import type { Door } from './door.ts';
import { FILES_IN, receiveFile, sendFile } from './files.ts';
import { carriedKey, isFile, isJson, keyIn, sameHost } from './guard.ts';
import { keepPace } from './pace.ts';
import { isBeyond, type JsonLimits } from '../service/jsonLimits.ts';
import { STRICT_HEADERS } from '../service/frontEnd/headers.ts';

/** Largest request: a draft of half a million characters, written as JSON. */
const MOST_BYTES = 4 * 1024 * 1024;
/** The fullest visit has some hundred parts, a few levels deep. Ours (D). */
const CALL_LIMITS: JsonLimits = { deepest: 64, mostParts: 100_000 };
/**
 * Where a start code is handed in: the page itself, answered as "not found", because browsers keep the
 * address of what was not found out of the history they show.
 */
const OPENING = '/open';
/** A start code as JSON, with room to spare. */
const MOST_BYTES_OF_CODE = 1024;
const SLOWEST_REQUEST_MS = 10_000;
/** A hundred gigabytes from and to the same disk. Silence is cut off long before. Ours (D). */
const SLOWEST_FILE_MS = 4 * 60 * 60_000;
/** How long answers under way may take once the host is asked to close. */
const CLOSE_LIMIT_MS = 5_000;
/** A browser may stop reading while it writes a large file to a slow stick. Ours (D). */
const SILENT_READER_MS = 60_000;
/** A window has at most six at once; the limit of open files is often 1,024. Ours (D). */
const MOST_STRANGERS = 128;

export interface HostOptions {
  readonly service: Service;
  /** Folder of the built front end. */
  readonly rendererFolder: string;
  /** Gives out the codes that open a window and the keys its requests carry. */
  readonly door: Door;
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

interface HostState {
  port: number;
  closing: boolean;
}

/** Serves the front end and the contract's calls on 127.0.0.1 only. */
export async function startHost(options: HostOptions): Promise<Host> {
  const state: HostState = { port: 0, closing: false };
  const app = buildApp(options, state);
  const slowest = options.slowestRequestMs ?? SLOWEST_REQUEST_MS;
  const server = createAdaptorServer({
    fetch: app.fetch,
    // Node looks for late requests at this interval only.
    serverOptions: { connectionsCheckingInterval: slowest / 4 },
  }) as Server;
  const hasKey = ({ headers }: IncomingMessage): boolean =>
    options.door.opens(keyIn(headers.authorization));
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

function buildApp(options: HostOptions, state: HostState): Hono<{ Bindings: HttpBindings }> {
  const assets = listAssets(options.rendererFolder);
  const app = new Hono<{ Bindings: HttpBindings }>();
  app.use(async (context, next) => {
    if (!sameHost(context.req.raw.headers, state.port))
      context.res = new Response(null, { status: 403 });
    else await next();
    for (const [name, value] of Object.entries(STRICT_HEADERS))
      context.res.headers.set(name, value);
    // A connection kept for later requests would keep the host from closing.
    if (state.closing) context.res.headers.set('connection', 'close');
  });
  const jsonOnly: MiddlewareHandler = async (context, next) => {
    if (!isJson(context.req.raw.headers)) return context.body(null, 415);
    await next();
  };
  const atMost = (maxSize: number) =>
    bodyLimit({ maxSize, onError: (context) => context.body(null, 413) });
  app.post('/start', jsonOnly, atMost(MOST_BYTES_OF_CODE), async (context) => {
    const exchanged = options.door.exchange(codeIn(await context.req.text()));
    return exchanged.kind === 'key'
      ? context.json({ key: exchanged.key })
      : context.json({ refused: exchanged.kind }, 410);
  });
  const withKey: MiddlewareHandler = async (context, next) => {
    if (!options.door.opens(carriedKey(context.req.raw.headers))) return context.body(null, 401);
    await next();
  };
  app.post(FILES_IN, withKey, async (context) => {
    if (!isFile(context.req.raw.headers)) return context.body(null, 415);
    const { status, answer } = await receiveFile(options.service, context.env.incoming);
    return context.json(answer, status);
  });
  /** Files on their way: each goes out once, also to two who ask in the same moment. */
  const leaving = new Set<string>();
  app.get('/files/out/:token', withKey, (context) => {
    const token = context.req.param('token');
    const file = leaving.has(token) ? null : sendFile(options.service, token);
    if (file === null) return context.body(null, 404);
    leaving.add(token);
    // One that was broken off stays for another try.
    context.env.outgoing.once('finish', file.done).once('close', () => leaving.delete(token));
    return context.body(file.content, 200, {
      'content-type': 'application/octet-stream',
      'content-length': String(file.bytes),
      'content-disposition': 'attachment',
    });
  });
  app.post('/call/:domain/:action', withKey, jsonOnly, atMost(MOST_BYTES), async (context) => {
    const name = `${context.req.param('domain')}/${context.req.param('action')}` as CallName;
    return context.json(await answer(options.service, name, await context.req.text()));
  });
  app.get('*', (context) => {
    const { path } = context.req;
    const asset = assets.get(path === OPENING ? '/' : path);
    if (asset === undefined) return context.body(null, 404);
    const status = path === OPENING ? 404 : 200;
    // At once: in turns, a page would wait behind each call that is worked on between them.
    return context.body(readFileSync(asset.file), status, { 'content-type': asset.mediaType });
  });
  app.notFound((context) => context.body(null, 404));
  app.onError((_error, context) => context.body(null, 500));
  return app;
}

/** The code in the body of an exchange; empty, which opens nothing, for anything else. */
function codeIn(body: string): string {
  try {
    const { code } = JSON.parse(body) as { readonly code?: unknown };
    return typeof code === 'string' ? code : '';
  } catch {
    return '';
  }
}

async function answer(service: Service, name: CallName, body: string): Promise<Answer<unknown>> {
  if (isBeyond(body, CALL_LIMITS)) {
    return {
      ok: false,
      error: { kind: 'input', message: 'The request holds more, or deeper, than any call takes.' },
    };
  }
  let input: unknown;
  try {
    input = JSON.parse(body);
  } catch {
    return { ok: false, error: { kind: 'input', message: 'The request is not JSON.' } };
  }
  return service.call(name, input as never);
}
