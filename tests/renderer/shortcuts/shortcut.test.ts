import { afterEach, describe, expect, it } from 'vitest';
import {
  belongsElsewhere,
  keyCaps,
  matches,
  type Pressed,
} from '../../../renderer/shortcuts/shortcut.ts';

const press = (key: string, held: Partial<Pressed> = {}): Pressed => ({
  key,
  code: '',
  ctrlKey: false,
  metaKey: false,
  altKey: false,
  shiftKey: false,
  ...held,
});

afterEach(() => {
  document.body.innerHTML = '';
});

describe('a key of a shortcut', () => {
  it.each([
    ['a letter', 'v', press('v'), true],
    ['the letter under Caps Lock', 'v', press('V'), true],
    ['another letter', 'v', press('b'), false],
    ['the letter with Shift', 'v', press('V', { shiftKey: true }), false],
    [
      'the letter with Ctrl, which belongs to the browser',
      'v',
      press('v', { ctrlKey: true }),
      false,
    ],
    ['the letter with Alt, which opens a menu', 'v', press('v', { altKey: true }), false],
    ['the letter with Cmd', 'v', press('v', { metaKey: true }), false],
    ['a sign that needs Shift on this keyboard', '/', press('/', { shiftKey: true }), true],
    ['the question mark', '?', press('?', { shiftKey: true }), true],
    ['Ctrl and the letter', 'Mod+k', press('k', { ctrlKey: true }), true],
    ['the bare letter instead of Ctrl and the letter', 'Mod+k', press('k'), false],
    ['Ctrl, Shift and the letter', 'Mod+k', press('K', { ctrlKey: true, shiftKey: true }), false],
    ['Cmd off a Mac', 'Mod+k', press('k', { metaKey: true }), false],
    ['Alt and the digit', 'Alt+2', press('2', { code: 'Digit2', altKey: true }), true],
    [
      'Alt and what the digit gives then',
      'Alt+2',
      press('™', { code: 'Digit2', altKey: true }),
      true,
    ],
    ['the digit without Alt', 'Alt+2', press('2', { code: 'Digit2' }), false],
    ['Alt and another digit', 'Alt+2', press('3', { code: 'Digit3', altKey: true }), false],
    [
      'AltGr, which is Ctrl and Alt',
      'Alt+2',
      press('²', { code: 'Digit2', altKey: true, ctrlKey: true }),
      false,
    ],
  ])('%s', (_what, key, pressed, expected) => {
    expect(matches(key, pressed, false)).toBe(expected);
  });

  it('is held with Cmd on a Mac, and not with Ctrl', () => {
    expect(matches('Mod+k', press('k', { metaKey: true }), true)).toBe(true);
    expect(matches('Mod+k', press('k', { ctrlKey: true }), true)).toBe(false);
  });

  it('is printed as the keyboard has it', () => {
    expect(keyCaps('v', false)).toEqual(['V']);
    expect(keyCaps('Mod+k', false)).toEqual(['Ctrl', 'K']);
    expect(keyCaps('Mod+k', true)).toEqual(['Cmd', 'K']);
    expect(keyCaps('Shift+Enter', false)).toEqual(['Shift', 'Enter']);
    expect(keyCaps('Mod+Enter', true)).toEqual(['Cmd', 'Enter']);
    expect(keyCaps('Alt+2', false)).toEqual(['Alt', '2']);
    expect(keyCaps('Alt+2', true)).toEqual(['Option', '2']);
  });
});

describe('a key pressed in a field', () => {
  it.each([
    '<input id="at" />',
    '<input id="at" type="radio" />',
    '<select id="at"></select>',
    '<textarea id="at"></textarea>',
    '<div contenteditable="true"><b id="at">x</b></div>',
    '<div role="dialog"><button id="at"></button></div>',
  ])('belongs to it: %s', (html) => {
    document.body.innerHTML = html;
    expect(belongsElsewhere(document.getElementById('at'))).toBe(true);
  });

  it.each(['<a id="at" href="#/">x</a>', '<button id="at"></button>', '<h1 id="at"></h1>'])(
    'is free elsewhere: %s',
    (html) => {
      document.body.innerHTML = html;
      expect(belongsElsewhere(document.getElementById('at'))).toBe(false);
    },
  );
});
