import { describe, expect, it } from 'vitest';
import { heatIndex, HEAT_FIRST_AID, HOT_GROUND } from '../../core/training.ts';
import { celsiusFromFahrenheit, fahrenheitFromCelsius } from '../../core/units.ts';

// Marks: S read in the source, C our arithmetic from a stated formula.

/** Heat index in °F from °F, as the agency's chart has it. */
const indexF = (tempF: number, humidityPct: number): number =>
  fahrenheitFromCelsius(heatIndex({ tempC: celsiusFromFahrenheit(tempF), humidityPct }));

describe('heat index against the chart of the National Weather Service (S)', () => {
  // °F: a row for each air temperature, a column for each 5 % of humidity from 40 % up (S).
  const chart: Readonly<Record<number, readonly number[]>> = {
    80: [80, 80, 81, 81, 82, 82, 83, 84, 84, 85, 86, 86, 87],
    82: [81, 82, 83, 84, 84, 85, 86, 88, 89, 90, 91, 93, 95],
    84: [83, 84, 85, 86, 88, 89, 90, 92, 94, 96, 98, 100, 103],
    86: [85, 87, 88, 89, 91, 93, 95, 97, 100, 102, 105, 108, 112],
    88: [88, 89, 91, 93, 95, 98, 100, 103, 106, 110, 113, 117, 121],
    90: [91, 93, 95, 97, 100, 103, 106, 109, 113, 117, 122, 127, 132],
    92: [94, 96, 99, 101, 105, 108, 112, 116, 121, 126, 131],
    94: [97, 100, 102, 106, 110, 114, 119, 124, 129, 136],
    96: [101, 104, 108, 112, 116, 121, 126, 132],
    98: [105, 109, 113, 117, 123, 128, 134],
    100: [109, 114, 118, 124, 129, 136],
    102: [114, 119, 124, 130, 137],
    104: [119, 124, 131, 137],
    106: [124, 130, 137],
    108: [130, 137],
    110: [136],
  };
  const cells = Object.entries(chart).flatMap(([temp, row]) =>
    row.map((index, column): [number, number, number] => [Number(temp), 40 + column * 5, index]),
  );

  // The chart is made from the regression alone; the agency's equation page adds this on top in
  // humid air from 80 to 87 °F (S).
  const added = (tempF: number, humidity: number): number =>
    humidity > 85 && tempF <= 87 ? ((humidity - 85) / 10) * ((87 - tempF) / 5) : 0;

  it('agrees within a degree with all of its cells', () => {
    expect(cells).toHaveLength(135);
    for (const [tempF, humidity, index] of cells) {
      const off = Math.abs(indexF(tempF, humidity) - added(tempF, humidity) - index);
      expect(off, `${tempF} °F ${humidity} %`).toBeLessThan(1.01);
    }
  });

  // Equation page of the agency (S); the numbers worked from it here (C).
  it('subtracts in very dry air, adds in very humid air', () => {
    const regression = (t: number, r: number): number =>
      -42.379 +
      2.04901523 * t +
      10.14333127 * r -
      0.22475541 * t * r -
      0.00683783 * t ** 2 -
      0.05481717 * r ** 2 +
      0.00122874 * t ** 2 * r +
      0.00085282 * t * r ** 2 -
      0.00000199 * t ** 2 * r ** 2;
    expect(indexF(95, 5)).toBeCloseTo(regression(95, 5) - (13 - 5) / 4, 6);
    expect(indexF(82, 95)).toBeCloseTo(regression(82, 95) + 1, 6);
    // 10 °F off the middle: the root of (17 − 10) / 17.
    expect(indexF(105, 5)).toBeCloseTo(regression(105, 5) - 2 * Math.sqrt(7 / 17), 6);
    // Under 80 °F nothing is added, although the regression is in force already.
    expect(indexF(79, 95)).toBeCloseTo(regression(79, 95), 6);
  });

  // The terms end where they are nought, but for the published step at 80 °F (C).
  it('jumps nowhere else, and is a number in all air', () => {
    const step = 1e-6;
    const jumps: readonly (readonly [number, number, number, number])[] = [
      [112, 5, step, 0],
      [87, 95, step, 0],
      [100, 13, 0, step],
      [84, 85, 0, step],
    ];
    for (const [tempF, humidity, byF, byPct] of jumps) {
      const before = indexF(tempF - byF, humidity - byPct);
      expect(Math.abs(indexF(tempF + byF, humidity + byPct) - before)).toBeLessThan(0.01);
    }
    for (let tempC = -40; tempC <= 60; tempC += 4) {
      for (const humidityPct of [0, 5, 12, 50, 90, 100]) {
        expect(heatIndex({ tempC, humidityPct }), `${tempC} °C`).toBeGreaterThan(-60);
      }
    }
  });
});

describe('heat texts', () => {
  // "Cool first, transport second" (S): the order must stand in the text.
  it('say to cool first and to transport second', () => {
    const text = HEAT_FIRST_AID.map((entry) => entry.text).join(' ');
    expect(text).toMatch(/Cool first, transport second/);
  });

  // Berens 1970 as quoted (S, second hand): 77 °F air, 125 °F asphalt; 86 °F, 135 °F.
  it.each([
    [77, 125],
    [86, 135],
  ])('give air at %i °F and asphalt at %i °F in °C', (air, asphalt) => {
    const text = HOT_GROUND.map((entry) => entry.text).join(' ');
    expect(text).toContain(`${Math.round(celsiusFromFahrenheit(asphalt))} °C`);
    expect(text).toContain(`${Math.round(celsiusFromFahrenheit(air))} °C`);
  });
});
