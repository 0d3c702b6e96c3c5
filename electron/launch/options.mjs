import { parseArgs } from 'node:util';

/**
 * Reads the words after `npm start --`.
 * @param {readonly string[]} args
 * @returns {{ browser: boolean, open: boolean, port?: number }}
 * @throws {Error} with a sentence for the terminal when a word is not known or not acceptable
 */
export function readOptions(args) {
  const { values } = parseArgs({
    args: [...args],
    options: {
      browser: { type: 'boolean', default: false },
      open: { type: 'boolean', default: false },
      port: { type: 'string' },
    },
  });
  const { browser, open, port } = values;
  if (port === undefined) return { browser, open };
  const number = Number(port);
  if (!/^\d+$/.test(port) || number > 65_535) {
    throw new Error(
      `--port must be a whole number from 0 (any free port) to 65535, not "${port}".`,
    );
  }
  return { browser, open, port: number };
}

/** Reads the words of this process, or ends it with a sentence. */
export function optionsOrEnd() {
  try {
    return readOptions(process.argv.slice(2));
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    process.exit(2);
  }
}
