import { describe, expect, it } from 'vitest';
import { en } from '../../templates/index.ts';
import { fleschKincaidGrade, lix, syllables, texts } from './support/readability.ts';

describe('the measures', () => {
  // Worked by hand from the formulas (mark C): 6 words, 1 sentence, 6 syllables, no long word.
  it('count as the formulas say', () => {
    expect(fleschKincaidGrade(['The cat sat on the mat.'])).toBeCloseTo(-1.45, 10);
    expect(lix(['The cat sat on the mat.'])).toBe(6);
    expect(lix(['Veterinary physiotherapy matters.'])).toBeCloseTo(103, 10);
  });

  it('count the syllables of an English word', () => {
    const counted = ['run', 'runs', 'temperature', 'scale', 'table', 'walked', 'needed'].map(
      syllables,
    );
    expect(counted).toEqual([1, 1, 4, 1, 2, 1, 2]);
  });
});

// Grade 7 is an age of about 12.
const HIGHEST_GRADE = 7;
const { frame, ...sheets } = en;

describe('the wording of the owner’s sheets can be read at about 12 years', () => {
  it.each(Object.entries(sheets))('%s', (_, words) => {
    expect(fleschKincaidGrade(texts(words))).toBeLessThanOrEqual(HIGHEST_GRADE);
  });

  it('holds no word that promises what nobody can promise', () => {
    const promise = new RegExp(['\\bsa', 'fe'].join(''), 'i');
    expect(texts({ frame, sheets }).filter((text) => promise.test(text))).toEqual([]);
  });
});
