import { expect } from 'vitest';
import { inUnits, type Saying, type UnitChoices } from '../../core/quantityText.ts';

export const OTHER: UnitChoices = {
  weightUnit: 'lb',
  energyUnit: 'kJ',
  distanceUnit: 'mi',
  temperatureUnit: 'F',
};

/** Units of the first kind of practice; kg^0.75 is the metabolic weight of a published formula. */
export const FOREIGN = /(?<![\w/])(?:kg|kcal|km|cm)(?![\w^])|°C/;

/** Every saying is plain in SI, and names no unit that a practice of the other kind does not read. */
export function expectToReadInAnyUnits(sayings: readonly Saying[]): void {
  for (const { text, said = text } of sayings) {
    expect(text).not.toMatch(/[{}]/);
    expect(inUnits(said)).toBe(text);
    expect(inUnits(said, OTHER)).not.toMatch(FOREIGN);
    expect(inUnits(said, OTHER)).not.toMatch(/[{}]/);
  }
}
