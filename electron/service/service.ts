import {
  contract,
  type CallName,
  type Caller,
  type InputOf,
  type ParsedOf,
  type ResultOf,
} from '../contract/contract.ts';
import { Refusal, type Answer } from '../contract/errors.ts';
import type { TakenFile } from '../contract/files/purposes.ts';
import { attempt, errorValue, fail, type Log } from './answers.ts';
import { attachmentHandlers } from './files/attachments.ts';
import type { BackupCall, BackupHandlers } from './backup/handlers.ts';
import { binHandlers, erasureHandlers } from './bin/handlers.ts';
import { clientHandlers } from './dogs/clients.ts';
import { Later, type Context, type Handlers, type LateHandlers } from './database/context.ts';
import { diagnosticsHandlers } from './keeping/diagnostics.ts';
import { dogFileHandlers } from './dogs/file.ts';
import { dogListHandlers } from './dogs/list.ts';
import { waitingFileHandlers } from './files/waiting.ts';
import { dogHandlers } from './dogs/dogs.ts';
import { draftHandlers } from './dogs/drafts.ts';
import { dueHandlers } from './dogs/due.ts';
import { createPrinter, type Printer } from './handouts/printer.ts';
import { historyHandlers } from './history/list.ts';
import { keepingHandlers } from './keeping/keeping.ts';
import { backups, laterRooms } from './laterRooms.ts';
import { idleMinutesOf, lockHandlers, type LockCall, type LockHandlers } from './lock/handlers.ts';
import { createLock, lockedRefusal, type AppLock } from './lock/lock.ts';
import { countTries, triesNote } from './lock/tries.ts';
import { planEditHandlers } from './plans/edit.ts';
import { planReviewHandlers } from './plans/review.ts';
import { practiceHandlers } from './practice/practice.ts';
import { practiceYearHandlers } from './practice/year.ts';
import { practitionerHandlers } from './practice/practitioners.ts';
import { practicesIn, type PracticesOptions } from './practice/practices.ts';
import { inputError } from './refuse.ts';
import { ruleHandlers } from './practice/rules.ts';
import { freeBytesOf, type FreeBytes } from './files/room.ts';
import { assertRuntime } from './database/runtime.ts';
import { sessionHandlers } from './plans/sessions.ts';
import { shelfHandlers } from './food/shelf.ts';
import { isTrouble, storageRefusal } from './database/trouble.ts';
import { createTransfer, type Given, type Transfer } from './files/transfer.ts';
import { visitHandlers } from './visits/visits.ts';
import { weighingHandlers } from './weighings/weighings.ts';
import { createWorkRegister, type WorkRegister } from './work.ts';
import { writeOut } from './files/writeOut.ts';

export interface ServiceOptions extends PracticesOptions {
  /** The folder with the fonts of the handouts. */
  readonly fontsFolder: string;
  /** Milliseconds that never run backwards; the process's own where left out. */
  readonly monotonicMs?: () => number;
  /** How much room a folder's disk has; the system's own answer where left out. */
  readonly freeBytes?: FreeBytes;
  /** What prints the sheets, for whoever gives it to close; where left out, one of the service's own. */
  readonly printer?: Printer;
  readonly log?: Log;
}

export interface Service extends Caller {
  /** For hosts only: copies a file the practitioner handed over, or the one at a chosen path. */
  takeIn(...file: Parameters<Transfer['takeIn']>): Promise<Answer<TakenFile>>;
  /** For hosts only: the file the service made under this token. */
  giveOut(token: string): Answer<Given>;
  /** For hosts only: writes that file to a chosen path, whole or not at all. */
  writeOut(token: string, path: string): Promise<Answer<null>>;
  close(): Promise<void>;
}

/** The calls that need an open practice. */
type PracticeCall = Exclude<CallName, 'app/status' | 'app/open' | PromptCall | OwnCall>;
/** The calls about the own practice as a whole, which also answer while none can be opened. */
type OwnCall = BackupCall | LockCall;
/** The calls answered at once, while an earlier one is still being worked on. */
type PromptCall = 'work/state' | 'work/cancel' | 'lock/now';
/** The calls whose answers are made after their turn. */
type LateCall =
  'handouts/render' | 'handouts/bundle' | 'handouts/batch' | 'goesHome/mail' | 'export/make';
type AllHandlers = Handlers<Exclude<PracticeCall, LateCall>> & LateHandlers<LateCall>;

const handlers = {
  ...diagnosticsHandlers,
  ...practiceHandlers,
  ...clientHandlers,
  ...dogHandlers,
  ...dogListHandlers,
  ...dogFileHandlers,
  ...dueHandlers,
  ...visitHandlers,
  ...weighingHandlers,
  ...draftHandlers,
  ...sessionHandlers,
  ...binHandlers,
  ...erasureHandlers,
  ...keepingHandlers,
  ...historyHandlers,
  ...practiceYearHandlers,
  ...practitionerHandlers,
  ...shelfHandlers,
  ...ruleHandlers,
  ...planEditHandlers,
  ...planReviewHandlers,
};

type PromptHandlers = { readonly [K in PromptCall]: (input: ParsedOf<K>) => ResultOf<K> };

const promptHandlers = (work: WorkRegister, lock: AppLock): PromptHandlers => ({
  'lock/now': () => {
    lock.lock();
    return null;
  },
  'work/state': ({ workId }) => work.state(workId),
  'work/cancel': ({ workId }) => {
    work.cancel(workId);
    return null;
  },
});

/** The calls after which nothing of what they removed may be left in a file. */
const REMOVING: ReadonlySet<CallName> = new Set([
  'clients/erase',
  'bin/empty',
  'erasures/finish',
] as const);

/** Nothing made later may still be reading when these move or overwrite the file of records. */
const ALONE: ReadonlySet<CallName> = new Set([...REMOVING, 'backup/restore']);

/** The schema has parsed the input, so the handler's own input type holds. */
function handlerOf(all: AllHandlers, name: PracticeCall) {
  return all[name] as (context: Context, input: unknown) => Promise<unknown>;
}

/** Everything the calls are answered with. */
function rooms(options: ServiceOptions) {
  const { clock, monotonicMs = () => performance.now() } = options;
  const { freeBytes = freeBytesOf } = options;
  const { printer = createPrinter() } = options;
  const lock = createLock({ monotonicMs, wallMs: () => clock().getTime() });
  const practices = practicesIn(options, {
    opened: (context) => lock.take(idleMinutesOf(context)),
    lockState: lock.state,
  });
  const transfer = createTransfer(options.folder, freeBytes);
  const work = createWorkRegister();
  const instant = () => clock().toISOString();
  const all: AllHandlers = {
    ...handlers,
    ...attachmentHandlers(transfer),
    ...waitingFileHandlers(transfer),
    ...laterRooms({ ...options, log: options.log, printer, transfer, work }),
  };
  const own: BackupHandlers & LockHandlers = {
    ...backups({ ...options, practices, transfer, work, instant, freeBytes }),
    ...lockHandlers({ lock, practices, tries: countTries(monotonicMs, triesNote(options.folder)) }),
  };
  return { printer, lock, practices, transfer, work, all, own, prompt: promptHandlers(work, lock) };
}

type Rooms = ReturnType<typeof rooms>;

const isPrompt = ({ prompt }: Rooms, name: CallName): name is PromptCall =>
  Object.hasOwn(prompt, name);
const isOwn = ({ own }: Rooms, name: CallName): name is OwnCall => Object.hasOwn(own, name);

/** Answers a call whose input its schema has parsed. */
async function answer(room: Rooms, name: CallName, input: unknown): Promise<unknown> {
  const { practices, lock } = room;
  if (isPrompt(room, name)) return room.prompt[name](input as never);
  openLockFirst(room);
  lock.guard(name);
  lock.note(name);
  if (ALONE.has(name)) await room.work.stopAll();
  if (name === 'app/open') await practices.open((input as ParsedOf<'app/open'>).which);
  if (name === 'app/status' || name === 'app/open') return practices.status();
  if (isOwn(room, name)) return room.own[name](input as never);
  const context = practices.context();
  if (context === null) {
    throw new Refusal({ kind: 'no-practice', message: 'No practice is open yet.' });
  }
  const result = await handlerOf(room.all, name)(context, input);
  if (REMOVING.has(name)) forgetMade(room);
  return result;
}

/** Backups, exports and sheets that were made and not fetched hold what was just removed. */
function forgetMade({ work, transfer, printer }: Rooms): void {
  work.cancelAll();
  transfer.forgetAll();
  printer.forget();
}

/** Records opened for reading only refuse a save with the reason they were opened so. */
function whyLimited({ practices }: Rooms, error: unknown): unknown {
  const limited = practices.openNow()?.limited ?? null;
  return limited !== null && isTrouble(storageRefusal(error), 'unwritable') ? limited : error;
}

/** The lock lies in the records: they must be open before anything is answered. */
function openLockFirst({ practices }: Rooms): void {
  try {
    practices.context();
  } catch {
    // Records that cannot be opened have no lock to ask for; the call itself says why.
  }
}

function refuseLocked({ lock }: Rooms): void {
  if (lock.isLocked()) throw lockedRefusal();
}

/**
 * The service behind both windows: parses every input with the contract's schema, answers with
 * values only, and never throws to the caller. Opens the own practice by itself where one exists.
 * @throws Error when the runtime cannot load the database driver.
 */
export function createService(options: ServiceOptions): Service {
  assertRuntime();
  const { log } = options;
  const room = rooms(options);
  const { practices, transfer, work, printer } = room;
  // Calls run one after the other: a switch of practice must not overtake a save.
  let queue: Promise<unknown> = Promise.resolve();

  async function run(name: CallName, input: unknown): Promise<Answer<unknown>> {
    if (!Object.hasOwn(contract, name)) {
      return fail({ kind: 'input', message: 'There is no such call.' });
    }
    return attempt(log, async () => {
      const parsed = contract[name].input.safeParse(input);
      if (!parsed.success) throw new Refusal(inputError(parsed.error));
      return answer(room, name, parsed.data).catch((error: unknown) => {
        throw whyLimited(room, error);
      });
    });
  }

  /** Waits for what a call left to be made after its turn. */
  async function settle(turn: Promise<Answer<unknown>>): Promise<Answer<unknown>> {
    const answered = await turn;
    if (!answered.ok || !(answered.value instanceof Later)) return answered;
    const { result } = answered.value;
    return attempt(log, () => result);
  }

  return {
    call<N extends CallName>(name: N, input: InputOf<N>): Promise<Answer<ResultOf<N>>> {
      if (isPrompt(room, name)) return run(name, input) as Promise<Answer<ResultOf<N>>>;
      const turn = queue.then(() => run(name, input));
      queue = turn.then(() => practices.keepDaily());
      return settle(turn) as Promise<Answer<ResultOf<N>>>;
    },
    takeIn: (...file) =>
      attempt(log, async () => {
        refuseLocked(room);
        const { token, name, bytes } = await transfer.takeIn(...file);
        return { token, name, bytes };
      }),
    giveOut(token) {
      try {
        refuseLocked(room);
        return { ok: true, value: transfer.giveOut(token) };
      } catch (error) {
        return fail(errorValue(error, log));
      }
    },
    writeOut: (token, path) =>
      attempt(log, async () => {
        refuseLocked(room);
        await writeOut(transfer.giveOut(token), path);
        return null;
      }),
    async close() {
      work.cancelAll();
      await queue;
      await Promise.all([options.printer === undefined && printer.close(), work.stopAll()]);
      await practices.close();
      transfer.close();
    },
  };
}
