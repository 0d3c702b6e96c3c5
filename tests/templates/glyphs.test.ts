import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { FONT_FILE_NAMES } from '../../templates/fonts.ts';
import {
  breakable,
  drawable,
  fontCoverage,
  missingCharacters,
  REPLACEMENT,
  sharedCoverage,
} from '../../templates/glyphs.ts';
import { fontsFolder } from './support/folders.ts';

interface FontkitFont {
  hasGlyphForCodePoint(point: number): boolean;
  readonly characterSet: readonly number[];
}

// The reference reader: fontkit, which pdfkit itself draws with.
const require = createRequire(createRequire(import.meta.url).resolve('pdfmake'));
const fontkit = createRequire(require.resolve('pdfkit'))('fontkit') as {
  create(bytes: Buffer): FontkitFont;
};
const files = FONT_FILE_NAMES.map((name) => ({
  name,
  bytes: readFileSync(join(fontsFolder, name)),
}));

describe('what the fonts can draw', () => {
  it.each(files)('reads the character map of $name as fontkit does', ({ bytes }) => {
    const ours = fontCoverage(bytes);
    const theirs = fontkit.create(bytes);
    expect(ours.size).toBeGreaterThan(700);
    for (const point of theirs.characterSet) expect(ours.has(point)).toBe(true);
    for (const point of ours) expect(theirs.hasGlyphForCodePoint(point)).toBe(true);
  });

  it('refuses bytes that are no font', () => {
    expect(() => fontCoverage(new Uint8Array(64))).toThrow(/character map/);
  });
});

describe('text that the fonts cannot draw', () => {
  const coverage = sharedCoverage(files.map((file) => file.bytes));

  it('is replaced by a mark that can be seen', () => {
    expect(drawable('Bo 犬', coverage)).toBe(`Bo ${REPLACEMENT}`);
    expect(coverage.has(REPLACEMENT.codePointAt(0) ?? 0)).toBe(true);
  });

  it('is named once each', () => {
    expect(missingCharacters('犬🐕犬', coverage)).toEqual(['犬', '🐕']);
  });

  it('composes letters that were typed in two parts', () => {
    expect(drawable('Zoe\u0308', coverage)).toBe('Zoë');
  });
});

describe('a very long word', () => {
  it('may be broken between its letters, never between a letter and its accents', () => {
    expect(breakable('Bell'.repeat(8))).toBe('BellBellBell\u200bBellBellBell\u200bBellBell');
    const accented = 'q\u0308'.repeat(26);
    expect(breakable(accented).split('\u200b')).toEqual([
      'q\u0308'.repeat(12),
      'q\u0308'.repeat(12),
      'q\u0308'.repeat(2),
    ]);
  });

  it('is left alone where a line can be broken anyway', () => {
    for (const text of [
      'A dog walks before it runs and runs before it pulls.',
      'Rückwärtsbewegungsübung',
      'https://doi.org/10.1000/an-invented-number',
    ]) {
      expect(breakable(text)).toBe(text);
    }
  });
});
