import { Window } from 'happy-dom';
import { beforeEach, describe, expect, it } from 'vitest';
import { openSession, type SessionKey } from '../../../renderer/api/sessionKey.ts';

let asked: string[];
/** Of its own: what an earlier file left running can still lead the shared window elsewhere. */
let tab: Window;

/** A host that lets every code in but two, as it answers over HTTP. */
const host = (async (path: string, init: RequestInit) => {
  asked.push(`${init.method} ${path}`);
  const { code } = JSON.parse(init.body as string) as { code: string };
  if (code === 'unplugged') throw new TypeError('Failed to fetch');
  return code === 'used' || code === 'late'
    ? Response.json({ refused: code }, { status: 410 })
    : Response.json({ key: `key-of-${code}` });
}) as typeof fetch;

function open(hash: string): Promise<SessionKey> {
  tab.location.hash = hash;
  const { location, history, sessionStorage } = tab as unknown as typeof globalThis.window;
  return openSession({ location, history, sessionStorage, fetch: host });
}

describe('the key of a browser window', () => {
  beforeEach(() => {
    tab = new Window({ url: 'http://127.0.0.1:4000/' });
    asked = [];
  });

  it('is exchanged for the start code, which leaves the address', async () => {
    expect(await open('#start=abc-123')).toEqual({ key: 'key-of-abc-123', refused: null });
    expect(asked).toEqual(['POST /start']);
    expect(tab.location.href).not.toContain('abc-123');
    expect(tab.location.hash).toBe('#/');
  });
  it('leads to the page that the address names behind the code', async () => {
    expect(await open('#start=abc-123&/restore?file=t0&name=L%C3%B6we%20%26%20Sohn')).toMatchObject(
      {
        key: 'key-of-abc-123',
      },
    );
    expect(tab.location.hash).toBe('#/restore?file=t0&name=L%C3%B6we%20%26%20Sohn');
    await open('#start=abc-123&elsewhere');
    expect(tab.location.hash).toBe('#/');
  });
  it('stays with the tab over a reload, on any page, without asking again', async () => {
    await open('#start=abc-123');
    expect(await open('#/dogs/7')).toEqual({ key: 'key-of-abc-123', refused: null });
    expect(tab.location.hash).toBe('#/dogs/7');
    expect(asked).toHaveLength(1);
  });
  it('is missing in a tab opened by hand', async () => {
    expect(await open('#/')).toEqual({ key: null, refused: 'no-key' });
    expect(asked).toEqual([]);
  });
  it('is replaced by the key of a later start', async () => {
    await open('#start=old');
    expect(await open('#start=new')).toMatchObject({ key: 'key-of-new' });
    expect(await open('#/')).toMatchObject({ key: 'key-of-new' });
  });
  it.each(['used', 'late'])(
    'is not given for a %s code, and the window knows why',
    async (code) => {
      expect(await open(`#start=${code}`)).toEqual({ key: null, refused: code });
      expect(tab.location.href).not.toContain(code);
    },
  );
  it('is missing when the host does not answer', async () => {
    expect(await open('#start=unplugged')).toEqual({ key: null, refused: 'no-key' });
  });
});
