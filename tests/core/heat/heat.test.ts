import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  heatBand,
  heatTable,
  HEAT_BANDS,
  inUnits,
  shadeWbgt,
  stricterBand,
  withRules,
  type HeatDog,
  type RuleChanges,
  type RuleId,
} from '../../../core/index.ts';
import { evenly, holds } from '../../support/laws.ts';
import { expectToReadInAnyUnits } from '../../support/otherUnits.ts';

const runs = { seed: 1, numRuns: 500 };
const air = fc.record({
  tempC: evenly(-20, 45),
  humidityPct: evenly(0, 100),
});
const dogs: fc.Arbitrary<HeatDog> = fc.record(
  {
    bcs: fc.integer({ min: 1, max: 9 }),
    weightKg: evenly(1, 90),
    coat: fc.constantFrom('ordinary', 'thick', 'dark', 'thick and dark'),
    senior: fc.boolean(),
    acclimatised: fc.boolean(),
    shortNosed: fc.boolean(),
    cleared: fc.boolean(),
  },
  { requiredKeys: [] },
);
const BURDENS: readonly HeatDog[] = [
  { bcs: 7 },
  { weightKg: 60 },
  { coat: 'dark' },
  { senior: true },
  { acclimatised: false },
  { shortNosed: true },
  { shortNosed: true, cleared: false },
];

describe('the band of a dog', () => {
  it('never gets milder as the air gets warmer or damper', () => {
    const more = evenly(0, 20);
    holds(
      fc.property(air, dogs, more, more, ({ tempC, humidityPct }, dog, warmer, damper) => {
        const { band: now, reasons, cold } = heatBand({ tempC, humidityPct, dog });
        expectToReadInAnyUnits([...reasons, ...(cold?.reasons ?? [])]);
        const later = heatBand({
          tempC: tempC + warmer / 2,
          humidityPct: Math.min(100, humidityPct + damper),
          dog,
        }).band;
        expect(stricterBand(now, later)).toBe(false);
      }),
      runs,
    );
  });

  it('never gets milder through a burden', () => {
    holds(
      fc.property(air, dogs, fc.constantFrom(...BURDENS), (weather, dog, burden) => {
        const without = heatBand({ ...weather, dog }).band;
        const { band } = heatBand({ ...weather, dog: { ...dog, ...burden } });
        expect(stricterBand(without, band)).toBe(false);
      }),
      runs,
    );
  });

  it('is the stricter of warmth and damp, both moved by the burdens of the dog', () => {
    const limits = [10, 15, 18, 20];
    const bandOn = (value: number, ends: readonly number[]) =>
      ends.filter((end) => value > end).length;
    holds(
      fc.property(
        evenly(0, 35),
        evenly(10, 100),
        fc.constantFrom<[HeatDog, number]>(
          [{}, 0],
          [{ senior: true }, 3],
          [{ bcs: 7, coat: 'dark' }, 6],
        ),
        (tempC, humidityPct, [dog, shiftC]) => {
          const damp = limits.map((end) => shadeWbgt({ tempC: end, humidityPct: 70 }) - shiftC);
          const warm = limits.map((end) => end - shiftC);
          const strictest = Math.max(
            bandOn(tempC, warm),
            bandOn(shadeWbgt({ tempC, humidityPct }), damp),
          );
          expect(heatBand({ tempC, humidityPct, dog }).band).toBe(HEAT_BANDS[strictest]);
        },
      ),
      runs,
    );
  });

  it('says so where damp air decided, and only there', () => {
    const codes = (tempC: number, humidityPct: number) =>
      heatBand({ tempC, humidityPct }).reasons.map(({ code }) => code);
    expect(codes(14, 95)).toContain('heat-humid');
    expect(codes(14, 60)).not.toContain('heat-humid');
  });

  it('lies 3 °C lower for each burden, 6 at most, each with its reason', () => {
    const one = heatBand({ tempC: 12, humidityPct: 50, dog: { bcs: 6 } });
    expect(one.limits).toMatchObject({ shiftC: 3, usualToC: 7, walkToC: 17 });
    expect(one.reasons.map(({ code }) => code)).toEqual(['heat-bands', 'heat-bcs']);
    const three = heatBand({
      tempC: 12,
      humidityPct: 50,
      dog: { bcs: 6, senior: true, coat: 'thick and dark' },
    });
    expect(three.limits.shiftC).toBe(6);
    expect(three.reasons.map(({ code }) => code)).toContain('heat-shift-capped');
  });

  it('agrees with the table', () => {
    holds(
      fc.property(air, dogs, ({ tempC, humidityPct }, dog) => {
        const table = heatTable({ dog, tempsC: [tempC], humiditiesPct: [humidityPct] });
        expect(table.rows[0]?.[0]).toBe(heatBand({ tempC, humidityPct, dog }).band);
      }),
      runs,
    );
  });
});

describe('a dog not used to warm weather', () => {
  const dog = { acclimatised: false };

  it('runs half the time as soon as caution begins, and as planned in cool air', () => {
    expect(heatBand({ tempC: 8, humidityPct: 50, dog })).toMatchObject({
      band: 'half the run time',
      runShare: 0.5,
    });
    expect(heatBand({ tempC: 7, humidityPct: 50, dog }).runShare).toBe(1);
    expect(heatTable({ dog }).ladder.map(({ band }) => band)).toEqual([
      'usual care',
      'half the run time',
      'walk only',
    ]);
  });

  it('hears for how many weeks', () => {
    const text = (weeks: number) =>
      heatBand({ tempC: 8, humidityPct: 50, dog, rules: { heatNotUsedWeeks: weeks } }).reasons.find(
        ({ code }) => code === 'heat-not-used',
      )?.text;
    expect(text(2)).toContain('first 2 weeks');
    expect(text(3)).toContain('first 3 weeks');
  });
});

describe('the words', () => {
  it('ask for no shade in cool air, where the bands of a burdened dog lie', () => {
    const dog = { senior: true, bcs: 7 };
    for (const tempC of [4.5, 8, 9.9]) {
      const { advice, band } = heatBand({ tempC, humidityPct: 50, dog });
      expect(band).not.toBe('usual care');
      expect(advice.join(' ')).not.toMatch(/shade|early or late|coolest/i);
    }
    expect(heatBand({ tempC: 14, humidityPct: 50 }).advice.join(' ')).toContain('shade');
  });

  it('ask in every band with running, and in frost, to watch the dog', () => {
    for (const tempC of [-12, -3, 5, 12, 17]) {
      expect(heatBand({ tempC, humidityPct: 50 }).advice.join(' ')).toContain('wide, long tongue');
    }
  });
});

describe('a rule there was once', () => {
  it('is passed over where a practice has kept a change of it', () => {
    const rules = { heatHumidFromC: 12 } as RuleChanges;
    expect(heatBand({ tempC: 13, humidityPct: 60, rules }).band).toBe('caution');
    expect(withRules(rules).filter(({ changed }) => changed)).toEqual([]);
  });
});

describe('a short-nosed dog', () => {
  it.each([undefined, false])('with clearance %s does not run at any temperature', (cleared) => {
    const dog = { shortNosed: true, ...(cleared === undefined ? {} : { cleared }) };
    const cold = heatBand({ tempC: -5, humidityPct: 30, dog });
    expect(cold.band).toBe('no run');
    expect(cold.runShare).toBe(0);
    expect(cold.reasons.map(({ code }) => code)).toContain('heat-short-nosed-not-cleared');
  });

  it('runs with clearance, 6 °C lower', () => {
    const cold = heatBand({ tempC: 4, humidityPct: 30, dog: { shortNosed: true, cleared: true } });
    expect(cold).toMatchObject({ band: 'usual care', limits: { usualToC: 4, walkToC: 14 } });
  });
});

describe('bad input', () => {
  it.each([
    ['coat', { tempC: 10, humidityPct: 50, dog: { coat: 'thik' as 'thick' } }],
    ['bcs', { tempC: 10, humidityPct: 50, dog: { bcs: 10 } }],
    ['weightKg', { tempC: 10, humidityPct: 50, dog: { weightKg: 0 } }],
    ['tempC', { tempC: 70, humidityPct: 50 }],
    ['humidityPct', { tempC: 10, humidityPct: 101 }],
  ])('names %s', (argument, input) => {
    expect(() => heatBand(input)).toThrow(RangeError);
    expect(() => heatBand(input)).toThrow(argument);
  });
});

describe('the limits a practice may set', () => {
  const TOO_WIDE: readonly RuleChanges[] = [
    { heatUsualToC: 15.1 },
    { heatCautionToC: 20.1 },
    { heatHalfToC: 23.1 },
    { heatWalkToC: 25.1 },
    { heatHumidFromPct: 100 },
  ];

  it.each(TOO_WIDE)('end near the sport limit: %o is refused', (rules) => {
    expect(() => heatBand({ tempC: 10, humidityPct: 50, rules })).toThrow(RangeError);
  });

  it('must rise', () => {
    const rules = { heatUsualToC: 12, heatCautionToC: 11 };
    expect(() => heatBand({ tempC: 10, humidityPct: 50, rules })).toThrow('must rise');
  });

  it('move the wet-bulb limits with them, and so does the reference humidity', () => {
    const at = (tempC: number, humidityPct: number, rules: RuleChanges) =>
      heatBand({ tempC, humidityPct, rules }).band;
    // 18.2 °C is the published end of walk only at 90 % (C).
    expect(at(18.5, 90, {})).toBe('no run');
    expect(at(18.5, 90, { heatWalkToC: 22 })).toBe('walk only');
    expect(at(18.5, 90, { heatHumidFromPct: 90 })).toBe('walk only');
    expect(at(14, 80, {})).toBe('caution');
    expect(at(14, 80, { heatHumidFromPct: 50 })).toBe('half the run time');
  });

  it('never make damper or warmer air milder, whatever they are', () => {
    const within = (id: RuleId) => {
      const { min, max, whole } = withRules({}).find((rule) => rule.id === id)!;
      return whole === true ? fc.integer({ min, max }) : evenly(min, max);
    };
    const changes = fc.record(
      {
        heatUsualToC: within('heatUsualToC'),
        heatHumidFromPct: within('heatHumidFromPct'),
        heatShiftC: within('heatShiftC'),
        heatShiftMostC: within('heatShiftMostC'),
      },
      { requiredKeys: [] },
    );
    const more = evenly(0, 30);
    holds(
      fc.property(
        air,
        dogs,
        more,
        more,
        changes,
        ({ tempC, humidityPct }, dog, warm, damp, rules) => {
          const band = (warmer: number, damper: number) =>
            heatBand({
              tempC: Math.min(60, tempC + warmer),
              humidityPct: Math.min(100, humidityPct + damper),
              dog,
              rules,
            }).band;
          expect(stricterBand(band(0, 0), band(warm, damp))).toBe(false);
        },
      ),
      { seed: 2, numRuns: 1000 },
    );
  });

  it('are all named once changed, with the published value', () => {
    const rules = { heatCautionToC: 16, heatHalfToC: 19, heatHumidFromPct: 80 };
    const { reasons } = heatBand({ tempC: 10, humidityPct: 50, rules });
    const bands = reasons.find(({ code }) => code === 'heat-bands');
    expect(bands?.text).toContain('Caution up to 16 °C (as published 15 °C)');
    expect(bands?.text).toContain('Half the run time up to 19 °C (as published 18 °C)');
    expect(bands?.text).toContain('80 % relative humidity (as published 70 % relative humidity)');
    expect(bands?.sources).toContain('practiceSetting');
  });

  it('set in °F are spelled without an end of digits, and read as they were typed', () => {
    // 65 °F = 18.33… °C and 100 lb = 45.359237 kg (exact by definition; C).
    const rules = { heatHalfToC: (65 - 32) / 1.8, heatShiftC: 5 / 1.8, heatHeavyOverKg: 45.359237 };
    const dog = { weightKg: 50, coat: 'thick' } as const;
    const { reasons } = heatBand({ tempC: 10, humidityPct: 50, dog, rules });
    const texts = reasons.map(({ text, said = text }) => said);
    for (const text of texts) expect(text).not.toMatch(/\d\.\d{3}/);
    const american = {
      weightUnit: 'lb',
      energyUnit: 'kcal',
      distanceUnit: 'mi',
      temperatureUnit: 'F',
    } as const;
    const read = texts.map((text) => inUnits(text, american)).join(' ');
    expect(read).toContain('Half the run time up to 65 °F (as published 64 °F)');
    expect(read).toContain('5 °F lower');
    expect(read).toContain('Over 100 lb');
  });

  it('never open the ladder past 25 °C', () => {
    const widest = Object.fromEntries(
      withRules({})
        .filter(({ id, group }) => group === 'heat' && id.startsWith('heat'))
        .map(({ id, max }) => [id, max]),
    );
    expect(heatBand({ tempC: 25.1, humidityPct: 20, rules: widest }).band).toBe('no run');
  });
});

describe('where the numbers come from', () => {
  it('both air figures carry formula and source', () => {
    const { figures, heatIndexC, dewPointC } = heatBand({ tempC: 30, humidityPct: 70 });
    expect(figures.heatIndex).toMatchObject({ value: heatIndexC, sources: ['noaaHeatIndex'] });
    expect(figures.dewPoint).toMatchObject({ value: dewPointC, sources: ['magnus'] });
  });

  it('air without any vapour has no dew point', () => {
    const dry = heatBand({ tempC: 30, humidityPct: 0 });
    expect(dry.dewPointC).toBeNull();
    expect(dry.figures.dewPoint).toBeNull();
  });

  it('the bands and the humid line are ours and say so', () => {
    const { reasons } = heatBand({ tempC: 17, humidityPct: 90 });
    for (const code of ['heat-bands', 'heat-humid']) {
      expect(reasons.find((reason) => reason.code === code)).toMatchObject({
        evidence: 'D',
        mark: 'D',
      });
    }
    expect(reasons[0]?.sources).toEqual(expect.arrayContaining(['hall2022', 'carterHall2018']));
  });
});
