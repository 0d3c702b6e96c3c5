// Entry of the loopback host. Plain JavaScript: it must be able to tell an old Node what is missing.
import { realpathSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { keepCompiled } from '../launch/compiled.mjs';
import { refuseOldNode } from '../launch/node.mjs';
import { optionsOrEnd } from '../launch/options.mjs';

/**
 * Serves Trotwell on 127.0.0.1 until Ctrl-C.
 * @param {{ open: boolean, port?: number, file?: string }} options `open` asks the system for a
 *   browser; `file` is a backup to open
 */
export async function serve(options) {
  refuseOldNode();
  keepCompiled();
  const { serveUntilStopped, StartError } = await import('./serve.ts');
  try {
    await serveUntilStopped(options);
  } catch (error) {
    if (!(error instanceof StartError)) throw error;
    console.error(error.message);
    process.exitCode = 1;
  }
}

/** Asks the Trotwell that works on the records to end, where the system has no signal for it. */
export async function askToEnd() {
  const requests = await import('../service/claim/requests.ts');
  const { dataFolder } = await import('../service/dataFolder.ts');
  requests.askToEnd(dataFolder());
}

const [, script] = process.argv;
if (script !== undefined && realpathSync(script) === fileURLToPath(import.meta.url)) {
  await serve(optionsOrEnd());
}
