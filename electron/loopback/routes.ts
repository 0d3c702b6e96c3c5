import { createReadStream, readFileSync } from 'node:fs';
import type { IncomingMessage, RequestListener, ServerResponse } from 'node:http';
import { pipeline, Readable } from 'node:stream';
import type { CallName } from '../contract/contract.ts';
import type { Answer } from '../contract/errors.ts';
import { listAssets, type Asset } from '../service/frontEnd/assets.ts';
import { STRICT_HEADERS } from '../service/frontEnd/headers.ts';
import { isBeyond, type JsonLimits } from '../service/jsonLimits.ts';
import type { Service } from '../service/service.ts';
import type { Door } from './door.ts';
import { FILES_IN, receiveFile } from './files.ts';
import { carriedKey, isFile, isJson, sameHost } from './guard.ts';

/** Largest request: a draft of half a million characters, written as JSON. */
const MOST_BYTES = 4 * 1024 * 1024;
/** The fullest visit has some hundred parts, a few levels deep. Ours (D). */
const CALL_LIMITS: JsonLimits = { deepest: 64, mostParts: 100_000 };
/**
 * Where a start code is handed in: the page itself, answered as "not found", because browsers keep the
 * address of what was not found out of the history they show.
 */
export const OPENING = '/open';
/** A start code as JSON, with room to spare. */
const MOST_BYTES_OF_CODE = 1024;
const CALL = /^\/call\/([^/]+\/[^/]+)$/;
const FILE_OUT = /^\/files\/out\/([^/]+)$/;

export interface RouteOptions {
  readonly service: Service;
  /** Folder of the built front end. */
  readonly rendererFolder: string;
  /** Gives out the codes that open a window and the keys its requests carry. */
  readonly door: Door;
}

export interface HostState {
  port: number;
  closing: boolean;
}

/** What goes back. */
interface Reply {
  readonly status: number;
  readonly headers?: Readonly<Record<string, string>>;
  readonly content?: string | Buffer | Readable;
}

const json = (value: object, status = 200): Reply => ({
  status,
  headers: { 'content-type': 'application/json' },
  content: JSON.stringify(value),
});

/** Answers every request: the front end's files, the exchange of a start code, files and calls. */
export function answerRequests(options: RouteOptions, state: HostState): RequestListener {
  const assets = listAssets(options.rendererFolder);
  const replyTo = routes(options);
  return async (request, response) => {
    const path = request.url!.split('?', 1)[0]!;
    let reply: Reply = { status: 500 };
    try {
      reply = !sameHost(request, state.port)
        ? { status: 403 }
        : ((await replyTo(path, request, response)) ?? pageAt(path, request, assets));
    } catch {
      // Whoever broke off while the body was read hears nothing of it.
    }
    // A connection kept for later requests would keep the host from closing.
    if (state.closing) response.setHeader('connection', 'close');
    send(reply, response);
  };
}

function send({ status, headers, content }: Reply, response: ServerResponse): void {
  response.writeHead(status, { ...STRICT_HEADERS, ...headers });
  if (content instanceof Readable) pipeline(content, response, () => undefined);
  else response.end(content);
}

function pageAt(
  path: string,
  { method }: IncomingMessage,
  assets: ReadonlyMap<string, Asset>,
): Reply {
  const asset = assets.get(path === OPENING ? '/' : path);
  if (asset === undefined || (method !== 'GET' && method !== 'HEAD')) return { status: 404 };
  return {
    status: path === OPENING ? 404 : 200,
    headers: { 'content-type': asset.mediaType },
    // At once: in turns, a page would wait behind each call that is worked on between them.
    content: readFileSync(asset.file),
  };
}

/** What answers beside the pages; null to a request that asks for none of it. */
function routes({ service, door }: RouteOptions) {
  /** Files on their way: each goes out once, also to two who ask in the same moment. */
  const leaving = new Set<string>();

  async function exchange(request: IncomingMessage): Promise<Reply> {
    const body = await jsonBody(request, MOST_BYTES_OF_CODE);
    if (typeof body !== 'string') return body;
    const exchanged = door.exchange(codeIn(body));
    return exchanged.kind === 'key'
      ? json({ key: exchanged.key })
      : json({ refused: exchanged.kind }, 410);
  }

  async function fileIn(request: IncomingMessage): Promise<Reply> {
    if (!isFile(request.headers)) return { status: 415 };
    const { status, answer } = await receiveFile(service, request);
    return json(answer, status);
  }

  function fileOut(token: string, response: ServerResponse): Reply {
    const given = leaving.has(token) ? null : service.giveOut(token);
    if (given === null || !given.ok) return { status: 404 };
    const { file, bytes, done } = given.value;
    leaving.add(token);
    // One that was broken off stays for another try.
    response.once('finish', done).once('close', () => leaving.delete(token));
    const headers = {
      'content-type': 'application/octet-stream',
      'content-length': String(bytes),
      'content-disposition': 'attachment',
    };
    return { status: 200, headers, content: createReadStream(file) };
  }

  async function call(name: string, request: IncomingMessage): Promise<Reply> {
    const body = await jsonBody(request, MOST_BYTES);
    return typeof body === 'string' ? json(await answer(service, name as CallName, body)) : body;
  }

  return (path: string, request: IncomingMessage, response: ServerResponse) => {
    const { method, headers } = request;
    if (method === 'POST' && path === '/start') return exchange(request);
    const name = method === 'POST' ? CALL.exec(path)?.[1] : undefined;
    const token = method === 'GET' ? FILE_OUT.exec(path)?.[1] : undefined;
    const comesIn = method === 'POST' && path === FILES_IN;
    if (name === undefined && token === undefined && !comesIn) return null;
    if (!door.opens(carriedKey(headers))) return { status: 401 };
    if (name !== undefined) return call(name, request);
    return token === undefined ? fileIn(request) : fileOut(token, response);
  };
}

/** A body of JSON as text; the refusal where it is something else or longer than it may be. */
function jsonBody(request: IncomingMessage, mostBytes: number): Promise<string | Reply> {
  if (!isJson(request.headers)) return Promise.resolve({ status: 415 });
  const saidBytes = Number(request.headers['content-length'] ?? 0);
  if (saidBytes > mostBytes) return Promise.resolve({ status: 413 });
  return new Promise((resolve, reject) => {
    const parts: Buffer[] = [];
    let bytes = 0;
    request.on('data', (part: Buffer) => {
      bytes += part.length;
      // What is left of a longer one flows by: a sender hears the answer once it has sent.
      if (bytes > mostBytes) resolve({ status: 413 });
      else parts.push(part);
    });
    request.once('end', () => resolve(Buffer.concat(parts).toString()));
    request.once('error', reject);
  });
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
