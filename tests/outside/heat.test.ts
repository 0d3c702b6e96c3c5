import { describe, expect, it } from 'vitest';
import { dewPoint, heatBand, heatIndex, heatTable, shadeWbgt, wetBulb } from '../../core/index.ts';
import { celsiusFromFahrenheit, fahrenheitFromCelsius } from '../../core/units.ts';

// Marks: S read in the source, C our arithmetic from a stated formula, D our own decision.

describe('heat index against the National Weather Service', () => {
  // The agency's heat index table, °F, printed in whole degrees (S).
  it.each([
    [90, 40, 91],
    [80, 65, 82],
    [96, 65, 121],
  ])('%d °F at %d %% reads %d °F (S)', (tempF, humidityPct, tableF) => {
    const indexC = heatIndex({ tempC: celsiusFromFahrenheit(tempF), humidityPct });
    expect(Math.round(fahrenheitFromCelsius(indexC))).toBe(tableF);
  });

  // The agency's simple form below the switch, worked out by hand: 0.5 (T + 61 + 1.2 (T − 68) +
  // 0.094 RH), T = 60.8 °F (C).
  it('16 °C at 85 % reads only 60.6 °F, which is why it gates nothing (C)', () => {
    const indexF = fahrenheitFromCelsius(heatIndex({ tempC: 16, humidityPct: 85 }));
    expect(indexF).toBeCloseTo(60.6, 1);
    expect(heatBand({ tempC: 16, humidityPct: 85 }).band).toBe('half the run time');
  });
});

describe('dew point by the Magnus form, coefficients 17.625 and 243.04 °C', () => {
  it.each([
    [20, 50, 9.26],
    [30, 70, 23.93],
  ])('%d °C at %d %%: %d °C (C)', (tempC, humidityPct, expected) => {
    expect(dewPoint({ tempC, humidityPct })).toBeCloseTo(expected, 2);
  });

  it('is the air temperature itself in saturated air (C)', () => {
    for (const tempC of [-10, 0, 15, 30]) {
      expect(dewPoint({ tempC, humidityPct: 100 })).toBeCloseTo(tempC, 10);
    }
  });
});

describe('our bands against what was seen in dogs', () => {
  // Hall et al. 2022, Vet Sci 9:231: median ambient temperature on days of canine heat illness
  // 16.9 °C (S). The bands are our own (D); they must not call such a day usual.
  it('an ordinary dog runs half at most on the median day of heat illness (D after S)', () => {
    expect(heatBand({ tempC: 16.9, humidityPct: 60 }).runShare).toBe(0.5);
  });

  // Limits of some sport rules for fit racing dogs: about 25 °C (S, second hand). Ours are lower (D).
  it('nobody runs at the sport limit of about 25 °C (D after S, second hand)', () => {
    expect(heatBand({ tempC: 25, humidityPct: 30 }).band).toBe('no run');
  });

  // Every limit of the ladder (C/D).
  it.each([
    [10, 50, 'usual care'],
    [10.1, 50, 'caution'],
    [15, 50, 'caution'],
    [15.1, 50, 'half the run time'],
    [18, 50, 'half the run time'],
    [18.1, 50, 'walk only'],
    [20, 50, 'walk only'],
    [20.1, 50, 'no run'],
  ] as const)('%d °C at %d %%: %s (D)', (tempC, humidityPct, band) => {
    expect(heatBand({ tempC, humidityPct }).band).toBe(band);
  });
});

describe('the wet bulb of Stull 2011, J Appl Meteorol Climatol 50:2267', () => {
  // The worked example of the paper, from memory (M).
  it('20 °C at 50 % is 13.7 °C (M)', () => {
    expect(wetBulb({ tempC: 20, humidityPct: 50 })).toBeCloseTo(13.7, 1);
  });

  // Without evaporation there is nothing to cool: in saturated air the wet bulb is the air (C); the
  // fit is good to 1 °C.
  it.each([0, 5, 10, 15, 20, 25, 30])('is the air itself at %d °C and 100 % (C)', (tempC) => {
    expect(Math.abs(wetBulb({ tempC, humidityPct: 100 }) - tempC)).toBeLessThan(0.2);
  });
});

describe('damp air against the limits worked out beside the program', () => {
  // The four limits of the air at 70 % in shade wet-bulb globe temperature, 0.7 Tw + 0.3 T (C).
  it.each([
    [10, 7.9],
    [15, 12.6],
    [18, 15.5],
    [20, 17.4],
  ])('%d °C at 70 %% is %d °C (C)', (tempC, wbgt) => {
    expect(shadeWbgt({ tempC, humidityPct: 70 })).toBeCloseTo(wbgt, 1);
  });

  // Air limits that follow from them, a tenth of a degree (C).
  it.each([
    [80, [9.3, 14.2, 17.1, 19.1]],
    [85, [9.0, 13.8, 16.7, 18.7]],
    [90, [8.6, 13.4, 16.3, 18.2]],
    [100, [7.9, 12.7, 15.5, 17.4]],
  ])('at %d %% the bands end at %j °C (C)', (humidityPct, ends) => {
    const bands = ['usual care', 'caution', 'half the run time', 'walk only', 'no run'];
    ends.forEach((end, index) => {
      expect(heatBand({ tempC: end - 0.06, humidityPct }).band).toBe(bands[index]);
      expect(heatBand({ tempC: end + 0.06, humidityPct }).band).toBe(bands[index + 1]);
    });
  });

  it.each([
    [14, 95, 'half the run time'],
    [17, 90, 'walk only'],
    [18.5, 90, 'no run'],
  ] as const)('%d °C at %d %%: %s (C/D)', (tempC, humidityPct, band) => {
    expect(heatBand({ tempC, humidityPct }).band).toBe(band);
  });

  it('are the limits that the ladder prints for wet air (C)', () => {
    const { ladder, ladderHumiditiesPct } = heatTable();
    expect(ladderHumiditiesPct.at(-1)).toBe(100);
    const wet = ladder.map(({ toC }) => Math.round(toC.at(-1)! * 10) / 10);
    expect(wet).toEqual([7.9, 12.7, 15.5, 17.4]);
  });
});
