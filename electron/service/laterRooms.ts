import { backupCalls } from '../contract/calls/backup.ts';
import { exchangeCalls } from '../contract/calls/exchange.ts';
import { goesHomeCalls } from '../contract/calls/goesHome.ts';
import { handoutCalls } from '../contract/calls/handouts.ts';
import { runCalls } from '../contract/calls/runs.ts';
import type { BackupHandlers, BackupRoom } from './backup/handlers.ts';
import type { BatchRoom } from './handouts/batch.ts';

// What prints, sends home, takes in, hands out and packs: large, and never asked for at a start. So
// none of it is read before the first of its calls comes.

type Answers = Readonly<Record<string, (...asked: never[]) => Promise<unknown>>>;

/**
 * The handlers of a room that is read when the first of its calls comes.
 * @param calls the calls of the room, as the contract lists them
 */
function whenAsked<R extends Answers>(
  calls: Readonly<Record<keyof R, unknown>>,
  read: () => Promise<R>,
): R {
  let room: Promise<R> | undefined;
  const answer =
    (name: keyof R) =>
    async (...asked: never[]): Promise<unknown> => {
      room ??= read();
      return (await room)[name]!(...asked);
    };
  return Object.fromEntries(Object.keys(calls).map((name) => [name, answer(name)])) as Answers as R;
}

interface LaterRooms extends BatchRoom {
  readonly version: string;
}

export const laterRooms = (room: LaterRooms) => ({
  ...whenAsked(goesHomeCalls, async () =>
    (await import('./goesHome/handlers.ts')).goesHomeHandlers(room),
  ),
  ...whenAsked(handoutCalls, async () =>
    (await import('./handouts/handlers.ts')).handoutHandlers(room),
  ),
  ...whenAsked(exchangeCalls, async () =>
    (await import('./exchange/handlers.ts')).exchangeHandlers(room),
  ),
  ...whenAsked(runCalls, async () =>
    (await import('./runs/handlers.ts')).runHandlers(room.transfer),
  ),
});

/** Backups need no open practice. */
export const backups = (room: BackupRoom): BackupHandlers =>
  whenAsked(backupCalls, async () => (await import('./backup/handlers.ts')).backupHandlers(room));
