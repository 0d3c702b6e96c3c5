/** So many wrong tries are taken for slips of the hand (D). */
const FREE_TRIES = 3;
/** The longest wait between two tries, in seconds (D). */
const LONGEST_WAIT_S = 300;

/** Seconds to wait after so many wrong tries in a row: none at first, then 2, 4, 8 … up to 300. */
export function waitAfter(wrongTries: number): number {
  if (wrongTries < FREE_TRIES) return 0;
  return Math.min(2 ** (wrongTries - FREE_TRIES + 1), LONGEST_WAIT_S);
}

/** Counts wrong tries and says how long the next one has to wait. */
export interface Tries {
  /** Seconds left before another try is looked at; 0 when one is. */
  secondsLeft(): number;
  wrong(): void;
  right(): void;
}

/** @param nowMs milliseconds that never run backwards; a changed clock must not shorten a wait */
export function countTries(nowMs: () => number): Tries {
  let wrongTries = 0;
  let notBefore = 0;
  return {
    secondsLeft: () => Math.max(0, Math.ceil((notBefore - nowMs()) / 1000)),
    wrong() {
      wrongTries += 1;
      notBefore = nowMs() + waitAfter(wrongTries) * 1000;
    },
    right() {
      wrongTries = 0;
      notBefore = 0;
    },
  };
}
