import type { IncomingMessage, Server, ServerResponse } from 'node:http';

/** How long a connection may stand still, in milliseconds. */
export interface Pace {
  /** For a call to arrive whole; and for a file, the longest silence of its sender. */
  readonly slowestRequestMs: number;
  /** For a file to arrive as a whole. */
  readonly slowestFileMs: number;
  /** For an answer under way: how long its reader may take nothing. */
  readonly silentReaderMs: number;
  /** True for a request that may bring a file: one that carries a key, at the address of files. */
  readonly bringsFile: (request: IncomingMessage) => boolean;
}

/**
 * Cuts off whoever stands still. A request has to arrive in time; a file that comes or goes may take
 * as long as it likes while something moves, and the work between them is nobody's silence.
 */
export function keepPace(server: Server, pace: Pace): void {
  server.requestTimeout = pace.slowestFileMs;
  server.headersTimeout = pace.slowestRequestMs;
  server.prependListener('request', (request, response) => watch(request, response, pace));
}

function watch(request: IncomingMessage, response: ServerResponse, pace: Pace): void {
  const { socket } = request;
  const mayTakeTime = pace.bringsFile(request);
  let arrived = socket.bytesRead;
  let sent = socket.bytesWritten;
  let silentMs = 0;

  function look(): void {
    if (!request.complete) {
      // What lies here unread waits for the disk, not for its sender.
      const moves = socket.bytesRead !== arrived || request.readableLength > 0;
      if (!mayTakeTime || !moves) socket.destroy();
      arrived = socket.bytesRead;
      return;
    }
    if (response.closed) {
      stop();
      return;
    }
    const waits = socket.writableLength > 0 && socket.bytesWritten === sent;
    silentMs = waits ? silentMs + pace.slowestRequestMs : 0;
    if (silentMs >= pace.silentReaderMs) socket.destroy();
    sent = socket.bytesWritten;
  }

  const timer = setInterval(look, pace.slowestRequestMs);
  const stop = (): void => {
    clearInterval(timer);
    socket.off('close', stop);
  };
  // A request that was refused before its body was read ends with its connection only.
  socket.once('close', stop);
  response.once('close', () => {
    if (request.complete) stop();
  });
}
