import { spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { dataFolder } from '../service/dataFolder.ts';
import { createService } from '../service/service.ts';
import { startHost } from './host.ts';

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

export interface ServeOptions {
  readonly openBrowser: boolean;
  readonly port?: number;
}

/** Serves until Ctrl-C or a request to end, then closes the database and ends the process. */
export async function serveUntilStopped(options: ServeOptions): Promise<void> {
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
  const host = await startHost({
    service,
    rendererFolder: at('../../out/renderer'),
    key: randomBytes(32).toString('base64url'),
    ...(options.port === undefined ? {} : { port: options.port }),
  });
  const stopped = stopRequested();
  console.log(`Trotwell is at ${host.address}`);
  console.log('Only this computer can reach it. Press Ctrl-C to close it.');
  if (options.openBrowser) openInBrowser(host.address);
  await stopped;
  await host.close();
  await service.close();
  console.log('Trotwell is closed.');
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
