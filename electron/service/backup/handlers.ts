import { existsSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import type { backupCalls, BackupLook, RecordsSummary } from '../../contract/calls/backup.ts';
import type { ParsedOf, ResultOf } from '../../contract/contract.ts';
import { Refusal } from '../../contract/errors.ts';
import type { OwnHandlers } from '../database/context.ts';
import type { OpenContext } from '../database/open.ts';
import { MIGRATIONS } from '../migrations/index.ts';
import { notFound } from '../refuse.ts';
import { storageRefusal } from '../database/trouble.ts';
import type { Transfer } from '../files/transfer.ts';
import type { WorkRegister } from '../work.ts';
import { keepingOf, letGo } from './automatic.ts';
import { contentsOf } from './contents.ts';
import { backupsFolder, lastFailure, listBackups, presentContents } from './folder.ts';
import type { Keeping } from './keeping.ts';
import { readBackupName } from './names.ts';
import { pack, type Progress } from './pack.ts';
import { placeWarning } from './place.ts';
import { asBackupTrouble, openStrange } from './prepare.ts';
import { madeByNewer } from './refusals.ts';
import { readableOwn, restore, type RestoreRoom, type RestoreSource } from './restore.ts';
import { snapshot } from './snapshot.ts';
import { summaryOf } from './summary.ts';
import { asksForPassphrase, unpack } from './unpack.ts';

export interface BackupRoom extends RestoreRoom {
  readonly version: string;
  readonly transfer: Transfer;
  readonly work: WorkRegister;
}

export type BackupCall = keyof typeof backupCalls;
export type BackupHandlers = OwnHandlers<BackupCall>;

export function backupHandlers(room: BackupRoom): BackupHandlers {
  return {
    'backup/status': () => status(room),
    'backup/make': ({ passphrase, workId }) =>
      room.work.run(workId, ({ step }) => make(room, passphrase, step)),
    'backup/look': ({ source, passphrase, workId }) =>
      room.work.run(workId, ({ step }) => look(room, sourceOf(room, source, passphrase), step)),
    'backup/restore': ({ source, passphrase, workId }) =>
      room.work.run(workId, async ({ step }) => {
        refuseInDemo(room);
        const chosen = sourceOf(room, source, passphrase);
        const restored = await restore(room, chosen, step);
        if ('token' in source) room.transfer.drop(source.token);
        return { ...restored, status: await room.practices.status() };
      }),
    'backup/settings': async (chosen) => {
      const context = needOwn(room);
      await context.db.updateTable('deskSetting').set(chosen).execute();
      letGo(room.folder, await keepingOf(context));
      return status(room);
    },
  };
}

async function status(room: BackupRoom): Promise<ResultOf<'backup/status'>> {
  const keeping = await presentKeeping(room);
  const kept = listBackups(room.folder);
  const now = room.instant();
  return {
    kept,
    fromFuture: kept.find(({ madeAt }) => madeAt > now)?.madeAt ?? null,
    failure: lastFailure(room.folder),
    settings:
      keeping === null ? null : { dailyBackups: keeping.daily, weeklyBackups: keeping.weekly },
    folderWarning: placeWarning(room.folder),
  };
}

/** Null where the records cannot be read just now: the list of backups is to be had all the same. */
async function presentKeeping(room: BackupRoom): Promise<Keeping | null> {
  try {
    const context = readableOwn(room.practices);
    return context === null ? null : await keepingOf(context);
  } catch (error) {
    if (storageRefusal(error) instanceof Refusal) return null;
    throw error;
  }
}

async function make(
  room: BackupRoom,
  passphrase: string | null,
  progress: Progress,
): Promise<ResultOf<'backup/make'>> {
  const context = needOwn(room);
  const records = room.transfer.room();
  const target = room.transfer.room();
  try {
    await progress({ done: 0, total: 1, step: 'Copying the records' });
    snapshot(context.raw, records);
    const source = {
      records,
      summary: summaryOf(context.raw),
      store: presentContents(room.folder),
      contents: contentsOf(context.raw),
      madeAt: room.instant(),
      program: room.version,
    };
    const { missing } = await pack(target, source, passphrase, progress);
    const fileName = `Trotwell-${context.today()}.trotwell`;
    const token = await room.transfer.produced(target, fileName, 'application/vnd.trotwell.backup');
    return { token, fileName, missing: missing.length };
  } finally {
    for (const file of [records, target]) rmSync(file, { force: true });
  }
}

async function look(
  room: BackupRoom,
  source: RestoreSource,
  progress: Progress,
): Promise<BackupLook> {
  const present = presentSummary(room);
  if (source.kind === 'kept') {
    const { summary } = readKept(room, source.name);
    refuseNewer(summary.schemaVersion);
    const { madeAt } = readBackupName(source.name)!;
    return { madeAt, protectedByPassphrase: false, summary, missing: 0, present };
  }
  const { file, passphrase } = source;
  const manifest = await unpack(file, passphrase, null, progress);
  refuseNewer(manifest.summary.schemaVersion);
  return {
    madeAt: manifest.madeAt,
    protectedByPassphrase: await asksForPassphrase(file),
    summary: manifest.summary,
    missing: manifest.missing.length,
    present,
  };
}

function readKept(room: BackupRoom, name: string): { readonly summary: RecordsSummary } {
  try {
    const db = openStrange(join(backupsFolder(room.folder), name), { readonly: true });
    try {
      return { summary: summaryOf(db) };
    } finally {
      db.close();
    }
  } catch (error) {
    throw asBackupTrouble(error);
  }
}

function presentSummary(room: BackupRoom): RecordsSummary | null {
  try {
    const context = readableOwn(room.practices);
    return context === null ? null : summaryOf(context.raw);
  } catch {
    return null; // damaged just there: there is nothing to compare with
  }
}

function refuseNewer(schemaVersion: number): void {
  if (schemaVersion > MIGRATIONS.length) throw madeByNewer();
}

function sourceOf(
  room: BackupRoom,
  source: ParsedOf<'backup/look'>['source'],
  passphrase: string | null,
): RestoreSource {
  if ('token' in source) {
    return { kind: 'file', file: room.transfer.open(source.token).file, passphrase };
  }
  const known = readBackupName(source.name) !== null;
  if (!known || !existsSync(join(backupsFolder(room.folder), source.name))) {
    throw notFound('This backup');
  }
  return { kind: 'kept', name: source.name };
}

function needOwn(room: BackupRoom): OpenContext {
  refuseInDemo(room);
  const context = room.practices.context();
  if (context !== null) return context;
  throw new Refusal({ kind: 'no-practice', message: 'No practice is open yet.' });
}

/** The demonstration is made anew each time; its people must not end up among real records. */
function refuseInDemo(room: BackupRoom): void {
  if (room.practices.openNow()?.which !== 'demo') return;
  throw new Refusal({
    kind: 'conflict',
    message: 'Backups are of your own practice. Leave the demonstration first.',
  });
}
