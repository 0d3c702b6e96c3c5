// Entry of the loopback host as built: from source, Node would read some seven hundred files one by
// one. Plain JavaScript: it must be able to tell an old Node what is missing.
import { realpathSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { isWhole } from '../launch/build.mjs';
import { keepCompiled } from '../launch/compiled.mjs';
import { refuseOldNode } from '../launch/node.mjs';
import { optionsOrEnd } from '../launch/options.mjs';

const ROOT = new URL('../../', import.meta.url);

/**
 * Serves Trotwell on 127.0.0.1 until Ctrl-C.
 * @param {{ open: boolean, port?: number, file?: string }} options `open` asks the system for a
 *   browser; `file` is a backup to open
 */
export async function serve(options) {
  refuseOldNode();
  if (!isWhole(fileURLToPath(ROOT))) {
    console.error('Trotwell is not built yet: "npm start" builds it and opens it.');
    process.exitCode = 1;
    return;
  }
  keepCompiled();
  /** @type {typeof import('./serve.ts')} */
  const { serveUntilStopped, StartError } = await import(
    new URL('out/main/loopback.js', ROOT).href
  );
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
  const { dataFolder } = await import('../service/database/dataFolder.ts');
  requests.askToEnd(dataFolder());
}

const [, script] = process.argv;
if (script !== undefined && realpathSync(script) === fileURLToPath(import.meta.url)) {
  await serve(optionsOrEnd());
}
