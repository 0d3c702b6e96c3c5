import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';

const SIGNALS = /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP']);

/**
 * Runs the Electron program until it ends, and hands the first signal on to it; while it closes, which
 * a large backup may make long, more of them change nothing. A terminal sends Ctrl-C to its whole group
 * of processes, and the program stops listening after the first: so it is in a group of its own, and
 * gets one. Windows has no signals but ones that kill, so there the program is asked.
 * @param {string} program
 * @param {readonly string[]} args
 * @param {() => Promise<void>} ask asks the program to end, where there are no signals
 * @param {{ startMs?: number, platform?: NodeJS.Platform }} [how] `startMs`: a program that ends with
 *   a fault within this time never opened: system libraries are missing, or the system grants no
 *   sandbox
 * @returns {Promise<number | null>} its exit code, or null when it never opened
 */
export function runWindow(program, args, ask, how = {}) {
  const { startMs = 10_000, platform = process.platform } = how;
  const hasSignals = platform !== 'win32';
  const began = Date.now();
  const child = spawn(program, args, {
    stdio: ['ignore', 'inherit', 'inherit'],
    detached: hasSignals,
  });
  let stopping = false;
  /** @param {NodeJS.Signals} signal */
  const handOn = (signal) => {
    if (stopping) return;
    stopping = true;
    console.log('Trotwell closes, with a backup …');
    if (hasSignals) child.kill(signal);
    else void ask();
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

/** Set where a system gives no sandbox to programs that its own packages did not bring. */
const NO_SANDBOX_SWITCH = '/proc/sys/kernel/apparmor_restrict_unprivileged_userns';

/**
 * Why the window did not open, as far as the system tells.
 * @param {NodeJS.Platform} platform
 * @param {string} [file] where Linux says whether it restricts sandboxes
 */
export function whyNotOpened(platform, file = NO_SANDBOX_SWITCH) {
  if (platform === 'linux' && isOn(file)) {
    return (
      'This system (Ubuntu since 24.04 does so) grants a sandbox only to programs that were installed ' +
      'as a package, and Trotwell opens no window without one; a deb made by "npm run package" is granted it.'
    );
  }
  return 'The Electron window could not open on this machine; what the system says stands above.';
}

/** @param {string} file */
function isOn(file) {
  try {
    return readFileSync(file, 'utf8').trim() === '1';
  } catch {
    return false;
  }
}
