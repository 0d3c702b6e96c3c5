import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LIMITS } from '../../../electron/contract/limits.ts';
import { unitsOf, type Dimension } from '../../../renderer/units/dimensions.ts';
import {
  rangeText,
  readQuantity,
  writeQuantity,
  type Asked,
} from '../../../renderer/units/parseQuantity.ts';
import { evenly, holds } from '../../support/laws.ts';

const METRIC = {
  weightUnit: 'kg',
  energyUnit: 'kcal',
  distanceUnit: 'km',
  temperatureUnit: 'C',
} as const;
const IMPERIAL = {
  weightUnit: 'lb',
  energyUnit: 'kJ',
  distanceUnit: 'mi',
  temperatureUnit: 'F',
} as const;

function asked(
  limit: keyof typeof LIMITS,
  dimension: Dimension,
  choices: Parameters<typeof unitsOf>[1] = METRIC,
): Asked {
  const { label, min, max } = LIMITS[limit];
  return { label, dimension, units: unitsOf(dimension, choices), min, max };
}

const weight = asked('weightKg', 'weight');

function valueOf(typed: string, what: Asked): number {
  const reading = readQuantity(typed, what);
  if (reading.kind !== 'value')
    throw new Error(`${typed} was not read: ${JSON.stringify(reading)}`);
  return reading.value;
}

describe('a weight as people type it', () => {
  // International pound: 0.45359237 kg exactly (agreement of 1959; S).
  it.each([
    ['28.4', 28.4],
    ['28,4', 28.4],
    ['28.4 kg', 28.4],
    ['28,4kg', 28.4],
    [' 28 ', 28],
    ['.5', 0.5],
    ['62 lb', 62 * 0.45359237],
    ['62lbs', 62 * 0.45359237],
    ['62 lb 4 oz', 62.25 * 0.45359237],
    ['850 g', 0.85],
    ['28 KG', 28],
  ])('reads %j', (typed, kg) => {
    expect(valueOf(typed, weight)).toBeCloseTo(kg, 10);
  });

  it('reads a bare number in the unit of the practice', () => {
    expect(valueOf('62', asked('weightKg', 'weight', IMPERIAL))).toBeCloseTo(28.12272694, 8);
  });

  it('keeps an empty field apart from a wrong one', () => {
    expect(readQuantity('  ', weight)).toEqual({ kind: 'empty' });
  });

  it.each(['heavy', '28 stone', '1.2.3', '-4', '--', '28 kg 3', '1e3'])('refuses %j', (typed) => {
    const reading = readQuantity(typed, weight);
    expect(reading.kind).toBe('refused');
    expect(reading).toHaveProperty('message', expect.stringContaining('Body weight'));
  });

  it('names the range, in the unit of the practice, when the number is outside it', () => {
    expect(readQuantity('500', weight)).toEqual({
      kind: 'refused',
      message: 'Body weight must be from 0.1 to 150 kg.',
    });
    const pounds = readQuantity('500', asked('weightKg', 'weight', IMPERIAL));
    expect(pounds).toHaveProperty('message', 'Body weight must be from 0.3 to 330 lb.');
  });
});

describe('a number that can be read two ways', () => {
  const grams = asked('gramsPerDay', 'grams');
  it.each(['1,200', '1.200'])('refuses %j grams and says how to write it', (typed) => {
    const reading = readQuantity(typed, grams);
    expect(reading).toHaveProperty('message', expect.stringContaining('write 1200 or 1.2'));
  });
  it('takes it where only one reading is in range', () => {
    expect(valueOf('28,400', weight)).toBe(28.4);
  });
  it('says what it took, and takes the grouped number where only that is in range', () => {
    expect(readQuantity('1,000', weight)).toMatchObject({ value: 1, doubtful: true });
    expect(readQuantity('1,500 g', weight)).toMatchObject({ value: 1.5, doubtful: true });
    expect(readQuantity('28.4', weight)).not.toHaveProperty('doubtful');
    // 2,500 kJ = 597.5 kcal; 2.5 kJ lies under the least that is taken (1 kcal = 4.184 kJ, S).
    const energy = asked('kcalPerDay', 'energyPerDay', IMPERIAL);
    expect(readQuantity('2,500', energy)).toMatchObject({ doubtful: true });
  });
  it('takes a small step of a scale', () => {
    expect(valueOf('0.005', asked('scaleStepKg', 'scaleStep'))).toBe(0.005);
  });
});

describe('other quantities', () => {
  it('reads a pace in minutes and seconds', () => {
    expect(valueOf('6:30', asked('paceMinPerKm', 'pace'))).toBe(6.5);
    expect(valueOf('10:00', asked('paceMinPerKm', 'pace', IMPERIAL))).toBeCloseTo(6.2137, 4);
  });
  it('writes a pace back the same way', () => {
    expect(writeQuantity(6.5, unitsOf('pace', METRIC))).toBe('6:30');
    expect(writeQuantity(6.9999, unitsOf('pace', METRIC))).toBe('7:00');
  });
  it('reads kilojoule', () => {
    // 1 kcal = 4.184 kJ exactly (thermochemical; S).
    expect(valueOf('1506 kJ', asked('kcalPer100g', 'energyPer100g'))).toBeCloseTo(359.94, 2);
  });
  it('reads an age in years where months are asked for', () => {
    expect(valueOf('1.5 years', asked('neuteredAtMonths', 'months'))).toBe(18);
  });
  it('spells a range in the unit of the practice', () => {
    expect(rangeText(asked('distanceKm', 'distance', IMPERIAL))).toBe('0.2 to 62 mi');
  });
});

describe('a printed range', () => {
  const cases = [
    ['weightKg', 'weight'],
    ['scaleStepKg', 'scaleStep'],
    ['kcalPerDay', 'energyPerDay'],
    ['kcalPer100g', 'energyPer100g'],
    ['distanceKm', 'distance'],
    ['paceMinPerKm', 'pace'],
    ['withersCm', 'length'],
  ] as const;
  it.each(cases)('is accepted at both its ends and between them: %s', (limit, dimension) => {
    for (const choices of [METRIC, IMPERIAL]) {
      const what = asked(limit, dimension, choices);
      const [, low, high] = /^(\S+) to (\S+)/.exec(rangeText(what))!;
      const [from, to] = [Number(low), Number(high)];
      for (const share of [0, 0.25, 0.5, 0.75, 1]) {
        const between = String(Number((from + share * (to - from)).toFixed(2)));
        const typed = share === 0 ? low! : share === 1 ? high! : between;
        expect(readQuantity(typed, what).kind, `${typed} in ${rangeText(what)}`).toBe('value');
      }
      expect([low, high].every((end) => end!.replace(/^0\.0*|[.]/g, '').length <= 5)).toBe(true);
    }
  });
});

describe('a value written into a field and read again', () => {
  it.each([
    ['metric', METRIC],
    ['imperial', IMPERIAL],
  ])('comes back within what is shown (%s)', (_, choices) => {
    const what = asked('weightKg', 'weight', choices);
    holds(
      fc.property(evenly(0.2, 149), (kg) => {
        const again = valueOf(`${writeQuantity(kg, what.units)} ${what.units[0].name}`, what);
        expect(Math.abs(again - kg)).toBeLessThan(0.006);
      }),
      { seed: 1, numRuns: 300 },
    );
  });

  it('never yields a number outside the range, whatever is typed', () => {
    holds(
      fc.property(fc.string({ maxLength: 12 }), (typed) => {
        const reading = readQuantity(typed, weight);
        if (reading.kind !== 'value') return;
        expect(reading.value).toBeGreaterThanOrEqual(weight.min);
        expect(reading.value).toBeLessThanOrEqual(weight.max);
      }),
      { seed: 1, numRuns: 2000 },
    );
  });
});
