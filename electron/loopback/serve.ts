import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { claimFolder, type Claim } from '../service/claim/claim.ts';
import { dataFolder } from '../service/database/dataFolder.ts';
import { takeOpened, whyNotTaken } from '../service/files/openedFile.ts';
import { createService, type Service } from '../service/service.ts';
import { createDoor } from './door.ts';
import { onEnter } from './enterKey.ts';
import { startHost, type Host, type HostOptions } from './host.ts';

// From `out/main/`, where this runs as built.
const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

export interface ServeOptions {
  /** Asks the system to open the address in its browser. */
  readonly open: boolean;
  readonly port?: number;
  /** The absolute path of a backup to open. */
  readonly file?: string;
}

const RUNS_ALREADY =
  'Trotwell is already running on these records; it has been asked to come to the front. Where it runs in a browser, a new address also stands in the terminal it was started from.';
const SILENT =
  'Trotwell is already running on these records, but does not react. Look for its window, or for the terminal it was started from; end it there and start again.';

/** The host cannot start; the message is a sentence for the terminal. */
export class StartError extends Error {}

/**
 * Serves until Ctrl-C or a request to end, then closes the database. Where Trotwell serves the same
 * records already, that one is asked to come to the front, and this start ends.
 * @throws StartError when the port is taken, the file cannot be opened, or the Trotwell that runs does
 *   not react.
 */
export async function serveUntilStopped(options: ServeOptions): Promise<void> {
  const file = options.file ?? null;
  const reason = file === null ? null : await whyNotTaken(file);
  if (reason !== null) throw new StartError(reason);
  const folder = resolve(dataFolder());
  const claimed = await claimFolder(folder, { file });
  if (claimed.kind === 'silent') throw new StartError(SILENT);
  if (claimed.kind === 'answered') console.log(RUNS_ALREADY);
  else await serveClaimed(folder, claimed.claim, options);
}

async function serveClaimed(folder: string, claim: Claim, options: ServeOptions): Promise<void> {
  const service = serviceIn(folder);
  const { port, open, file = null } = options;
  const door = createDoor();
  const host = await startOrExplain({
    ...{ service, rendererFolder: at('../../out/renderer'), door },
    ...(port === undefined ? {} : { port }),
  });
  // Listened for before the address is printed: whoever reads it may end the host at once.
  const ask = Promise.withResolvers<void>();
  const stopped = Promise.race([stopRequested(), ask.promise]);
  const windows = windowsOf(service, host, open);
  await windows.open(file);
  console.log('The address opens one window, within two minutes. Only this computer can reach it.');
  const enter = onEnter(() => console.log(`Trotwell is at ${host.newAddress()}`));
  console.log(
    enter === null
      ? 'Press Ctrl-C to close Trotwell; start it again for a new address.'
      : 'Press Enter for a new address, Ctrl-C to close Trotwell.',
  );
  claim.onLaterStart(({ file, end = false }) => (end ? ask.resolve() : void windows.open(file)));
  await stopped;
  enter?.stop();
  await host.close();
  await service.close();
  claim.release();
  console.log('Trotwell is closed.');
}

function serviceIn(folder: string): Service {
  const { version } = JSON.parse(readFileSync(at('../../package.json'), 'utf8')) as {
    version: string;
  };
  return createService({
    folder,
    fontsFolder: at('../../templates/fonts'),
    version,
    clock: () => new Date(),
    log: (line) => console.error(line),
  });
}

/** Opens windows: the first one, and one for every later start on the same records. */
function windowsOf(service: Service, host: Host, inBrowser: boolean) {
  /** Where the window is to go; its first page for a file that cannot be taken in. */
  async function routeTo(file: string | null): Promise<string> {
    if (file === null) return '';
    const answer = await takeOpened(service.takeIn, file);
    if (answer.ok) return answer.value.route;
    console.error(answer.error.message);
    return '';
  }

  return {
    async open(file: string | null): Promise<void> {
      const address = host.newAddress(await routeTo(file));
      console.log(`Trotwell is at ${address}`);
      if (inBrowser) openInBrowser(address);
    },
  };
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
