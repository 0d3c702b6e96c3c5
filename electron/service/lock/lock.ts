import type { CallName } from '../../contract/contract.ts';
import type { LockState } from '../../contract/results.ts';
import { Refusal } from '../../contract/errors.ts';

/** Answered while locked; what they say carries no records. */
const WHILE_LOCKED: ReadonlySet<CallName> = new Set([
  'app/status',
  'lock/open',
  'lock/now',
  'work/state',
  'work/cancel',
] as const);

/** Calls a page makes by itself: they do not mean that somebody is there. */
const BY_ITSELF: ReadonlySet<CallName> = new Set([
  'app/status',
  'backup/status',
  'handouts/warmUp',
  'work/state',
  'lock/now',
] as const);

export interface Clocks {
  /** Milliseconds that never run backwards, but may stand still while the computer sleeps. */
  readonly monotonicMs: () => number;
  /** The machine's clock, which goes on during sleep, but may be set. */
  readonly wallMs: () => number;
}

export const lockedRefusal = (): Refusal =>
  new Refusal({ kind: 'locked', message: 'The records are locked. Give the passphrase.' });

/**
 * Keeps the own practice shut until its passphrase is given. It guards the way through the program
 * only: the file of records itself is not encrypted.
 */
export function createLock({ monotonicMs, wallMs }: Clocks) {
  let idleMinutes: number | null = null;
  let locked = false;
  let seen = { monotonic: monotonicMs(), wall: wallMs() };

  const see = (): void => {
    seen = { monotonic: monotonicMs(), wall: wallMs() };
  };

  /** True while locked; notices by itself that nobody was there for too long. */
  function isLocked(): boolean {
    if (idleMinutes === null) return false;
    // The longer of the two: a sleeping computer stops the one, a clock set back shortens the other.
    const idle = Math.max(monotonicMs() - seen.monotonic, wallMs() - seen.wall);
    if (idle >= idleMinutes * 60_000) locked = true;
    return locked;
  }

  return {
    isLocked,
    /** Null while the open practice has no lock. */
    state: (): LockState | null =>
      idleMinutes === null ? null : { locked: isLocked(), idleMinutes },
    /** Takes over the lock of a practice that was just opened (null without one); it starts locked. */
    take(minutes: number | null): void {
      idleMinutes = minutes;
      locked = minutes !== null;
      see();
    },
    /** Takes over a lock that was just set or changed by someone who is there. */
    change(minutes: number | null): void {
      idleMinutes = minutes;
      locked = false;
      see();
    },
    lock(): void {
      if (idleMinutes !== null) locked = true;
    },
    unlock(): void {
      locked = false;
      see();
    },
    /** @throws Refusal (locked) for a call that is not answered while locked */
    guard(name: CallName): void {
      if (isLocked() && !WHILE_LOCKED.has(name)) throw lockedRefusal();
    },
    /** Notes that a call came that a person caused. */
    note(name: CallName): void {
      if (!isLocked() && !BY_ITSELF.has(name)) see();
    },
  };
}
export type AppLock = ReturnType<typeof createLock>;
