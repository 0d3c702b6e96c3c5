import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';

const ENTRY = fileURLToPath(new URL('../../../electron/loopback/main.mjs', import.meta.url));
const START_LIMIT_MS = 30_000;

export interface Host {
  /** The address with the key of this start. */
  readonly address: string;
  /** Ends the host as Ctrl-C does. @returns its exit code. */
  stop(): Promise<number | null>;
}

/** Starts the loopback host as a process of its own, on a folder of its own. */
export async function startHost(folder: string): Promise<Host> {
  const child = spawn(process.execPath, [ENTRY], {
    env: { ...process.env, TROTWELL_DATA: folder },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let output = '';
  child.stderr.on('data', (part: Buffer) => (output += part.toString()));
  const address = await new Promise<string>((resolve, reject) => {
    const late = setTimeout(
      () => reject(new Error(`No address in time. ${output}`)),
      START_LIMIT_MS,
    );
    child.stdout.on('data', (part: Buffer) => {
      output += part.toString();
      const found = /http:\/\/127\.0\.0\.1:\d+\/#key=\S+/.exec(output);
      if (found === null) return;
      clearTimeout(late);
      resolve(found[0]);
    });
    child.once('exit', () => {
      clearTimeout(late);
      reject(new Error(`The host ended. ${output}`));
    });
  });
  return {
    address,
    async stop() {
      if (child.exitCode !== null) return child.exitCode;
      child.kill('SIGINT');
      await once(child, 'exit');
      return child.exitCode;
    },
  };
}
