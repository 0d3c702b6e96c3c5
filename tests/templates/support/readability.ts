// Readability of a text by published formulas. Both are from memory (mark M), not re-read.

const VOWELS = /[aeiouy]+/g;

/** Every text of a wording, however deep it lies. */
export function texts(words: unknown): readonly string[] {
  if (typeof words === 'string') return [words];
  if (words === null || typeof words !== 'object') return [];
  return Object.values(words).flatMap(texts);
}

/** Gaps become a short word, so that an unfilled name does not count as hard. */
function plain(text: string): string {
  return text.replace(/\{\w+\}/g, 'ten').replace(/[’']/g, '');
}

function wordsOf(text: string): readonly string[] {
  return plain(text).match(/[\p{L}\p{N}]+/gu) ?? [];
}

/** Each text counts as one sentence at least: list items and headings end without a stop. */
function sentencesOf(text: string): number {
  const closed = /[.!?:]$/.test(text.trim()) ? text : `${text}.`;
  return (plain(closed).match(/[.!?:](\s|$)/g) ?? []).length;
}

/** Syllables of an English word, by its groups of vowels. */
export function syllables(word: string): number {
  const lower = word.toLowerCase();
  const silent = /[^l]e$|[aeiouy]le$|[^td]ed$|[^cgsxz]es$/.test(lower) ? 1 : 0;
  return Math.max(1, (lower.match(VOWELS) ?? []).length - silent);
}

/**
 * Flesch-Kincaid grade level: 0.39 × words per sentence + 11.8 × syllables per word − 15.59.
 * Source: Kincaid JP et al., Research Branch Report 8-75, 1975 (M). Grade + 5 is about the age.
 */
export function fleschKincaidGrade(list: readonly string[]): number {
  const words = list.flatMap(wordsOf);
  const sentences = list.reduce((sum, text) => sum + sentencesOf(text), 0);
  const sounds = words.reduce((sum, word) => sum + syllables(word), 0);
  return 0.39 * (words.length / sentences) + 11.8 * (sounds / words.length) - 15.59;
}

/**
 * LIX: words per sentence + percentage of words over six letters. Not tied to one language; up to
 * about 40 counts as easy. Source: Björnsson CH, Läsbarhet, 1968 (M).
 */
export function lix(list: readonly string[]): number {
  const words = list.flatMap(wordsOf);
  const sentences = list.reduce((sum, text) => sum + sentencesOf(text), 0);
  const long = words.filter((word) => word.length > 6).length;
  return words.length / sentences + (100 * long) / words.length;
}
