import { randomUUID } from 'node:crypto';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import {
  contract,
  type AppStatus,
  type CallName,
  type Caller,
  type InputOf,
  type ResultOf,
} from '../contract/contract.ts';
import { Refusal, type Answer, type AppError } from '../contract/errors.ts';
import { clientHandlers } from './clients.ts';
import type { Desk, Handlers } from './context.ts';
import { storageRefusal } from './database.ts';
import { localDay } from './day.ts';
import { seedDemo } from './demo/seed.ts';
import { DATABASE_FILES, openDesk, removeDemo, type OpenDesk } from './desk.ts';
import { dogFileHandlers } from './dogFile.ts';
import { dogHandlers } from './dogs.ts';
import { draftHandlers } from './drafts.ts';
import { handoutHandlers } from './handouts/handlers.ts';
import { practiceHandlers, readLogo, readPractice } from './practice.ts';
import { coreError, inputError } from './refuse.ts';
import { assertRuntime } from './runtime.ts';
import { visitHandlers } from './visits.ts';

export interface ServiceOptions {
  /** The folder of records. */
  readonly folder: string;
  /** The folder with the fonts of the handouts. */
  readonly fontsFolder: string;
  readonly version: string;
  readonly clock: () => Date;
  /** Receives lines without personal data. */
  readonly log?: (line: string) => void;
}

export interface Service extends Caller {
  close(): Promise<void>;
}

const handlers = {
  ...practiceHandlers,
  ...clientHandlers,
  ...dogHandlers,
  ...dogFileHandlers,
  ...visitHandlers,
  ...draftHandlers,
} satisfies Partial<Handlers<CallName>>;

/**
 * The service behind both windows: parses every input with the contract's schema, answers with
 * values only, and never throws to the caller. Opens the own practice by itself where one exists.
 * @throws Error when the runtime cannot load the database driver.
 */
export function createService(options: ServiceOptions): Service {
  assertRuntime();
  let open: OpenDesk | null = null;
  // Calls run one after the other: a switch of practice must not overtake a save.
  let queue: Promise<unknown> = Promise.resolve();

  const ownExists = (): boolean => existsSync(join(options.folder, DATABASE_FILES.own));

  async function switchTo(which: 'own' | 'demo'): Promise<void> {
    await open?.close();
    open = null;
    if (which === 'demo') removeDemo(options.folder);
    open = openDesk(options.folder, which, options.clock);
    if (which === 'demo') await seedDemo(open);
  }

  async function status(): Promise<AppStatus> {
    return {
      version: options.version,
      open: open?.which ?? null,
      ownExists: ownExists(),
      today: localDay(options.clock()),
      folder: options.folder,
      practice: open === null ? null : await readPractice(open),
      logo: open === null ? null : await readLogo(open),
    };
  }

  async function run(name: CallName, input: unknown): Promise<Answer<unknown>> {
    try {
      if (!Object.hasOwn(contract, name)) {
        return fail({ kind: 'input', message: 'There is no such call.' });
      }
      const parsed = contract[name].input.safeParse(input);
      if (!parsed.success) return fail(inputError(parsed.error));
      if (open === null && ownExists()) await switchTo('own');
      return { ok: true, value: await answer(name, parsed.data) };
    } catch (error) {
      return fail(errorValue(error, options.log));
    }
  }

  async function answer(name: CallName, input: unknown): Promise<unknown> {
    if (name === 'app/status') return status();
    if (name === 'app/open') {
      await switchTo((input as { which: 'own' | 'demo' }).which);
      return status();
    }
    if (open === null) {
      throw new Refusal({ kind: 'no-practice', message: 'No practice is open yet.' });
    }
    const all = { ...handlers, ...handoutHandlers(options.fontsFolder) };
    const handler = all[name] as (desk: Desk, input: unknown) => Promise<unknown>;
    return handler(open, input);
  }

  return {
    call<N extends CallName>(name: N, input: InputOf<N>): Promise<Answer<ResultOf<N>>> {
      const turn = queue.then(() => run(name, input)) as Promise<Answer<ResultOf<N>>>;
      queue = turn;
      return turn;
    },
    async close() {
      await queue;
      await open?.close();
      open = null;
    },
  };
}

function fail(error: AppError): Answer<never> {
  return { ok: false, error };
}

function errorValue(thrown: unknown, log: ServiceOptions['log']): AppError {
  const error = storageRefusal(thrown);
  if (error instanceof Refusal) return error.error;
  const argument = coreError(error);
  if (argument !== undefined) return argument;
  const reference = randomUUID().slice(0, 8);
  // The stack names our own code only; a message could carry what was typed, so it is left out.
  const stack = error instanceof Error ? (error.stack ?? '').split('\n').slice(1, 6).join(' ') : '';
  log?.(`internal ${reference} ${error instanceof Error ? error.name : typeof error} ${stack}`);
  return {
    kind: 'internal',
    message: `Something went wrong inside Trotwell (reference ${reference}); nothing was saved.`,
    reference,
  };
}
