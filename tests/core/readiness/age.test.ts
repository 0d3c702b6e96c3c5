import { describe, expect, it } from 'vitest';
import {
  adviceRules,
  ageGate,
  expectedLifeYears,
  isSenior,
  screenForRunning,
  type RuleChanges,
  type ScreeningInput,
} from '../../../core/index.ts';
import { READY } from './inputs.ts';

// Age and body condition at the bounds that their rules name: 12 months, from 20 kg 18 (CP), from
// 40 kg and after early neutering longer (D).

const reasonOf = (changes: ScreeningInput, code: string) =>
  screenForRunning({ ...READY, ...changes }).reasons.find((reason) => reason.code === code);

describe('the age to run from', () => {
  it.each([
    [19.9, undefined, 12, 12],
    [20, undefined, 18, 18],
    [39.9, undefined, 18, 18],
    [40, undefined, 18, 24],
    [10, 11.9, 12, 18],
    [10, 12, 12, 12],
    [30, 8, 18, 24],
    [45, 8, 18, 24],
  ])('at %d kg, neutered at %s months: from %d months, better from %d', (kg, at, must, better) => {
    expect(ageGate(kg, at)).toEqual({ requiredMonths: must, advisedMonths: better });
  });

  it('is not told of a dog that cannot be', () => {
    for (const kg of [0, 151]) expect(() => ageGate(kg)).toThrow(/adultWeightKg must be from 0.1/);
    expect(() => ageGate(30, 0)).toThrow(/neuteredAtMonths must be from 1 to 240 months/);
  });

  const GIANT = ['giantFromKg', 'ageGiantAdvisedMonths'];
  const EARLY = ['earlyNeuterBeforeMonths', 'earlyNeuterExtraMonths'];
  it.each<[number, number | undefined, RuleChanges, readonly string[]]>([
    [39.9, undefined, {}, []],
    [40, undefined, {}, GIANT],
    [30, 12, {}, []],
    [30, 11, {}, EARLY],
    [45, 8, {}, [...GIANT, ...EARLY]],
    // 12 months more than 18 would be 30: the most that is advised cuts them.
    [30, 8, { earlyNeuterExtraMonths: 12 }, [...EARLY, 'ageGiantAdvisedMonths']],
    [45, 8, { earlyNeuterExtraMonths: 12 }, [...GIANT, ...EARLY]],
    [30, 12, { earlyNeuterExtraMonths: 12 }, []],
  ])('at %d kg, neutered at %s months, with %o, is advised by %j', (kg, at, rules, expected) => {
    expect(adviceRules(kg, at, rules)).toEqual(expected);
  });
});

describe('the last quarter of a life', () => {
  // Medians of 12.7 and 11.9 years (S); 10 from 40 kg on and 9.8 for short noses (D).
  it.each([
    [9.9, 12.7],
    [10, 11.9],
    [39.9, 11.9],
    [40, 10],
  ])('of a dog of %d kg: expected %d years', (kg, years) => {
    expect(expectedLifeYears(kg)).toBe(years);
    expect(expectedLifeYears(kg, true)).toBe(9.8);
    // Three quarters of it in months.
    expect(isSenior(years * 9, kg)).toBe(true);
    expect(isSenior(years * 9 - 0.01, kg)).toBe(false);
    expect(isSenior(9.8 * 9, kg, {}, true)).toBe(true);
  });

  it('is noted beside closed plates as well, and names its rule', () => {
    const old = { ageMonths: 120, radiographicClearance: true };
    expect(reasonOf(old, 'senior')).toMatchObject({
      gate: 'note',
      params: { ageMonths: 120, requiredMonths: 18, advisedMonths: 18 },
      rules: ['seniorFromPercent'],
    });
    expect(reasonOf({ ...old, ageMonths: 40 }, 'senior')).toBeUndefined();
  });
});

describe('what is said of the age', () => {
  it('names age, gate and rule of the weight class, from 20 kg on that of the large', () => {
    const young = (adultWeightKg: number) =>
      reasonOf({ ageMonths: 11, adultWeightKg }, 'age-growth');
    expect(young(20)).toMatchObject({
      params: { ageMonths: 11, requiredMonths: 18 },
      rules: ['ageLargeMonths', 'largeFromKg'],
      evidence: 'C',
      mark: 'CP',
    });
    expect(young(20)?.sources).toContain('hart2020');
    expect(young(19.9)).toMatchObject({ params: { requiredMonths: 12 } });
    expect(young(19.9)?.rules).toEqual(['ageSmallMonths', 'largeFromKg']);
  });

  it('names what waiting is advised for', () => {
    expect(reasonOf({ ageMonths: 20, adultWeightKg: 45 }, 'age-advice')).toMatchObject({
      gate: 'note',
      params: { ageMonths: 20, requiredMonths: 18, advisedMonths: 24 },
      rules: ['giantFromKg', 'ageGiantAdvisedMonths'],
    });
    expect(reasonOf({ ageMonths: 24, adultWeightKg: 45 }, 'age-advice')).toBeUndefined();
  });
});

describe('what is said of the body condition', () => {
  it('names the score, and the one to come down to', () => {
    const high = reasonOf({ bcs: 8 }, 'bcs-high');
    expect(high).toMatchObject({ params: { bcs: 8, mostBcs: 7 }, rules: ['bcsWalkOnlyFrom'] });
    expect(high?.change).toContain('7 or lower');
    expect(reasonOf({ bcs: 7 }, 'bcs-high')).toBeUndefined();
    expect(reasonOf({ bcs: 2 }, 'bcs-low')).toMatchObject({ params: { bcs: 2 } });
    expect(reasonOf({ bcs: 3 }, 'bcs-low')).toBeUndefined();
    expect(reasonOf({ bcs: 3 }, 'bcs-thin')).toMatchObject({ params: { bcs: 3 } });
  });
});
