import type { MaybeRefOrGetter } from 'vue';

/** Where a shortcut works, as the sheet's headings name it. */
export const SCOPES = {
  app: 'Everywhere',
  dog: 'On this dog’s page',
  visit: 'To the parts of this visit',
  fields: 'In the fields of this visit',
  rows: 'At the rows of this table',
} as const;
export type Scope = keyof typeof SCOPES;

/** Something the keyboard does at once. */
export interface Shortcut {
  /**
   * Alternatives: one character as it is typed ("?", "v"), "Mod+k" (Ctrl, on a Mac Cmd), or "Alt+1",
   * which works in fields too. Keys of fields are listened for by their form, and told of here:
   * "Enter", "Shift+Enter".
   */
  readonly keys: readonly string[];
  /** What it does, as a line of the sheet: "New follow-up". */
  readonly words: MaybeRefOrGetter<string>;
  readonly scope: Scope;
  readonly run: () => unknown;
  /** Whether it works at the moment; without it, as long as its component is on the page. */
  readonly when?: () => boolean;
}

/** What of a keyboard event decides. */
export type Pressed = Pick<
  KeyboardEvent,
  'key' | 'code' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'
>;

export function isMac(platform: string): boolean {
  return /^(Mac|iP)/.test(platform);
}

const ALT_DIGIT = /^Alt\+(\d)$/;

/** Whether the key works wherever the focus is, in a field too. */
export const isHeld = (key: string): boolean => ALT_DIGIT.test(key);

/** Whether the key is a bare character, which speech input can produce by accident. */
export const isBare = (key: string): boolean => key.length === 1;

/**
 * Whether `pressed` is `key`. Shift is left aside for signs, which keyboards put in different
 * places, and has to be up for letters.
 */
export function matches(key: string, pressed: Pressed, mac: boolean): boolean {
  const [, digit] = ALT_DIGIT.exec(key) ?? [];
  if (digit !== undefined) return isAltDigit(digit, pressed);
  if (pressed.altKey) return false;
  const typed = pressed.key.toLowerCase();
  if (!isBare(key)) {
    const [held, other] = mac
      ? [pressed.metaKey, pressed.ctrlKey]
      : [pressed.ctrlKey, pressed.metaKey];
    return held && !other && !pressed.shiftKey && typed === key.slice('Mod+'.length);
  }
  if (pressed.ctrlKey || pressed.metaKey) return false;
  if (typed !== key) return false;
  return !pressed.shiftKey || !/\p{L}/u.test(key);
}

/** By its place on the keyboard: with Alt held the key itself may be any sign. */
function isAltDigit(digit: string, { code, altKey, ...held }: Pressed): boolean {
  return altKey && code === `Digit${digit}` && !held.ctrlKey && !held.metaKey && !held.shiftKey;
}

/** The keys of one alternative as they are printed: ["Ctrl", "K"], ["Shift", "Enter"]. */
export function keyCaps(key: string, mac: boolean): readonly string[] {
  if (isBare(key)) return [key.toUpperCase()];
  return key.split('+').map((part) => {
    if (part === 'Mod') return mac ? 'Cmd' : 'Ctrl';
    if (part === 'Alt') return mac ? 'Option' : 'Alt';
    return isBare(part) ? part.toUpperCase() : part;
  });
}

const TYPED_INTO =
  'input, select, textarea, [contenteditable]:not([contenteditable="false"]), [role="textbox"], [role="combobox"], [role="listbox"], [role="spinbutton"], [role="slider"]';

/** Whether a key pressed there belongs to a field or to an open sheet, and not to a shortcut. */
export function belongsElsewhere(target: EventTarget | null): boolean {
  return isIn(`${TYPED_INTO}, ${SHEETS}`, target);
}

const SHEETS = '[role="dialog"], [role="alertdialog"], [role="menu"]';

/** Whether a key pressed there belongs to an open sheet. */
export const belongsToSheet = (target: EventTarget | null): boolean => isIn(SHEETS, target);

const isIn = (where: string, target: EventTarget | null): boolean =>
  target instanceof Element && target.closest(where) !== null;
