import { describe, expect, it } from 'vitest';
import { ArgumentError, inRange, listOf, wholeInRange } from '../../core/check.ts';
import { figure } from '../../core/figure.ts';

const WEEKS = { min: 1, max: 52 };
const notANumber = (value: unknown) => value as number;

describe('a number from outside', () => {
  it('is taken at both ends of its range, and nowhere beyond', () => {
    for (const value of [1, 4.5, 52]) expect(inRange('weeks', value, 'weeks', WEEKS)).toBe(value);
    for (const value of [0.9, 52.1, Number.NaN, Infinity, '4', null, undefined, [4]]) {
      expect(() => inRange('weeks', notANumber(value), 'weeks', WEEKS)).toThrow(ArgumentError);
    }
  });

  it('is refused by name, unit and range, without a gap where there is no unit', () => {
    expect(() => inRange('weeks', 60, 'weeks', WEEKS)).toThrow(
      /^weeks must be from 1 to 52 weeks, but is 60$/,
    );
    expect(() => inRange('step', 60, '', WEEKS)).toThrow(/^step must be from 1 to 52, but is 60$/);
    expect(() => wholeInRange('weeks', 4.5, 'weeks', WEEKS)).toThrow(
      /^weeks must be a whole number from 1 to 52 weeks, but is 4.5$/,
    );
    expect(() => wholeInRange('step', 4.5, '', WEEKS)).toThrow(/whole number from 1 to 52, but/);
    expect(() => wholeInRange('weeks', 0, 'weeks', WEEKS)).toThrow(/from 1 to 52/);
  });
});

describe('a list from outside', () => {
  it('is a list, not what only counts like one', () => {
    expect(listOf('days', [])).toEqual([]);
    const counted = { length: 2 } as unknown as readonly number[];
    expect(() => listOf('days', counted)).toThrow(/^days must be a list/);
  });
});

describe('a figure', () => {
  it('without notes or inputs has none, and keeps those it is given', () => {
    const text = { id: 'height', label: 'Height', unit: 'm', formula: 'measured' };
    const bare = { ...text, evidence: 'D', mark: 'D', sources: [] } as const;
    expect(figure(0.5, bare)).toMatchObject({ notes: [], inputs: [] });
    const inputs = [{ label: 'Stick', value: 50, unit: 'cm' }];
    expect(figure(0.5, { ...bare, inputs, notes: ['Twice.'] })).toMatchObject({
      inputs,
      notes: ['Twice.'],
    });
  });
});
