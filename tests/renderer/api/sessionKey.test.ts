import { beforeEach, describe, expect, it } from 'vitest';
import { takeSessionKey } from '../../../renderer/api/sessionKey.ts';

function open(hash: string): string | null {
  window.location.hash = hash;
  return takeSessionKey(window.location, window.history, window.sessionStorage);
}

describe('the key of a browser window', () => {
  beforeEach(() => window.sessionStorage.clear());

  it('is taken out of the address', () => {
    expect(open('#key=abc-123')).toBe('abc-123');
    expect(window.location.href).not.toContain('abc-123');
    expect(window.location.hash).toBe('#/');
  });
  it('stays with the tab over a reload, on any page', () => {
    open('#key=abc-123');
    expect(open('#/dogs/7')).toBe('abc-123');
    expect(window.location.hash).toBe('#/dogs/7');
  });
  it('is missing in a tab opened by hand', () => {
    expect(open('#/')).toBeNull();
  });
  it('is replaced by the key of a later start', () => {
    open('#key=old');
    expect(open('#key=new')).toBe('new');
  });
});
