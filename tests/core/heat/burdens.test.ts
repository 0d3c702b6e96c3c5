import { describe, expect, it } from 'vitest';
import { heatBand, heatTable, type HeatDog, type RuleChanges } from '../../../core/index.ts';

// What lowers the bands of a dog, and what is said of it: our own choices (D), but for the odds of
// short-nosed dogs (S).

const at = (dog: HeatDog, rules: RuleChanges = {}) =>
  heatBand({ tempC: 12, humidityPct: 50, dog, rules });
/** The reasons beside that of the bands themselves. */
const reasonsOf = (dog: HeatDog, rules: RuleChanges = {}) => at(dog, rules).reasons.slice(1);
const codes = (dog: HeatDog, rules: RuleChanges = {}) =>
  reasonsOf(dog, rules).map(({ code }) => code);

describe('a burden', () => {
  it.each<[HeatDog, readonly string[]]>([
    [{}, []],
    [{ bcs: null, weightKg: null }, []],
    [{ bcs: 5 }, []],
    [{ bcs: 6 }, ['heat-bcs']],
    [{ weightKg: 50 }, []],
    [{ weightKg: 50.1 }, ['heat-heavy']],
    [{ coat: 'ordinary' }, []],
    [{ coat: 'thick' }, ['heat-coat']],
    [{ coat: 'dark' }, ['heat-coat']],
    [{ coat: 'thick and dark' }, ['heat-coat']],
    [{ senior: false, acclimatised: true }, []],
    [{ senior: true }, ['heat-senior']],
    [{ acclimatised: false }, ['heat-not-used']],
    [{ shortNosed: false, cleared: false }, []],
  ])('of %o: %j', (dog, expected) => {
    expect(codes(dog)).toEqual(expected);
    expect(at(dog).limits.shiftC).toBe(3 * expected.length);
  });

  it('follows the lines that a practice draws', () => {
    expect(codes({ bcs: 6 }, { heatBcsFrom: 7 })).toEqual([]);
    expect(codes({ bcs: 7 }, { heatBcsFrom: 7 })).toEqual(['heat-bcs']);
    expect(codes({ weightKg: 30.1 }, { heatHeavyOverKg: 30 })).toEqual(['heat-heavy']);
    expect(at({ senior: true }, { heatShiftC: 2 }).limits.shiftC).toBe(2);
  });

  it.each<[HeatDog, readonly string[]]>([
    [{ bcs: 6 }, ['heatShiftC', 'heatBcsFrom']],
    [{ weightKg: 60 }, ['heatShiftC', 'heatHeavyOverKg']],
    [{ coat: 'dark' }, ['heatShiftC']],
    [{ senior: true }, ['heatShiftC']],
    [{ acclimatised: false }, ['heatShiftC', 'heatNotUsedWeeks']],
  ])('of %o is by the rules %j, and tells by how far', (dog, rules) => {
    expect(reasonsOf(dog)).toMatchObject([{ rules, params: { shiftC: 3 }, mark: 'D' }]);
    expect(reasonsOf(dog)[0]!.text).toContain('3 °C lower');
  });

  it('is counted in weeks, one by its word', () => {
    const text = (heatNotUsedWeeks: number) =>
      reasonsOf({ acclimatised: false }, { heatNotUsedWeeks })[0]!.text;
    expect(text(1)).toContain('first 1 week of');
    expect(text(2)).toContain('first 2 weeks of');
  });
});

describe('burdens together', () => {
  it('lie 6 °C lower at most: two make that, and only a third is cut', () => {
    const two = { senior: true, bcs: 7 };
    expect(at(two).limits.shiftC).toBe(6);
    expect(codes(two)).not.toContain('heat-shift-capped');
    const capped = reasonsOf({ ...two, coat: 'dark' }).at(-1);
    expect(capped).toMatchObject({
      code: 'heat-shift-capped',
      params: { shiftC: 6 },
      rules: ['heatShiftMostC'],
    });
    expect(capped!.text).toContain('6 °C lower, the most');
  });

  it('of a short-nosed dog with a clearance: its nose alone is the most', () => {
    const [nose, ...others] = reasonsOf({ shortNosed: true, cleared: true, senior: true });
    expect(nose).toMatchObject({
      code: 'heat-short-nosed',
      evidence: 'A',
      mark: 'S',
      sources: ['vetCompass', 'ownDecision'],
      rules: ['heatShiftMostC'],
      params: { shiftC: 6 },
    });
    expect(others.map(({ code }) => code)).toEqual(['heat-senior', 'heat-shift-capped']);
    expect(codes({ shortNosed: true, cleared: true })).toEqual(['heat-short-nosed']);
  });

  it('say nothing of a short-nosed dog without one: no air is cool enough', () => {
    const dog: HeatDog = { shortNosed: true, cleared: false, senior: true, bcs: 7 };
    expect(reasonsOf(dog)).toMatchObject([
      { code: 'heat-short-nosed-not-cleared', evidence: 'A', mark: 'S' },
    ]);
    expect(at(dog).limits.shiftC).toBe(6);
    // That the air is damp moves nothing either.
    const damp = heatBand({ tempC: 14, humidityPct: 95, dog });
    expect(damp.reasons.map(({ code }) => code)).not.toContain('heat-humid');
    expect(heatTable({ dog }).ladder).toEqual([]);
  });
});

describe('the bands of a dog, as they are told', () => {
  const bands = (dog: HeatDog, rules: RuleChanges = {}) => at(dog, rules).reasons[0]!;

  it('name each limit in air, and those of damp air', () => {
    const { text, params, sources, rules } = bands({});
    expect(text).toMatch(/to 10 °C, caution to 15 °C, half .* 18 °C, walk only to 20 °C/);
    // The limits at 70 % in shade wet-bulb globe temperature (C).
    expect(text).toMatch(/: to 7\.9 °C, 12\.6 °C, 15\.5 °C, 17\.4 °C\.$/);
    expect(params).toEqual({ usualToC: 10, cautionToC: 15, halfToC: 18, walkToC: 20 });
    expect(sources).not.toContain('practiceSetting');
    expect(rules).toEqual([
      'heatUsualToC',
      'heatCautionToC',
      'heatHalfToC',
      'heatWalkToC',
      'heatHumidFromPct',
    ]);
  });

  it('leave caution out where it is half the run time already', () => {
    const { text } = bands({ acclimatised: false });
    expect(text).toMatch(/to 7 °C, half the run time to 15 °C/);
    expect(text).not.toContain('caution to');
    expect(text).toMatch(/: to 4\.9 °C, 12\.5 °C, 14\.4 °C\.$/);
  });

  it('name a changed limit, and neither the cold nor the weeks, which have words of their own', () => {
    const changed = bands({}, { heatShiftC: 2, coldHalfBelowC: -12, heatNotUsedWeeks: 4 });
    expect(changed.text).toMatch(
      /Set by the practice: [^;]*2 °C lower \(as published 3 °C lower\)/,
    );
    expect(changed.text).not.toMatch(/-12|weeks/);
    expect(changed.sources).toContain('practiceSetting');
    expect(changed.rules).toContain('heatShiftC');
    expect(changed.rules).not.toContain('coldHalfBelowC');
    const cold = bands({}, { coldHalfBelowC: -12, heatNotUsedWeeks: 4 });
    expect(cold.text).not.toContain('Set by the practice');
  });

  it('say by how much damp air went past the air alone', () => {
    const reason = heatBand({ tempC: 14, humidityPct: 95 }).reasons.at(-1)!;
    expect(reason).toMatchObject({ code: 'heat-humid', params: { byAir: 'caution' } });
    // The wet bulb of nearly saturated air is within a degree of the air itself (C).
    expect(Math.abs(Number(reason.params.wbgtC) - 14)).toBeLessThan(1);
    expect(reason.rules).toContain('heatHumidFromPct');
  });
});

describe('what to do in a band', () => {
  const warm = (tempC: number) => heatBand({ tempC, humidityPct: 50 }).advice.join(' ');
  const old: HeatDog = { senior: true, bcs: 7 };
  const cool = (tempC: number) => heatBand({ tempC, humidityPct: 30, dog: old }).advice.join(' ');

  it.each<[number, RegExp, RegExp]>([
    [9, /^Run as planned\. .*15 to 20 minutes/, /half|shade|Do not|No running/],
    [14, /^Run as planned, with care\. .*15 to 20 minutes.*shade/, /half|Do not|No running/],
    [17, /^Run half of the planned minutes at most\. .*shade/, /as planned|Do not|No running/],
    [19, /^Do not run\. Walk in the shade/, /planned|No running/],
    [25, /^No running\. .*coolest hours/, /planned|Do not/],
  ])('at %d °C', (tempC, said, unsaid) => {
    expect(warm(tempC)).toMatch(said);
    expect(warm(tempC)).not.toMatch(unsaid);
  });

  it.each<[number, RegExp]>([
    [4, /^Run as planned\. /],
    [9, /^Run as planned, with care\. /],
    [10, /^Run half of the planned minutes at most\. [^S]*Watch/],
  ])('of a dog with burdens at %d °C, where nobody needs shade', (tempC, said) => {
    expect(cool(tempC)).toMatch(said);
    expect(cool(tempC)).not.toMatch(/shade|Early or late/);
  });

  it('without running asks for no coolest hours where it is cool', () => {
    const dog = { shortNosed: true };
    const { advice } = heatBand({ tempC: 8, humidityPct: 30, dog });
    expect(advice).toHaveLength(1);
    expect(advice[0]).toMatch(/^No running\. Quiet walks/);
    const limits = { heatShiftC: 6, heatShiftMostC: 12 };
    const walk = heatBand({ tempC: 7.9, humidityPct: 30, dog: old, rules: limits });
    expect(walk).toMatchObject({ band: 'walk only', runShare: 0 });
    expect(walk.advice).toEqual(['Do not run. Walk, with water.']);
  });
});
