import { randomBytes } from 'node:crypto';
import {
  existsSync,
  lstatSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { isAbsolute, join } from 'node:path';

// A later start leaves its request as a file in a folder that only the same user can open. Nothing
// listens, no secret is kept on the disk, and nothing comes back but that the request is gone: a new
// address is opened and printed by the process that made it.

/** How often the first looks for requests, in milliseconds. */
const LOOK_EVERY_MS = 500;
/** Longer than any path a system allows. */
const MOST_BYTES = 64 * 1024;
const REQUEST = /^again-[\w-]+\.json$/;

/** What is asked of the Trotwell that runs already: to come to the front, and with what; or to end. */
export interface StartRequest {
  /** The absolute path of a backup file to open. */
  readonly file: string | null;
  /** Asks for the end, as Ctrl-C does where there are no signals. */
  readonly end?: boolean;
}

/** Leaves a request, whole from the first moment it can be seen. */
export function leaveRequest(running: string, request: StartRequest) {
  const path = join(running, `again-${randomBytes(12).toString('base64url')}.json`);
  writeFileSync(`${path}.part`, JSON.stringify(request), { mode: 0o600, flag: 'wx' });
  renameSync(`${path}.part`, path);
  return {
    isTakenUp: (): boolean => !existsSync(path),
    takeBack: (): void => rmSync(path, { force: true }),
  };
}

/** Asks the Trotwell that works on a folder of records to end, where no signal can. */
export function askToEnd(folder: string): void {
  leaveRequest(join(folder, 'running'), { file: null, end: true });
}

/** Removes what starts that were cut off have left. */
export function sweepRequests(running: string): void {
  for (const name of namesIn(running)) {
    if (/^again-/.test(name)) rmSync(join(running, name), { force: true });
  }
}

/**
 * Looks for requests, and takes them up: of several at once the one read last counts.
 * @returns a way to stop
 */
export function watchRequests(
  running: string,
  answer: (request: StartRequest) => void,
): () => void {
  const look = setInterval(() => {
    const requests = namesIn(running)
      .filter((name) => REQUEST.test(name))
      .flatMap((name) => takeUp(join(running, name)) ?? []);
    const last = requests.at(-1);
    if (last !== undefined) answer(last);
  }, LOOK_EVERY_MS);
  look.unref();
  return () => clearInterval(look);
}

function namesIn(running: string): string[] {
  try {
    return readdirSync(running);
  } catch {
    return [];
  }
}

/** Reads a request and removes it. Null for what this user's Trotwell did not write. */
function takeUp(path: string): StartRequest | null {
  try {
    const found = lstatSync(path);
    const ours = process.getuid === undefined || found.uid === process.getuid();
    if (!found.isFile() || !ours || found.size > MOST_BYTES) return null;
    const { file, end } = JSON.parse(readFileSync(path, 'utf8')) as Record<string, unknown>;
    if (end === true) return { file: null, end };
    return { file: typeof file === 'string' && isAbsolute(file) ? file : null };
  } catch {
    return null;
  } finally {
    rmSync(path, { force: true, recursive: true });
  }
}
