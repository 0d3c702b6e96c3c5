import { describe, expect, it } from 'vitest';
import { dewPoint, heatBand, heatIndex } from '../../core/index.ts';
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
    [15.9, 90, 'half the run time'],
    [14.9, 100, 'caution'],
    [18, 50, 'half the run time'],
    [18.1, 50, 'walk only'],
    [20, 50, 'walk only'],
    [20.1, 50, 'no run'],
  ] as const)('%d °C at %d %%: %s (D)', (tempC, humidityPct, band) => {
    expect(heatBand({ tempC, humidityPct }).band).toBe(band);
  });
});
