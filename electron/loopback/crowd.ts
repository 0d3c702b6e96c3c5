import type { IncomingMessage, Server } from 'node:http';
import type { Socket } from 'node:net';

/**
 * Keeps a crowd of connections from using up the files a process may open: of those that have not
 * shown a key yet, the oldest make room for new ones.
 * @param most how many without a key stay
 * @param hasKey true for a request that carries a key given out by this host
 */
export function keepCrowdOut(
  server: Server,
  most: number,
  hasKey: (request: IncomingMessage) => boolean,
): void {
  const strangers = new Set<Socket>();
  server.on('connection', (socket) => {
    strangers.add(socket);
    socket.once('close', () => strangers.delete(socket));
    const [oldest] = strangers;
    if (strangers.size > most) oldest?.destroy();
  });
  server.prependListener('request', (request) => {
    if (hasKey(request)) strangers.delete(request.socket);
  });
}
