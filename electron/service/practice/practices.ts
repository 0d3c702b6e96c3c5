import { statSync } from 'node:fs';
import { join } from 'node:path';
import { EMPTY_SHELF } from '../../contract/food/shelf.ts';
import type { AppStatus, RecordsTrouble } from '../../contract/contract.ts';
import { Refusal } from '../../contract/errors.ts';
import { keepBackupIfChanged } from '../backup/automatic.ts';
import { sweepHalfWritten } from '../backup/folder.ts';
import { completeRestore, settleRestore } from '../backup/swap.ts';
import { localDay } from '../day.ts';
import { DATABASE_FILES, openContext, removeDemo, type OpenContext } from '../database/open.ts';
import { settleImport } from '../exchange/importMark.ts';
import { readLogo, readPractice } from './practice.ts';
import { keepPrivate } from '../keeping/privacy.ts';
import { whyNothingIsTaken } from '../database/probe.ts';
import { readRules } from './rules.ts';
import { readShelf } from '../food/shelf.ts';
import { storageRefusal, troubled } from '../database/trouble.ts';

export interface PracticesOptions {
  /** The folder of records. */
  readonly folder: string;
  readonly version: string;
  readonly clock: () => Date;
}

export interface PracticesHooks {
  /** Called with every practice that is opened. */
  opened(context: OpenContext): void;
  lockState(): AppStatus['lock'];
}

/** Which practice is open: the own one, the demonstration, or none yet. */
export function practicesIn(options: PracticesOptions, hooks: PracticesHooks) {
  const { folder, version, clock } = options;
  let current: OpenContext | null = null;
  const settle = settleFirst(folder);
  /** The day the open practice was opened or last looked at for its daily backup. */
  let lookedAt = '';

  const ownExists = (): boolean => isThere(join(folder, DATABASE_FILES.own));

  function openAs(which: 'own' | 'demo'): OpenContext {
    lookedAt = localDay(clock());
    current = openContext(folder, which, clock);
    settleImport(current);
    hooks.opened(current);
    return current;
  }

  /**
   * The open practice; opens the own one where it exists and none is open. Null on first run.
   * @throws Refusal when its file cannot be used
   */
  function context(): OpenContext | null {
    if (current !== null) return (current = wideWherePossible(current, clock));
    settle();
    return ownExists() ? openAs('own') : null;
  }

  /** Closes what is open without a backup. */
  async function letGo(): Promise<void> {
    const closing = current;
    current = null;
    await closing?.close();
  }

  /** Closes what is open; the own practice is backed up where it changed. */
  async function close(): Promise<void> {
    if (current?.which === 'own' && current.limited === null) await keepBackupIfChanged(current);
    await letGo();
  }

  return {
    context,
    letGo,
    close,
    /** What is open just now, without opening anything. */
    openNow: (): OpenContext | null => current,
    async open(which: 'own' | 'demo'): Promise<void> {
      await close();
      settle();
      if (which === 'own') ownExists();
      // The demonstration always opens as new, so that its days count back from today.
      if (which === 'demo') removeDemo(folder);
      const opened = openAs(which);
      if (which === 'demo') await (await import('../demo/seed.ts')).seedDemo(opened);
    },
    /** Makes a backup when the day has changed while the practice was open. Never throws. */
    async keepDaily(): Promise<void> {
      const today = localDay(clock());
      if (current?.which !== 'own' || current.limited !== null || today === lookedAt) return;
      lookedAt = today;
      await keepBackupIfChanged(current);
    },
    async status(): Promise<AppStatus> {
      const { trouble, ...open } = await readStatus(context, hooks.lockState);
      return {
        version,
        ownExists: trouble !== null || ownExists(),
        today: localDay(clock()),
        folder: open.lock?.locked === true ? '' : folder,
        trouble,
        ...open,
      };
    },
  };
}
export type Practices = ReturnType<typeof practicesIn>;

/** Records that were opened for reading only are opened as ever once there is room again. */
function wideWherePossible(context: OpenContext, clock: () => Date): OpenContext {
  if (context.limited === null || whyNothingIsTaken(context.folder) !== null) return context;
  context.raw.close();
  return openContext(context.folder, context.which, clock);
}

/**
 * True where the file of records is. A folder that cannot be looked into is no first start.
 * @throws Refusal (storage) that says why it cannot be told
 */
function isThere(file: string): boolean {
  try {
    if (statSync(file).isFile()) return true;
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT') return false;
    throw unreadable(
      code === 'ENOTDIR' ? 'A file lies where the folder of records should be' : null,
    );
  }
  throw unreadable('A folder lies where the file of records should be');
}

const unreadable = (reason: string | null): Refusal =>
  troubled(
    'unreadable',
    `${reason ?? 'The folder of records cannot be looked into: it belongs to another user, or its disk does not answer'}, so the records cannot be read. Nothing was changed.`,
  );

/**
 * Before any file is opened: completes a restore that was cut off, or takes it back. Later only what
 * was committed is looked for: while one is prepared, its folder is there.
 */
function settleFirst(folder: string): () => void {
  let started = false;
  return () => {
    try {
      if (started) completeRestore(folder);
      else {
        keepPrivate(folder);
        settleRestore(folder);
        sweepHalfWritten(folder);
      }
    } catch (error) {
      throw storageRefusal(error);
    }
    started = true;
  };
}

type OpenStatus = Pick<
  AppStatus,
  'open' | 'practice' | 'logo' | 'rules' | 'shelf' | 'trouble' | 'limited' | 'lock'
>;

const NOTHING_OPEN: OpenStatus = {
  open: null,
  practice: null,
  logo: null,
  rules: [],
  shelf: EMPTY_SHELF,
  trouble: null,
  limited: null,
  lock: null,
};

/** Records that cannot be read are no failure of the status: the page must say so and offer help. */
async function readStatus(
  context: () => OpenContext | null,
  lockState: () => AppStatus['lock'],
): Promise<OpenStatus> {
  try {
    const open = context();
    if (open === null) return NOTHING_OPEN;
    const limited = open.limited?.error.trouble ?? null;
    const lock = open.which === 'own' ? lockState() : null;
    if (lock?.locked === true) return { ...NOTHING_OPEN, open: open.which, lock };
    return {
      open: open.which,
      practice: await readPractice(open),
      logo: await readLogo(open),
      rules: await readRules(open.db),
      shelf: await readShelf(open.db),
      trouble: null,
      limited,
      lock,
    };
  } catch (error) {
    const known = storageRefusal(error);
    if (!(known instanceof Refusal) || known.error.kind !== 'storage') throw error;
    const trouble: RecordsTrouble = {
      kind: known.error.trouble ?? null,
      message: known.error.message,
    };
    return { ...NOTHING_OPEN, trouble };
  }
}
