import { randomBytes, timingSafeEqual } from 'node:crypto';
import type { lockCalls } from '../../contract/calls/lock.ts';
import { Refusal } from '../../contract/errors.ts';
import type { Context, OwnHandlers } from '../database/context.ts';
import { putRow } from '../database/rows.ts';
import type { OpenContext } from '../database/open.ts';
import { stretch } from './passphrase.ts';
import type { Practices } from '../practice/practices.ts';
import { badField } from '../refuse.ts';
import type { AppLock } from './lock.ts';
import type { Tries } from './tries.ts';

export interface LockRoom {
  readonly lock: AppLock;
  readonly tries: Tries;
  readonly practices: Practices;
}

/** Those that wait for their turn; `lock/now` does not. */
export type LockCall = Exclude<keyof typeof lockCalls, 'lock/now'>;
export type LockHandlers = OwnHandlers<LockCall>;

const KEY_BYTES = 32;

/** The minutes until the own practice locks itself; null without a lock. */
export function idleMinutesOf(context: Context): number | null {
  if (context.which !== 'own') return null;
  const minutes = context.raw.prepare('SELECT idle_minutes FROM app_lock').pluck().get();
  return (minutes as number | undefined) ?? null;
}

export function lockHandlers(room: LockRoom): LockHandlers {
  const { lock, practices } = room;
  return {
    'lock/set': async ({ passphrase, present, idleMinutes }) => {
      const context = needOwn(practices);
      if (idleMinutesOf(context) !== null) await prove(room, context, present ?? '', 'present');
      if (passphrase === null) await context.db.deleteFrom('appLock').execute();
      else await keepLock(context, passphrase, idleMinutes);
      lock.change(passphrase === null ? null : idleMinutes);
      return practices.status();
    },
    'lock/open': async ({ passphrase }) => {
      const context = needOwn(practices);
      if (idleMinutesOf(context) !== null) await prove(room, context, passphrase, 'passphrase');
      lock.unlock();
      return practices.status();
    },
    // To be noted as a person's call is all it is for.
    'lock/awake': () => Promise.resolve(null),
  };
}

/** @throws Refusal when the passphrase is wrong, or comes too soon after wrong ones */
async function prove(
  { tries }: LockRoom,
  context: Context,
  passphrase: string,
  field: string,
): Promise<void> {
  const seconds = tries.secondsLeft();
  if (seconds > 0) {
    throw badField(field, `After several wrong passphrases: wait ${seconds} s, then try again.`);
  }
  tries.begun();
  const row = await context.db.selectFrom('appLock').selectAll().executeTakeFirstOrThrow();
  const given = await stretch(passphrase, row.salt, KEY_BYTES);
  if (timingSafeEqual(given, row.verifier)) {
    tries.right();
    return;
  }
  throw badField(field, 'This is not the passphrase.');
}

async function keepLock(context: Context, passphrase: string, idleMinutes: number): Promise<void> {
  const salt = randomBytes(16);
  const verifier = await stretch(passphrase, salt, KEY_BYTES);
  const row = { salt, verifier, idleMinutes, updatedAt: context.instant() };
  await putRow(context.db, 'appLock', 'id', { id: 1, ...row });
}

function needOwn(practices: Practices): OpenContext {
  const context = practices.context();
  if (context?.which === 'own') return context;
  throw new Refusal({
    kind: 'conflict',
    message: 'The lock is for your own practice. Open it first.',
  });
}
