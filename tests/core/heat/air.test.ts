import { describe, expect, it } from 'vitest';
import {
  checkHeatLimits,
  dewPoint,
  heatBand,
  heatIndex,
  heatTable,
  shadeWbgt,
  wetBulb,
  wholeLimit,
} from '../../../core/index.ts';

describe('air that nobody can measure', () => {
  const readings = { heatIndex, wetBulb, shadeWbgt, dewPoint, table: tableOf };
  function tableOf({ tempC, humidityPct }: { tempC: number; humidityPct: number }) {
    return heatTable({ tempsC: [tempC], humiditiesPct: [humidityPct] });
  }

  it.each(Object.entries(readings))('is refused by %s, with its unit and range', (_, read) => {
    for (const tempC of [-40.1, 60.1, NaN]) {
      expect(() => read({ tempC, humidityPct: 50 })).toThrow('tempC must be from -40 to 60 °C');
    }
    for (const humidityPct of [-0.1, 100.1]) {
      expect(() => read({ tempC: 20, humidityPct })).toThrow(
        /humidityPct must be from .* to 100 %/,
      );
    }
    for (const tempC of [-40, 60]) expect(() => read({ tempC, humidityPct: 50 })).not.toThrow();
  });

  it('has a dew point from a tenth of a per cent on', () => {
    const at = (humidityPct: number) => heatBand({ tempC: 20, humidityPct }).dewPointC;
    expect(at(0.09)).toBeNull();
    expect(at(0.1)).toBeCloseTo(dewPoint({ tempC: 20, humidityPct: 0.1 }), 9);
  });
});

describe('the wet bulb', () => {
  // 20 atan(0.151977 √13.313659) + atan 25 − atan 3.323669 + 0.00391838 · 5^1.5 atan 0.115505
  //   − 4.686035 = 10.1275 + 1.5308 − 1.2785 + 0.0050 − 4.6860 (C).
  it('of dry air, worked by hand: 5.70 °C at 20 °C and 5 %', () => {
    expect(wetBulb({ tempC: 20, humidityPct: 5 })).toBeCloseTo(5.699, 2);
  });

  it('is taken at the edge beyond what the fit was made for', () => {
    expect(wetBulb({ tempC: 20, humidityPct: 0 })).toBe(wetBulb({ tempC: 20, humidityPct: 5 }));
    expect(wetBulb({ tempC: -40, humidityPct: 50 })).toBe(wetBulb({ tempC: -20, humidityPct: 50 }));
    expect(wetBulb({ tempC: 60, humidityPct: 50 })).toBe(wetBulb({ tempC: 50, humidityPct: 50 }));
  });
});

describe('the figures of the air', () => {
  it('tell the air they were read from, and the wet bulb to a tenth', () => {
    const {
      heatIndex: index,
      dewPoint: dew,
      wbgt,
    } = heatBand({ tempC: 20, humidityPct: 50 }).figures;
    const read = [
      { label: 'Air temperature in the shade', value: 20, unit: '°C' },
      { label: 'Relative humidity', value: 50, unit: '%' },
    ];
    expect(index.inputs).toEqual(read);
    expect(dew!.inputs).toEqual(read);
    // 13.7 °C is the worked example of the paper (M); 0.7 of it and 0.3 of the air are 15.6 °C (C).
    expect(wbgt.inputs).toEqual([...read, { label: 'Wet bulb', value: 13.7, unit: '°C' }]);
    expect(wbgt).toMatchObject({ unit: '°C', mark: 'C', evidence: 'D' });
    expect(wbgt.value).toBeCloseTo(15.6, 1);
    expect(wbgt.sources).toContain('stull2011');
  });

  it('say what they are not for', () => {
    const { figures } = heatBand({ tempC: 20, humidityPct: 50 });
    for (const { notes } of [figures.heatIndex, figures.dewPoint!]) {
      expect(notes.join(' ')).toContain('gates nothing');
    }
    expect(figures.wbgt.notes.join(' ')).toContain('about {1 °C off} at most');
  });
});

describe('a limit in whole degrees', () => {
  it.each([
    [18.2, 'C', 18],
    [18.89, 'C', 18],
    [18.91, 'C', 19],
    [-0.5, 'C', -1],
    // 7 °C = 44.6 °F, 10 °C = 50 °F; 17.72 °C = 63.9 °F (exact by definition; C).
    [7, 'F', 44],
    [10, 'F', 50],
    [17.73, 'F', 64],
  ] as const)(
    '%d °C in °%s is %d: never rounded up by more than a tenth',
    (celsius, unit, whole) => {
      expect(wholeLimit(celsius, unit)).toBe(whole);
    },
  );
});

describe('the limits of the bands', () => {
  it('may meet, and may not fall: all of them are named', () => {
    expect(() => checkHeatLimits({ heatUsualToC: 15, heatHalfToC: 15 })).not.toThrow();
    expect(() => checkHeatLimits({})).not.toThrow();
    expect(() => checkHeatLimits({ heatHalfToC: 14 })).toThrow(
      /must rise.*10 °C.*15 °C.*14 °C.*20 °C/,
    );
  });

  it('all move with the burdens of a dog, in air as in damp air', () => {
    const { limits } = heatTable({ dog: { senior: true } });
    expect(limits).toMatchObject({ usualToC: 7, cautionToC: 12, halfToC: 15, walkToC: 17 });
    // 7.9, 12.6, 15.5 and 17.4 °C, each down by 3 (C).
    const damp = [limits.wbgt.usualToC, limits.wbgt.cautionToC, limits.wbgt.halfToC];
    expect(damp.map((end) => Math.round(end * 10) / 10)).toEqual([4.9, 9.6, 12.5]);
    expect(limits.wbgt.walkToC).toBeCloseTo(14.4, 1);
  });

  it('are printed as they are in ordinary air, to the last digit', () => {
    const { ladder } = heatTable();
    expect(ladder.map(({ toC }) => toC[0])).toEqual([10, 15, 18, 20]);
  });

  it('leave out a band only where it has no width in any air', () => {
    const rules = { heatUsualToC: 8, heatCautionToC: 8.5, heatShiftC: 4, heatShiftMostC: 8 };
    const { ladder } = heatTable({ dog: { senior: true, bcs: 7 }, rules });
    expect(ladder.slice(0, 2)).toMatchObject([
      { band: 'usual care', toC: [0, 0, 0] },
      { band: 'caution', toC: [0.5, 0, 0] },
    ]);
  });
});
