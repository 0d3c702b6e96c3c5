import { describe, expect, it } from 'vitest';
import {
  LIMITS,
  limitSentence,
  markedRefusal,
  type Limit,
} from '../../../electron/contract/limits.ts';
import { firstStepKg, unitsOf } from '../../../renderer/units/dimensions.ts';
import { writeQuantity } from '../../../renderer/units/parseQuantity.ts';
import { DEFAULT_CHOICES, dayText, shownWith } from '../../../renderer/units/shown.ts';

const metric = shownWith(DEFAULT_CHOICES);
const imperial = shownWith({
  weightUnit: 'lb',
  energyUnit: 'kJ',
  distanceUnit: 'mi',
  temperatureUnit: 'F',
  dayFormat: 'MM/DD/YYYY',
});
const plain = (text: string) => text.replaceAll(/[\u00a0\u202f]/g, ' ');

describe('amounts in the units of the practice', () => {
  it('always carry their unit', () => {
    expect(plain(metric.amount('weight', 28.44))).toBe('28.4 kg');
    expect(plain(imperial.amount('weight', 28.44))).toBe('62.7 lb');
    expect(plain(metric.amount('energyPerDay', 661.97))).toBe('662 kcal/day');
    expect(plain(imperial.amount('energyPerDay', 661.97))).toBe('2,770 kJ/day');
    expect(plain(metric.amount('pace', 6.5))).toBe('6:30 min/km');
  });
  it('set thousands apart, and leave years and what is typed alone', () => {
    expect(plain(metric.amount('energyPerDay', 1233.6))).toBe('1,234 kcal/day');
    expect(plain(metric.amount('grams', 12_000))).toBe('12,000 g');
    expect(plain(metric.amount('climb', -1000))).toBe('−1,000 m');
    expect(metric.bare('energyPerDay', 1000)).toBe('1,000');
    expect(metric.bare('energyPerDay', 999)).toBe('999');
    expect(plain(metric.figure(1234.5, 'steps'))).toBe('1,235 steps');
    expect(plain(metric.figureRange(745, 1934, 'kcal/day'))).toBe('745 to 1,934 kcal/day');
    const sentence = 'Below {1038 kcal} a day since 2026-03-02.';
    // The number and its unit stay on one line.
    expect(metric.sentence(sentence)).toBe('Below 1,038\u00a0kcal a day since 2026-03-02.');
    expect(metric.sentence('By 5 % in 8 weeks.')).toBe('By 5\u00a0% in 8 weeks.');
    expect(writeQuantity(1200, unitsOf('energyPerDay', DEFAULT_CHOICES))).toBe('1200');
  });
  it('show a dash for what is not there', () => {
    expect(metric.amount('weight', null)).toBe('–');
  });
  it('lie apart by what is shown of them', () => {
    // 61.99 and 61.94 lb are shown as 62.0 and 61.9.
    expect(plain(imperial.gap('weight', 28.1182, 28.0955))).toBe('0.1 lb');
    expect(imperial.change('weight', 28.1182, 28.0955)).toBe('−0.1');
    expect(metric.change('weight', 25.949, 25.951)).toBe('+0.1');
    expect(metric.change('weight', 25.96, 26.04)).toBe('0.0');
  });
  it('show the step of a scale as it is engraved, without zeros at its end', () => {
    expect(plain(metric.amount('scaleStep', 0.1))).toBe('0.1 kg');
    expect(plain(metric.amount('scaleStep', 0.005))).toBe('0.005 kg');
    expect(plain(imperial.amount('scaleStep', firstStepKg('lb')))).toBe('0.2 lb');
  });
  it('never show a negative zero', () => {
    expect(plain(metric.amount('weight', -0.001))).toBe('0.0 kg');
  });
});

describe('figures of core', () => {
  it('are converted from their SI unit', () => {
    expect(plain(imperial.figure(10, 'kg'))).toBe('22.0 lb');
    expect(plain(metric.figure(0.9541, '%/week'))).toBe('0.95 %/week');
    expect(plain(metric.figure(-0.5, '%/week'))).toBe('−0.5 %/week');
    expect(plain(imperial.figure(20, '°C'))).toBe('68 °F');
  });
  it('spell a range once', () => {
    expect(plain(metric.figureRange(680, 920.4, 'kcal/day'))).toBe('680 to 920 kcal/day');
  });
});

describe('sentences', () => {
  const read = { text: 'Below 1,038 kcal a day.', said: 'Below {1038 kcal} a day.' };
  it('are read by what is marked in them, and as they were kept where nothing is', () => {
    expect(plain(imperial.says(read))).toBe('Below 4,343 kJ a day.');
    expect(plain(imperial.says({ text: read.text }))).toBe(read.text);
    expect(plain(metric.says(read))).toBe(read.text);
  });
  it('of a limit are told from the limit', () => {
    const told = (limit: Limit) => markedRefusal(limitSentence(limit));
    const { weightKg, distanceKm } = LIMITS;
    expect(plain(imperial.sentence(told(weightKg)))).toContain('0.22 to 330.7 lb.');
    expect(plain(imperial.sentence(told(distanceKm)))).toContain('0.12 to 62.1 mi.');
    expect(plain(metric.sentence(told(weightKg)))).toBe(limitSentence(weightKg));
  });
});

describe('days', () => {
  it.each([
    ['YYYY-MM-DD', '2025-02-03'],
    ['DD.MM.YYYY', '03.02.2025'],
    ['DD/MM/YYYY', '03/02/2025'],
    ['MM/DD/YYYY', '02/03/2025'],
  ] as const)('are written as %s', (format, text) => {
    expect(dayText('2025-02-03', format)).toBe(text);
  });
  it('know their weekday', () => {
    // 3 February 2025 was a Monday (ISO 8601 calendar).
    expect(metric.weekdayDay('2025-02-03')).toBe('Mon 2025-02-03');
  });
});
