import { request as httpRequest } from 'node:http';
import { connect } from 'node:net';

export interface Reply {
  readonly status: number;
  readonly headers: Record<string, string | string[] | undefined>;
  readonly body: string;
}

export interface RawRequest {
  readonly port: number;
  readonly method?: string;
  readonly path: string;
  readonly headers?: Record<string, string>;
  readonly body?: string;
}

/** A raw request: unlike fetch it lets a test choose Host and path freely. */
export function send(options: RawRequest): Promise<Reply> {
  const { port, method = 'GET', path, headers = {} } = options;
  return new Promise((resolve, reject) => {
    const request = httpRequest({ host: '127.0.0.1', port, method, path, headers }, (response) => {
      let body = '';
      response.setEncoding('utf8').on('data', (chunk: string) => (body += chunk));
      response.on('end', () =>
        resolve({ status: response.statusCode ?? 0, headers: response.headers, body }),
      );
    });
    request.on('error', reject);
    request.end(options.body);
  });
}

export interface Line {
  write(text: string): void;
  /** Hangs up. */
  end(): void;
  /** What has come back so far. */
  text(): string;
  /** True while the other end listens. */
  open(): boolean;
  /** Resolves when the other end hangs up. */
  readonly ended: Promise<void>;
  next(): Promise<void>;
}

/** A bare connection, for requests no client library would send. */
export function openLine(port: number): Line {
  const socket = connect(port, '127.0.0.1');
  let received = '';
  // A host that cuts off a sender resets the connection.
  socket.on('error', () => undefined);
  socket.on('data', (part: Buffer) => (received += part.toString()));
  return {
    write: (text) => void socket.write(text),
    end: () => void socket.destroy(),
    text: () => received,
    open: () => socket.writable,
    ended: new Promise((resolve) => socket.on('close', () => resolve())),
    next: () => new Promise((resolve) => socket.once('data', () => resolve())),
  };
}

/** True when something listens at the address. */
export function reaches(address: string, port: number): Promise<boolean> {
  return new Promise((resolve) => {
    const socket = connect({ host: address, port, timeout: 2_000 });
    const end = (reached: boolean) => {
      socket.destroy();
      resolve(reached);
    };
    socket.once('connect', () => end(true));
    socket.once('error', () => end(false));
    socket.once('timeout', () => end(false));
  });
}
