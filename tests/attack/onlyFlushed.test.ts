import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { temporaryFolder } from '../service/support/desk.ts';
import { start } from '../survival/support/run.ts';
import { strictDisk } from './support/names.ts';

// The strict model: after every acknowledged save, backup and restore, each file the records rely on
// has been flushed, and so has its name, and the names of all folders above it. The calls to the
// system are read from a trace, so that SQLite's own are among them.

const CALLS =
  'openat,mkdir,mkdirat,rename,renameat,renameat2,unlink,unlinkat,rmdir,fsync,fdatasync,' +
  'write,pwrite64,writev,pwritev,ftruncate,copy_file_range,sendfile';

/** Left out: what is made anew when it is missing, and what is on its way in or out. */
const MATTERS = (name: string): boolean =>
  !/-shm$|\.part(-journal)?$|last-(automatic|failure)\.json$|^(transfer|running|restore)(\/|$)/.test(
    name,
  );

const noStrace = spawnSync('strace', ['-e', 'trace=none', 'true']).status !== 0;

describe.skipIf(noStrace)('if only flushed names and contents last (needs strace)', () => {
  test('everything acknowledged lasts, after each step', { timeout: 120_000 }, async () => {
    const folder = temporaryFolder();
    const [records, trace] = [join(folder, 'new', 'records'), join(folder, 'trace')];
    const wrapped = ['strace', '-f', '-y', '-s', '200', '-o', trace, '-e', `trace=${CALLS}`];
    const worker = start('eachOnce', records, '', wrapped);
    await worker.ended();
    expect(worker.lines).toContain('durable closing');

    const disk = strictDisk();
    const looked: Record<string, string[]> = {};
    for (const line of whole(readFileSync(trace, 'utf8').split('\n'))) {
      disk.follow(line);
      const step = /write\(1<[^>]*>, "durable ([^"\\]*)/.exec(line)?.[1];
      if (step !== undefined) looked[step] = disk.atRisk(records, MATTERS);
    }
    console.log(`Only what was flushed lasts: ${Object.keys(looked).length} steps looked at`);
    expect(Object.keys(looked).length).toBeGreaterThan(12);
    expect(looked).toEqual(Object.fromEntries(Object.keys(looked).map((step) => [step, []])));
  });
});

/** A call that another thread interrupted stands on two lines. */
function whole(lines: readonly string[]): string[] {
  const begun = new Map<string, string>();
  return lines.flatMap((line) => {
    const thread = line.split(' ', 1)[0]!;
    if (line.endsWith('<unfinished ...>')) {
      begun.set(thread, line.slice(0, -'<unfinished ...>'.length));
      return [];
    }
    const [, rest] = /<\.\.\. \w+ resumed>(.*)/.exec(line) ?? [];
    return rest === undefined ? [line] : [(begun.get(thread) ?? '') + rest];
  });
}
