import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

/** How long a start code opens the door: enough for a slow browser, too short to be of use later. */
const CODE_LIFE_MS = 2 * 60_000;

/** What became of a start code that was handed in. */
export type Exchange =
  | { readonly kind: 'key'; readonly key: string }
  /** The code was handed in before; while it was young, the window it opened is shut as well. */
  | { readonly kind: 'used' }
  /** Too old, replaced by a newer one, or of another start. */
  | { readonly kind: 'late' };

interface Issued {
  readonly digest: Buffer;
  readonly untilMs: number;
  /** The key that was given for it; null while nobody has handed the code in. */
  key: Buffer | null;
}

const digestOf = (text: string): Buffer => createHash('sha256').update(text).digest();
const secret = (): string => randomBytes(32).toString('base64url');

/**
 * Lets windows in. A start code stands in an address, and addresses are read by others: in the list
 * of processes, over the shoulder, in a terminal's scroll-back. So a code works once and for a short
 * time, and is exchanged for a key that is never shown.
 * @param nowMs milliseconds that never run backwards; a changed clock must not lengthen a code
 */
export function createDoor(nowMs: () => number = () => performance.now()) {
  let issued: Issued[] = [];
  let keys: Buffer[] = [];

  /** Looks through the whole list whatever it finds, in constant time for each entry. */
  const find = <T>(list: readonly T[], digest: (entry: T) => Buffer, given: string) => {
    const wanted = digestOf(given);
    return list.filter((entry) => timingSafeEqual(digest(entry), wanted)).at(0);
  };

  /** Two hands held one code, and nobody can tell which was the practitioner's: both stay out. */
  function withdraw(code: Issued): void {
    keys = keys.filter((key) => key !== code.key);
  }

  return {
    /** A new code. The one before it no longer opens anything. */
    newCode(): string {
      const code = secret();
      issued = issued.filter(({ key, untilMs }) => key !== null && untilMs > nowMs());
      issued.push({ digest: digestOf(code), untilMs: nowMs() + CODE_LIFE_MS, key: null });
      return code;
    },
    exchange(given: string): Exchange {
      const code = find(issued, ({ digest }) => digest, given);
      if (code === undefined || code.untilMs <= nowMs()) return { kind: 'late' };
      if (code.key !== null) {
        withdraw(code);
        return { kind: 'used' };
      }
      const key = secret();
      code.key = digestOf(key);
      keys.push(code.key);
      return { kind: 'key', key };
    },
    /** True when the key was given out by this door and not withdrawn. */
    opens: (given: string): boolean => find(keys, (key) => key, given) !== undefined,
  };
}
export type Door = ReturnType<typeof createDoor>;
