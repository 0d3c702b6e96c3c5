import { resolve } from 'node:path';
import { parseArgs } from 'node:util';

const ENDING = '.trotwell';

/**
 * Reads the words after `npm start --`: options, and the path of a backup to open.
 * @param {readonly string[]} args
 * @param {string} [folder] where the command was given; npm itself changes to the project's folder
 * @returns {{ browser: boolean, open: boolean, port?: number, file?: string }}
 * @throws {Error} with a sentence for the terminal when a word is not known or not acceptable
 */
export function readOptions(args, folder = process.env.INIT_CWD ?? process.cwd()) {
  const { values, positionals } = parseArgs({
    args: [...args],
    allowPositionals: true,
    options: {
      browser: { type: 'boolean', default: false },
      open: { type: 'boolean', default: false },
      port: { type: 'string' },
    },
  });
  const { browser, open, port } = values;
  const common = { browser, open, ...fileOf(positionals, folder) };
  if (port === undefined) return common;
  const number = Number(port);
  if (!/^\d+$/.test(port) || number > 65_535) {
    throw new Error(
      `--port must be a whole number from 0 (any free port) to 65535, not "${port}".`,
    );
  }
  return { ...common, port: number };
}

/**
 * @param {readonly string[]} words
 * @param {string} folder
 */
function fileOf(words, folder) {
  const [path] = words;
  if (path === undefined) return {};
  if (words.length > 1 || !path.toLowerCase().endsWith(ENDING)) {
    throw new Error(
      `"${words.join(' ')}" is not known: beside its options the start takes one backup file, whose name ends in ${ENDING}.`,
    );
  }
  return { file: resolve(folder, path) };
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
