import { describe, expect, it } from 'vitest';
import { ageText } from '../../../renderer/dogs/facts.ts';

describe('the age in words', () => {
  it.each([
    ['2025-02-28', '1 month old'],
    ['2024-03-29', '12 months old'],
    ['2023-03-30', '23 months old'],
    ['2023-03-29', '2 years old'],
    ['2015-06-01', '9 years old'],
    ['2025-04-01', ''],
  ])('of a dog born on %s', (birthDay, words) => {
    expect(ageText(birthDay, '2025-03-29')).toBe(words);
  });
});
