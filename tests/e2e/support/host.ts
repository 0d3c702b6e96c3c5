import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';

const ENTRY = fileURLToPath(new URL('../../../electron/loopback/main.mjs', import.meta.url));
const ADDRESS_LIMIT_MS = 30_000;
const ADDRESS = /http:\/\/127\.0\.0\.1:\d+\/open#start=\S+/;

export interface Host {
  /** The address printed at the start. It opens one window. */
  readonly address: string;
  /** Presses Enter in the terminal. @returns the new address that is printed. */
  newAddress(): Promise<string>;
  /** Starts Trotwell again on the same folder with a backup. @returns the address that is printed. */
  openedWith(file: string): Promise<string>;
  /** Ends the host as Ctrl-C does. @returns its exit code. */
  stop(): Promise<number | null>;
}

/** Starts the loopback host as a process of its own, on a folder of its own. */
export async function startHost(folder: string): Promise<Host> {
  const env = { ...process.env, TROTWELL_DATA: folder };
  const child = spawn(process.execPath, [ENTRY], {
    env,
    stdio: ['pipe', 'pipe', 'pipe'],
  });
  let output = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream.on('data', (part: Buffer) => (output += part.toString()));
  }
  /** The next address in what is printed from now on. */
  async function printed(): Promise<string> {
    const from = output.length;
    const late = AbortSignal.timeout(ADDRESS_LIMIT_MS);
    for (;;) {
      const found = ADDRESS.exec(output.slice(from));
      // A line that is still being printed holds half an address.
      if (found !== null && output.slice(from).includes('\n', found.index)) return found[0];
      if (child.exitCode !== null) throw new Error(`The host ended. ${output}`);
      await Promise.race([
        once(child.stdout, 'data', { signal: late }),
        once(child, 'exit', { signal: late }),
      ]);
    }
  }
  const address = await printed();
  return {
    address,
    newAddress() {
      const next = printed();
      child.stdin.write('\n');
      return next;
    },
    openedWith(file) {
      const next = printed();
      spawn(process.execPath, [ENTRY, file], { env, stdio: 'ignore' });
      return next;
    },
    async stop() {
      if (child.exitCode !== null) return child.exitCode;
      child.kill('SIGINT');
      await once(child, 'exit');
      return child.exitCode;
    },
  };
}
