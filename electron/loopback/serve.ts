import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { dataFolder } from '../service/dataFolder.ts';
import { createService } from '../service/service.ts';
import { createDoor } from './door.ts';
import { onEnter } from './enterKey.ts';
import { startHost, type Host, type HostOptions } from './host.ts';

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

export interface ServeOptions {
  /** Asks the system to open the address in its browser. */
  readonly open: boolean;
  readonly port?: number;
}

/** The host cannot start; the message is a sentence for the terminal. */
export class StartError extends Error {}

/**
 * Serves until Ctrl-C or a request to end, then closes the database.
 * @throws StartError when there is nothing built to serve, or the port is taken.
 */
export async function serveUntilStopped(options: ServeOptions): Promise<void> {
  const rendererFolder = at('../../out/renderer');
  if (!existsSync(rendererFolder)) {
    throw new StartError('Trotwell is not built yet: "npm start" builds it and opens it.');
  }
  const { version } = JSON.parse(readFileSync(at('../../package.json'), 'utf8')) as {
    version: string;
  };
  const service = createService({
    folder: dataFolder(),
    fontsFolder: at('../../templates/fonts'),
    version,
    clock: () => new Date(),
    log: (line) => console.error(line),
  });
  const host = await startOrExplain({
    service,
    rendererFolder,
    door: createDoor(),
    ...(options.port === undefined ? {} : { port: options.port }),
  });
  // Listened for before the address is printed: whoever reads it may end the host at once.
  const stopped = stopRequested();
  const address = host.newAddress();
  console.log(`Trotwell is at ${address}`);
  console.log('The address opens one window, within two minutes. Only this computer can reach it.');
  const enter = onEnter(() => console.log(`Trotwell is at ${host.newAddress()}`));
  console.log(
    enter === null
      ? 'Press Ctrl-C to close Trotwell; start it again for a new address.'
      : 'Press Enter for a new address, Ctrl-C to close Trotwell.',
  );
  if (options.open) openInBrowser(address);
  await stopped;
  enter?.stop();
  await host.close();
  await service.close();
  console.log('Trotwell is closed.');
}

async function startOrExplain(options: HostOptions): Promise<Host> {
  try {
    return await startHost(options);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code !== 'EADDRINUSE' && code !== 'EACCES') throw error;
    throw new StartError(
      `Port ${options.port} is not free for Trotwell; without --port it takes one that is.`,
    );
  }
}

function stopRequested(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
      process.once(signal, () => resolve());
    }
  });
}

/** Asks the system to open the address; a system without a browser leaves the printed line. */
function openInBrowser(address: string): void {
  const [command, ...before] =
    process.platform === 'darwin'
      ? ['open']
      : process.platform === 'win32'
        ? ['rundll32', 'url.dll,FileProtocolHandler']
        : ['xdg-open'];
  const child = spawn(command!, [...before, address], { stdio: 'ignore', detached: true });
  child.on('error', () => undefined);
  child.unref();
}
