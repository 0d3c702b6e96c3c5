const MOST_LETTERS = 120;

// No folders; nothing that turns or hides the text around it; nothing Windows refuses in a name.
const NOT_IN_A_NAME = /[\p{C}\p{Zl}\p{Zp}<>:"/\\|?*]/gu;

/**
 * A file's name and no more, whatever was handed over: the last part of a path, in the letters of
 * every language, without controls and leading dots, of at most 120 characters with its ending kept.
 */
export function plainFileName(given: string, otherwise: string): string {
  const last = given.toWellFormed().normalize('NFC').split(/[/\\]/).at(-1)!;
  const kept = last.replace(NOT_IN_A_NAME, '').replace(/^[.\s]+|[.\s]+$/g, '');
  const letters = [...kept];
  if (letters.length <= MOST_LETTERS) return kept || otherwise;
  const ending = /\.[A-Za-z0-9]{1,8}$/.exec(kept)?.[0] ?? '';
  return letters.slice(0, MOST_LETTERS - ending.length).join('') + ending;
}
