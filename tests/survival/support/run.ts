import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { join } from 'node:path';
import BetterSqlite3, { type Database } from 'better-sqlite3';
import { SOURCE_RUN_FLAGS } from '../../support/runtimeFlags.ts';

const WRITER = fileURLToPath(new URL('./writer.ts', import.meta.url));
const START_LIMIT_MS = 30_000;
/** What Node has compiled once, so that a hundred starts do not each read all TypeScript anew. */
const COMPILED = fileURLToPath(
  new URL('../../../node_modules/.cache/trotwell-tests', import.meta.url),
);

export interface Running {
  readonly child: ChildProcess;
  /** The lines it said so far. */
  readonly lines: string[];
  /** Resolves at the first line that begins so. */
  said(beginning: string): Promise<void>;
  /** Ends it without notice. */
  kill(): Promise<void>;
  ended(): Promise<void>;
}

/** Starts a process that works on a folder; see writer.ts. */
export function start(
  what: string,
  folder: string,
  argument = '',
  wrapped: readonly string[] = [],
  options: { uid?: number; gid?: number } = {},
): Running {
  const command = [
    ...wrapped,
    process.execPath,
    ...SOURCE_RUN_FLAGS,
    WRITER,
    what,
    folder,
    argument,
  ];
  const child = spawn(command[0]!, command.slice(1), {
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, NODE_NO_WARNINGS: '1', NODE_COMPILE_CACHE: COMPILED },
    ...options,
  });
  const lines: string[] = [];
  let rest = '';
  child.stdout!.on('data', (part: Buffer) => {
    const whole = (rest + part.toString()).split('\n');
    rest = whole.pop()!;
    lines.push(...whole);
  });
  let trouble = '';
  child.stderr!.on('data', (part: Buffer) => (trouble += part.toString()));
  const closed = once(child, 'close');
  return {
    child,
    lines,
    async said(beginning) {
      const limit = Date.now() + START_LIMIT_MS;
      while (!lines.some((line) => line.startsWith(beginning))) {
        if (child.exitCode !== null || Date.now() > limit) {
          throw new Error(`It never said "${beginning}": ${lines.join(' | ')} ${trouble}`);
        }
        await new Promise((resolve) => setTimeout(resolve, 2));
      }
    },
    async kill() {
      child.kill('SIGKILL');
      await closed;
    },
    async ended() {
      await closed;
    },
  };
}

/** Looks at a database as it was left, its log included. */
export function lookAt<T>(folder: string, look: (db: Database) => T): T {
  const db = new BetterSqlite3(join(folder, 'trotwell.sqlite'));
  try {
    return look(db);
  } finally {
    db.close();
  }
}

/** What is wrong with a database; empty when nothing is. */
export function faults(db: Database): string[] {
  const integrity = db.pragma('integrity_check', { simple: true }) as string;
  const dangling = db.pragma('foreign_key_check') as unknown[];
  return [
    ...(integrity === 'ok' ? [] : [integrity]),
    ...(dangling.length === 0 ? [] : [`${dangling.length} dangling references`]),
  ];
}

export const wait = (ms: number): Promise<void> =>
  new Promise((resolve) => setTimeout(resolve, ms));

/** Waits for something that lasts shorter than any timer waits. */
export async function until(there: () => boolean, about: () => string = () => ''): Promise<void> {
  const limit = Date.now() + START_LIMIT_MS;
  while (!there()) {
    if (Date.now() > limit) throw new Error(`What was waited for never came. ${about()}`);
    await new Promise((resolve) => setImmediate(resolve));
  }
}
