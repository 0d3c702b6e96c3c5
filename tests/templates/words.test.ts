import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { RED_FLAGS } from '../../core/index.ts';
import { en, enPractice, LANGUAGES, OWNER_WORDS } from '../../templates/index.ts';
import { FONT_FILE_NAMES } from '../../templates/fonts.ts';
import { missingCharacters, sharedCoverage } from '../../templates/glyphs.ts';
import { fontsFolder } from './support/folders.ts';
import { lix, texts } from './support/readability.ts';

const others = LANGUAGES.filter((language) => language !== 'en');

/** Every text with the path of its keys. */
function paths(words: unknown, path = ''): readonly (readonly [string, string])[] {
  if (typeof words === 'string') return [[path, words]];
  if (words === null || typeof words !== 'object') return [];
  return Object.entries(words).flatMap(([key, value]) => paths(value, `${path}/${key}`));
}

const gaps = (text: string) => [...text.matchAll(/\{\w+\}/g)].map(String).sort();

/** Tables of a language's own; English prints core's own sentence there, which says more. */
const ownTables =
  /^\/sources\/(names|caveats)\/|^\/(reasons|changes)\/(goal-out-of-reach|rule-changed|loosened-rule)$/;

describe.each(others)('wording in %s', (language) => {
  const english = new Map(paths(en).filter(([path]) => !ownTables.test(path)));
  const own = new Map(paths(OWNER_WORDS[language]).filter(([path]) => !ownTables.test(path)));

  it('has every key of English and no other', () => {
    expect([...own.keys()].sort()).toEqual([...english.keys()].sort());
  });

  it('has the same gaps in every text', () => {
    const different = [...english].filter(
      ([path, text]) => gaps(text).join() !== gaps(own.get(path) ?? '').join(),
    );
    // A language may do without the dog's name where it reads better.
    const withoutDog = (text: string) =>
      gaps(text)
        .filter((gap) => gap !== '{dog}')
        .join();
    expect(
      different.filter(([path, text]) => withoutDog(text) !== withoutDog(own.get(path) ?? '')),
    ).toEqual([]);
  });

  it('is not left in English', () => {
    const same = [...english].filter(
      ([path, text]) => own.get(path) === text && /[a-z]{4}/i.test(text.replace(/\{\w+\}/g, '')),
    );
    expect(same.length).toBeLessThan(12);
  });

  it('names no source and no caveat that core does not know', () => {
    const sources = readFileSync(
      fileURLToPath(new URL('../../core/sources.ts', import.meta.url)),
      'utf8',
    );
    const { names, caveats } = OWNER_WORDS[language].sources;
    expect(Object.keys(names).filter((id) => !sources.includes(`${id}:`))).toEqual([]);
    expect(Object.keys(caveats).filter((text) => !sources.includes(`'${text}'`))).toEqual([]);
  });

  // LIX up to about 40 counts as easy (Björnsson 1968, M). German compounds lie higher by nature.
  it('is easy to read', () => {
    const { frame, sources, ...sheets } = OWNER_WORDS[language];
    expect(frame.language).toBe(language);
    expect(sources.title).not.toBe('');
    expect(lix(texts(sheets))).toBeLessThanOrEqual(40);
  });
});

describe('every wording', () => {
  const coverage = sharedCoverage(
    FONT_FILE_NAMES.map((name) => readFileSync(join(fontsFolder, name))),
  );

  it.each<readonly [string, unknown]>([
    ...LANGUAGES.map((key) => [key, OWNER_WORDS[key]] as const),
    ['letters', enPractice],
  ])('has a glyph in both fonts for every character: %s', (_, words) => {
    expect(missingCharacters(texts(words).join(''), coverage)).toEqual([]);
  });
});

describe('plain words for core’s reasons', () => {
  const core = fileURLToPath(new URL('../../core', import.meta.url));
  const code = readdirSync(core, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .map((file) => readFileSync(join(core, file), 'utf8'))
    .join('\n');
  const signs: readonly string[] = RED_FLAGS.map(({ id }) => `sign-${id}`);

  it('are there for all that a plan or its review can say, so that no sheet falls into English', () => {
    const files = ['reasons', 'judge', 'review', 'breaks'].map((name) =>
      readFileSync(join(core, 'ramp', `${name}.ts`), 'utf8'),
    );
    const codes = files.flatMap((text) =>
      [...text.matchAll(/'(review-[a-z0-9-]+)'|code: '([a-z0-9-]+)'/g)].map(
        (match) => (match[1] ?? match[2])!,
      ),
    );
    expect(codes.length).toBeGreaterThan(30);
    for (const language of others) {
      const { reasons } = OWNER_WORDS[language];
      expect([...new Set(codes)].filter((code) => !(code in reasons))).toEqual([]);
    }
  });

  it('are kept for codes that core uses', () => {
    const codes = [...Object.keys(en.reasons), ...Object.keys(en.changes)];
    const unknown = codes.filter(
      (key) =>
        !signs.includes(key) &&
        !code.includes(`'${key}'`) &&
        !/^review-lameness-(walk|trot)$/.test(key),
    );
    expect(unknown).toEqual([]);
  });

  it('exist for every warning sign', () => {
    expect(signs.filter((key) => !(key in en.reasons) || !(key in en.changes))).toEqual([]);
  });

  it('send the owner to the vet at once for the signs that core calls an emergency', () => {
    const urgent = RED_FLAGS.filter(({ id }) => /emergency/.test(en.reasons[`sign-${id}`] ?? ''));
    expect(urgent.map(({ id }) => id)).toEqual(
      RED_FLAGS.filter(({ emergency }) => emergency).map(({ id }) => id),
    );
  });
});
