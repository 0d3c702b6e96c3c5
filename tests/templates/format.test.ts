import { describe, expect, it } from 'vitest';
import { createFormat, fill, type PrintSettings } from '../../templates/format.ts';
import { de } from '../../templates/words/de.ts';
import { en } from '../../templates/words/en.ts';
import { es } from '../../templates/words/es.ts';
import { fr } from '../../templates/words/fr.ts';

const metric: PrintSettings = {
  paper: 'A4',
  dayFormat: 'DD.MM.YYYY',
  weightUnit: 'kg',
  energyUnit: 'kcal',
  distanceUnit: 'km',
  temperatureUnit: 'C',
};
const imperial: PrintSettings = {
  paper: 'LETTER',
  dayFormat: 'MM/DD/YYYY',
  weightUnit: 'lb',
  energyUnit: 'kJ',
  distanceUnit: 'mi',
  temperatureUnit: 'F',
};
const plain = (text: string) => text.replaceAll(/[\u00a0\u202f]/g, ' ');

describe('writing amounts', () => {
  const format = createFormat(metric, en.frame.numbers);
  const other = createFormat(imperial, en.frame.numbers);

  it('writes a number and its unit without a place to break', () => {
    expect(format.weight(24)).toBe('24.0\u00a0kg');
  });

  // The pound, mile and thermochemical calorie are exact by definition (mark S).
  it('converts at the edge only', () => {
    expect(plain(other.weight(0.45359237))).toBe('1.0 lb');
    expect(plain(other.energy(1000))).toBe('4,184 kJ');
    expect(plain(other.distance(1.609344))).toBe('1 mi');
    expect(plain(other.height(50.8))).toBe('20.0 in');
    expect(plain(other.temperature(20))).toBe('68 °F');
  });

  it('writes days in the format of the practice', () => {
    expect(plain(format.weekdayDay('2025-12-01'))).toBe('Mon 01.12.2025');
    expect(plain(format.shortDay('2025-12-01'))).toBe('Mon 01.12.');
    expect(plain(other.shortDay('2025-12-01'))).toBe('Mon 12/01');
  });

  it('writes ranges, fractions and minus signs', () => {
    expect(plain(format.energyRange(812.4, 990.6))).toBe('812 to 991 kcal');
    expect(plain(format.minutes(0.5))).toBe('0.5 min');
    expect(plain(format.minutes(26.62))).toBe('26.5 min');
    expect(format.trimmed(-3)).toBe('\u22123');
  });

  it.each([
    ['en', en, '1,934 kcal', '12,345.6', '\u22121,934'],
    ['de', de, '1 934 kcal', '12 345,6', '\u22121 934'],
    ['es', es, '1 934 kcal', '12 345,6', '\u22121 934'],
    ['fr', fr, '1 934 kcal', '12 345,6', '\u22121 934'],
  ])('sets thousands apart as the language does: %s', (_, words, energy, amount, negative) => {
    const written = createFormat(metric, words.frame.numbers);
    expect(plain(written.energy(1934))).toBe(energy);
    expect(plain(written.trimmed(12345.6))).toBe(amount);
    expect(plain(written.number(-1934))).toBe(negative);
    expect(written.day('2026-03-02')).toContain('2026');
  });

  it('uses the decimal mark of the language', () => {
    const comma = createFormat(metric, { ...en.frame.numbers, decimal: ',' });
    expect(plain(comma.weight(24.25))).toBe('24,3 kg');
  });
});

describe('filling a wording', () => {
  it('puts values into the gaps', () => {
    expect(fill('{a} and {b}', { a: 1, b: 'two' })).toBe('1 and two');
  });

  it('refuses to leave a gap open', () => {
    expect(() => fill('for {dog}', {})).toThrow(/needs a value for dog/);
  });
});
