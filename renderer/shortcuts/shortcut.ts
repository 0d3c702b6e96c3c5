import type { MaybeRefOrGetter } from 'vue';

/** Where a shortcut works, as the sheet's headings name it. */
export const SCOPES = {
  app: 'Everywhere',
  dog: 'On this dog’s page',
  visit: 'To the parts of this visit',
  fields: 'In the fields of this visit',
} as const;
export type Scope = keyof typeof SCOPES;

/** Something the keyboard does at once. */
export interface Shortcut {
  /**
   * Alternatives: one character as it is typed ("?", "v"), or "Mod+k" (Ctrl, on a Mac Cmd). Keys of
   * fields are listened for by their form, and told of here: "Enter", "Shift+Enter".
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
export type Pressed = Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>;

export function isMac(platform: string): boolean {
  return /^(Mac|iP)/.test(platform);
}

/** Whether the key is a bare character, which speech input can produce by accident. */
export const isBare = (key: string): boolean => key.length === 1;

/**
 * Whether `pressed` is `key`. Shift is left aside for signs, which keyboards put in different
 * places, and has to be up for letters.
 */
export function matches(key: string, pressed: Pressed, mac: boolean): boolean {
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

/** The keys of one alternative as they are printed: ["Ctrl", "K"], ["Shift", "Enter"]. */
export function keyCaps(key: string, mac: boolean): readonly string[] {
  if (isBare(key)) return [key.toUpperCase()];
  return key.split('+').map((part) => {
    if (part === 'Mod') return mac ? 'Cmd' : 'Ctrl';
    return isBare(part) ? part.toUpperCase() : part;
  });
}

const TYPED_INTO =
  'input, select, textarea, [contenteditable]:not([contenteditable="false"]), [role="textbox"], [role="combobox"], [role="listbox"], [role="spinbutton"], [role="slider"]';

/** Whether a key pressed there belongs to a field or to an open sheet, and not to a shortcut. */
export function belongsElsewhere(target: EventTarget | null): boolean {
  if (!(target instanceof Element)) return false;
  return (
    target.closest(`${TYPED_INTO}, [role="dialog"], [role="alertdialog"], [role="menu"]`) !== null
  );
}
