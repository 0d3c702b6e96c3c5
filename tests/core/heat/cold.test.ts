import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { heatBand, heatTable, type HeatDog, type RuleChanges } from '../../../core/index.ts';
import { evenly, holds } from '../../support/laws.ts';

const runs = { seed: 1, numRuns: 500 };

describe('cold', () => {
  it.each([
    [0, null, 1],
    [-0.1, 'cold care', 1],
    [-10, 'cold care', 1],
    [-10.1, 'half the run time', 0.5],
    [-20, 'half the run time', 0.5],
    [-20.1, 'no run', 0],
  ])('at %d °C: %s', (tempC, band, share) => {
    const at = heatBand({ tempC, humidityPct: 80 });
    expect(at.cold?.band ?? null).toBe(band);
    expect(at.runShare).toBe(share);
  });

  it.each<[string, HeatDog, boolean]>([
    ['an ordinary dog', { weightKg: 25, bcs: 5 }, false],
    ['a small dog', { weightKg: 9.9 }, true],
    ['a dog of 10 kg', { weightKg: 10 }, false],
    ['a thin dog', { weightKg: 25, bcs: 3 }, true],
    ['a senior', { weightKg: 25, senior: true }, true],
    ['a dog that was not weighed or scored', { weightKg: null, bcs: null }, false],
    ['a dog of body condition 4', { bcs: 4 }, false],
  ])('asks for a coat of %s: %o %s', (_, dog, coat) => {
    const { cold } = heatBand({ tempC: -3, humidityPct: 80, dog });
    expect(cold!.advice.some((line) => line.includes('coat'))).toBe(coat);
    expect(cold!.advice.join(' ')).toMatch(/Warm up for 15 minutes.*No running on ice/);
    expect(heatTable({ dog }).cold.coat).toBe(coat);
  });

  it('never gets milder as it gets colder', () => {
    const cold = evenly(-40, 0);
    const share = (tempC: number) => heatBand({ tempC, humidityPct: 80 }).runShare;
    holds(
      fc.property(cold, cold, (one, other) => {
        expect(share(Math.min(one, other))).toBeLessThanOrEqual(share(Math.max(one, other)));
      }),
      runs,
    );
  });
});

describe('what the cold is told with', () => {
  const at = (tempC: number, dog: HeatDog = {}, rules: RuleChanges = {}) =>
    heatBand({ tempC, humidityPct: 80, dog, rules });

  it.each<[number, string, string, readonly string[], Readonly<Record<string, number>>]>([
    [
      -3,
      'cold-warm-up',
      'Below 0 °C a warm-up of 15 minutes.',
      ['coldWarmUpBelowC', 'coldWarmUpMinutes'],
      { coldWarmUpBelowC: 0 },
    ],
    [
      -12,
      'cold-half',
      'Below -10 °C half the run time.',
      ['coldHalfBelowC'],
      { coldHalfBelowC: -10 },
    ],
    [-22, 'cold-none', 'Below -20 °C no run.', ['coldNoneBelowC'], { coldNoneBelowC: -20 }],
  ])('at %d °C: %s', (tempC, code, text, rules, params) => {
    const { reasons } = at(tempC).cold!;
    expect(reasons.map((reason) => reason.code)).toEqual([code, 'cold-ice']);
    expect(reasons[0]).toMatchObject({ text, rules, params, evidence: 'D', mark: 'D' });
    expect(reasons[1]).toMatchObject({ params: {}, evidence: 'D', sources: ['ownDecision'] });
    expect(at(tempC).reasons).toEqual(expect.arrayContaining([...reasons]));
  });

  it('names the coat, and the weight it is for', () => {
    const coat = at(-3, { weightKg: 8 }).cold!.reasons[1];
    expect(coat).toMatchObject({ code: 'cold-coat', rules: ['coldCoatUnderKg'] });
    expect(coat!.text).toContain('under 10 kg');
  });

  it('says what a practice set, beside what is published', () => {
    const [half] = at(-8, {}, { coldHalfBelowC: -7 }).cold!.reasons;
    expect(half!.text).toBe(
      'Below -7 °C half the run time (set by the practice; as published -10 °C).',
    );
  });

  it.each<[number, RegExp]>([
    [-3, /^Run as planned\. Warm up for 15 minutes\. No running on ice\. Watch/],
    [-12, /^Run half of the planned minutes at most\. Warm up for 15 minutes\. No/],
    [-22, /^Too cold to run\. Short walks only\.$/],
  ])('advises at %d °C', (tempC, words) => {
    expect(at(tempC).advice.join(' ')).toMatch(words);
  });

  it('keeps the words of a stricter band: a dog that may not run is told no warm-up', () => {
    expect(at(-3, { shortNosed: true }).advice).toEqual(['No running. Quiet walks, with water.']);
    expect(at(-22, { shortNosed: true }).advice).toEqual(['Too cold to run. Short walks only.']);
  });
});
