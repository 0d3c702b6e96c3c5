import module from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..', '..');

/**
 * Has Node keep what it compiles from here on, so that the next start need not read all TypeScript
 * again. Inside the project, not in the folder for temporary files, which others may write to. Where
 * the folder cannot be written, Node goes on without. Not named in the import: an old Node, which must
 * be able to read this file, does not have it.
 */
export function keepCompiled() {
  module.enableCompileCache(join(ROOT, 'node_modules', '.cache', 'trotwell'));
}
