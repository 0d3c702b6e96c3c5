import { existsSync, readFileSync } from 'node:fs';
import { createHash } from 'node:crypto';
import type { Database } from 'better-sqlite3';
import { contentFile } from '../../../electron/service/backup/contents.ts';
import { presentContents } from '../../../electron/service/backup/folder.ts';
import { faults, lookAt } from '../../survival/support/run.ts';

/** What became of the saves a worker acknowledged; see `anything` in the writer. */
export interface Tally {
  acknowledged: number;
  lost: number;
  /** Visits without all their parts, files that are not what they were. */
  half: number;
  faulty: number;
}

export const noTally = (): Tally => ({ acknowledged: 0, lost: 0, half: 0, faulty: 0 });

const KEPT: Readonly<Record<string, string>> = {
  client: 'SELECT name FROM client',
  dog: 'SELECT name FROM dog',
  visit: 'SELECT notes FROM visit',
  weighing: 'SELECT note FROM weighing',
  draft: "SELECT json_extract(json, '$') FROM draft WHERE key = 'intake:new'",
  practice: 'SELECT name FROM practice',
  file: `SELECT replace(json_extract(file.value, '$.name'), '.pdf', '') FROM draft, json_each(draft.json, '$.files') AS file
    WHERE draft.key GLOB 'files:*'`,
};

/** Holds what lies in a folder against what was said of it, and adds it up. */
export function judge(folder: string, lines: readonly string[], tally: Tally): void {
  lookAt(folder, (db) => {
    if (faults(db).length > 0) tally.faulty += 1;
    tally.half += halfVisits(db) + brokenFiles(folder, db);
    const there = new Map(Object.entries(KEPT).map(([what, sql]) => [what, marksOf(db, sql)]));
    const said = lines.flatMap((line) => {
      const [, when, how, what, mark] = /^(try|ack) (has|is) (\w+) (\S+)$/.exec(line) ?? [];
      return mark === undefined || what === 'backup' ? [] : [{ when, how, what: what!, mark }];
    });
    const acknowledged = said.filter(({ when }) => when === 'ack');
    tally.acknowledged += acknowledged.length;
    for (const [index, { how, what, mark }] of acknowledged.entries()) {
      const marks = there.get(what)!;
      const replaced = acknowledged.slice(index + 1).some((later) => later.what === what);
      if (how === 'is' && replaced) continue;
      // What was under way may have come through although nobody heard of it.
      const last = said.at(-1)!;
      const underWay = how === 'is' && last.when === 'try' && last.what === what ? last.mark : mark;
      if (!marks.has(mark) && !marks.has(underWay)) tally.lost += 1;
    }
  });
}

const marksOf = (db: Database, sql: string): ReadonlySet<string> =>
  new Set(db.prepare(sql).pluck().all() as string[]);

/** The number in a visit's mark says how many signs it has. */
function halfVisits(db: Database): number {
  const rows = db
    .prepare('SELECT notes, (SELECT count(*) FROM visit_sign WHERE visit_id = visit.id) FROM visit')
    .raw()
    .all() as [string, number][];
  return rows.filter(([mark, signs]) => signs !== 1 + (Number(mark.split('-').at(-1)) % 2)).length;
}

function brokenFiles(folder: string, db: Database): number {
  const hashes = db.prepare('SELECT hash FROM stored_file').pluck().all() as string[];
  return hashes.filter((hash) => {
    const file = contentFile(presentContents(folder), hash);
    if (!existsSync(file)) return true;
    return createHash('sha256').update(readFileSync(file)).digest('hex') !== hash;
  }).length;
}
