// `npm run package`: builds, says what has to be fetched, and makes the packages of this platform.
// What follows `--` goes to electron-builder, such as `--dir` for the program without a package.
import { spawn } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from './build.mjs';
import { refuseOldNode } from './node.mjs';
import { neededDownloads, whyNoPackage } from './packageTexts.mjs';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const BUILDER = join(ROOT, 'node_modules', 'electron-builder', 'cli.js');

/**
 * Runs electron-builder, shows what it says, and keeps it.
 * @param {readonly string[]} args
 * @returns {Promise<{ code: number, output: string }>}
 */
function runBuilder(args) {
  const child = spawn(process.execPath, [BUILDER, '--publish', 'never', ...args], {
    cwd: ROOT,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let output = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream.on('data', (part) => {
      output += part.toString();
      process.stdout.write(part);
    });
  }
  return new Promise((resolve) => {
    child.once('close', (code) => resolve({ code: code ?? 1, output }));
  });
}

refuseOldNode();
console.log('Building Trotwell …');
if (!build(ROOT)) {
  console.error('The build failed; the lines above say why.');
  process.exit(1);
}
console.log(neededDownloads(process.platform));
const { code, output } = await runBuilder(process.argv.slice(2));
console.log(code === 0 ? 'The packages are in dist/.' : whyNoPackage(output));
process.exit(code);
