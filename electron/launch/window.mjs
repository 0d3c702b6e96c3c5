import { spawn } from 'node:child_process';

const SIGNALS = /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP']);

/**
 * Runs the Electron program until it ends, and hands signals on to it.
 * @param {string} program
 * @param {readonly string[]} args
 * @param {number} [startMs] a program that ends with a fault within this time never opened: system
 *   libraries are missing, or the system grants no sandbox
 * @returns {Promise<number | null>} its exit code, or null when it never opened
 */
export function runWindow(program, args, startMs = 10_000) {
  const began = Date.now();
  const child = spawn(program, args, { stdio: 'inherit' });
  let stopping = false;
  /** @param {NodeJS.Signals} signal */
  const handOn = (signal) => {
    stopping = true;
    child.kill(signal);
  };
  for (const signal of SIGNALS) process.on(signal, handOn);
  return new Promise((resolve) => {
    /** @param {number | null} result */
    const end = (result) => {
      for (const signal of SIGNALS) process.off(signal, handOn);
      resolve(result);
    };
    child.once('error', () => end(null));
    child.once('exit', (code) => {
      const neverOpened = code !== 0 && !stopping && Date.now() - began < startMs;
      end(neverOpened ? null : (code ?? (stopping ? 0 : 1)));
    });
  });
}
