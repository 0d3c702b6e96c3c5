import { beforeEach, describe, expect, test } from 'vitest';
import { createDoor, type Door } from '../../electron/loopback/door.ts';

let now: number;
let door: Door;

beforeEach(() => {
  now = 1_000;
  door = createDoor(() => now);
});

function enter(code: string): string {
  const exchanged = door.exchange(code);
  return exchanged.kind === 'key' ? exchanged.key : expect.fail(`The code was ${exchanged.kind}.`);
}

describe('a start code', () => {
  test('is exchanged for a key that opens, and is itself no key', () => {
    const code = door.newCode();
    const key = enter(code);
    expect(door.opens(key)).toBe(true);
    expect(door.opens(code)).toBe(false);
    expect(key).not.toContain(code);
  });

  test('and its key carry 256 bits and never repeat', () => {
    const seen = new Set<string>();
    for (let i = 0; i < 100; i++) {
      const code = door.newCode();
      seen.add(code).add(enter(code));
    }
    expect(seen.size).toBe(200);
    for (const text of seen) expect(Buffer.from(text, 'base64url')).toHaveLength(32);
  });

  test('works for two minutes', () => {
    const young = door.newCode();
    now += 119_999;
    expect(door.opens(enter(young))).toBe(true);
    const old = door.newCode();
    now += 120_000;
    expect(door.exchange(old)).toEqual({ kind: 'late' });
  });

  test('gives way to the next', () => {
    const first = door.newCode();
    const second = door.newCode();
    expect(door.exchange(first)).toEqual({ kind: 'late' });
    expect(door.opens(enter(second))).toBe(true);
  });

  test.each(['', 'x', 'é', '\u0000', 'a'.repeat(43)])(
    'of another start (%j) opens nothing',
    (code) => {
      door.newCode();
      expect(door.exchange(code)).toEqual({ kind: 'late' });
    },
  );
});

// RFC 6749, 4.1.2 (M): a code used more than once must be denied, and what was issued on it should be
// revoked. The same reasoning holds for a code that other users of the machine can read.
describe('a start code handed in twice', () => {
  test('opens no second window and shuts the first', () => {
    const code = door.newCode();
    const key = enter(code);
    expect(door.exchange(code)).toEqual({ kind: 'used' });
    expect(door.opens(key)).toBe(false);
    expect(door.exchange(code)).toEqual({ kind: 'used' });
  });

  test('leaves the windows of other codes open', () => {
    const other = enter(door.newCode());
    const code = door.newCode();
    enter(code);
    door.exchange(code);
    expect(door.opens(other)).toBe(true);
    expect(door.opens(enter(door.newCode()))).toBe(true);
  });

  test('shuts it also when a newer code was given out meanwhile', () => {
    const code = door.newCode();
    const key = enter(code);
    door.newCode();
    expect(door.exchange(code)).toEqual({ kind: 'used' });
    expect(door.opens(key)).toBe(false);
  });

  test('does no harm once it is old: an address found in a history shuts no window', () => {
    const code = door.newCode();
    const key = enter(code);
    now += 120_000;
    expect(door.exchange(code)).toEqual({ kind: 'late' });
    expect(door.opens(key)).toBe(true);
  });
});
