import { execFileSync } from 'node:child_process';
import { fstatSync } from 'node:fs';

/**
 * Calls back for every line typed into the terminal, or written into a pipe in its place.
 * @returns a way to stop, or null when nobody can type: started by a script or in the background
 */
export function onEnter(entered: () => void): { stop(): void } | null {
  const { stdin } = process;
  if (stdin.isTTY ? !inForeground() : !isPipe()) return null;
  stdin.on('data', (part: Buffer) => {
    if (part.includes('\n')) entered();
  });
  // A terminal that goes away ends the program by its own signal.
  stdin.on('error', () => undefined);
  return { stop: () => stdin.destroy() };
}

function isPipe(): boolean {
  const kind = fstatSync(0);
  return kind.isFIFO() || kind.isSocket();
}

/** Reading from the terminal would halt a program that runs in its background. */
function inForeground(): boolean {
  if (process.platform === 'win32') return true;
  try {
    const args = ['-o', 'pgid=,tpgid=', '-p', String(process.pid)];
    const output = execFileSync('ps', args, { encoding: 'utf8', timeout: 2_000 });
    const [group, foreground] = output.trim().split(/\s+/);
    return group !== undefined && group === foreground;
  } catch {
    return false;
  }
}
