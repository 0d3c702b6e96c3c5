import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** So many wrong tries are taken for slips of the hand (D). */
const FREE_TRIES = 3;
/** The longest wait between two tries, in seconds (D). */
const LONGEST_WAIT_S = 300;

/** Seconds to wait after so many wrong tries in a row: none at first, then 2, 4, 8 … up to 300. */
export function waitAfter(wrongTries: number): number {
  if (wrongTries < FREE_TRIES) return 0;
  return Math.min(2 ** (wrongTries - FREE_TRIES + 1), LONGEST_WAIT_S);
}

/** Where the count outlives the program; how many wrong tries there were in a row. */
export interface TriesNote {
  read(): number;
  write(wrongTries: number): void;
}

/**
 * Counts wrong tries and says how long the next one has to wait. A start goes on where the last one ended: the wait of the wrong tries before begins anew.
 * @param nowMs milliseconds that never run backwards; a changed clock must not shorten a wait
 */
export function countTries(nowMs: () => number, note: TriesNote) {
  let wrongTries: number | null = null;
  let notBefore = 0;

  function count(tries: number): void {
    wrongTries = tries;
    notBefore = nowMs() + waitAfter(tries) * 1000;
  }
  /** Read when it is first asked for: most practices have no lock. */
  function soFar(): number {
    if (wrongTries === null) count(note.read());
    return wrongTries ?? 0;
  }
  return {
    /** Seconds left before another try is looked at; 0 when one is. */
    secondsLeft(): number {
      soFar();
      return Math.max(0, Math.ceil((notBefore - nowMs()) / 1000));
    },
    /** Counts a try before it is looked at, so that ending the program meanwhile wins nothing. */
    begun(): void {
      count(soFar() + 1);
      note.write(wrongTries ?? 0);
    },
    right(): void {
      count(0);
      note.write(0);
    },
  };
}
export type Tries = ReturnType<typeof countTries>;

/** The note in a file of the folder of records. Whoever can remove it can read the records too. */
export function triesNote(folder: string): TriesNote {
  const file = join(folder, 'lock-tries.json');
  return {
    read() {
      try {
        const { wrongTries } = JSON.parse(readFileSync(file, 'utf8')) as { wrongTries?: unknown };
        return Number.isSafeInteger(wrongTries) ? Math.max(0, wrongTries as number) : 0;
      } catch {
        return 0;
      }
    },
    write(wrongTries) {
      try {
        if (wrongTries === 0) rmSync(file, { force: true });
        else writeFileSync(file, JSON.stringify({ wrongTries }), { mode: 0o600 });
      } catch {
        // A disk that takes nothing must not keep the practitioner out.
      }
    },
  };
}
