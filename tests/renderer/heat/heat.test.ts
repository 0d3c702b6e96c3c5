import { mount } from '@vue/test-utils';
import { describe, expect, it } from 'vitest';
import { heatBand, heatTable } from '../../../core/index.ts';
import HeatGrid from '../../../renderer/heat/HeatGrid.vue';
import HeatNow from '../../../renderer/heat/HeatNow.vue';
import { mountField } from '../support/mountField.ts';
import { appPlugins } from '../support/plugins.ts';

const air = { tempC: null as number | null, humidityPct: null as number | null, notUsed: false };
const type = async (
  temperature: string,
  humidity: string,
  unit: 'C' | 'F' = 'C',
): Promise<string> => {
  const { wrapper } = mountField(HeatNow, { air }, 'air', { dog: {} }, { temperatureUnit: unit });
  await wrapper.get('#field-tempC').setValue(temperature);
  await wrapper.get('#field-humidityPct').setValue(humidity);
  return wrapper.get('.result').text().replaceAll(/\s+/g, ' ');
};

describe('the air of today', () => {
  // Bands of an ordinary dog: to 15 caution, to 18 half the run time; 14 °C at 95 % half (C/D).
  it('gives the band of the temperature', async () => {
    expect(await type('15', '50')).toContain('Caution');
    expect(await type('14', '95')).toMatch(/Half the run time.*Damp air/);
    expect(await type('21', '40')).toContain('No run');
  });
  it('reads degrees Fahrenheit, with or without the letter, and frost', async () => {
    // 59 °F = 15 °C, 5 °F = −15 °C (definition).
    expect(await type('59', '50', 'F')).toContain('Caution');
    expect(await type('59 F', '50')).toContain('Caution');
    expect(await type('-5', '50')).toMatch(/Usual care.*Warm up for 15 minutes/);
    expect(await type('-15', '50')).toMatch(/^Half the run time/);
    expect(await type('-21', '50')).toMatch(/^No run/);
  });
  // Magnus 17.625 / 243.04: 20 °C and 50 % give 9.26 °C (C).
  it('shows the dew point for information', async () => {
    expect(await type('20', '50')).toMatch(/dew point 9\s*°C/);
  });
});

describe('the table of a dog', () => {
  const grid = (tempC: number | null, humidityPct = 60) =>
    mount(HeatGrid, {
      props: { table: heatTable(), dog: {}, air: { tempC, humidityPct, notUsed: false } },
      global: { plugins: appPlugins() },
    });
  it('ends where no run is left', () => {
    const rows = grid(null).findAll('tbody tr');
    expect(
      rows
        .at(-1)!
        .findAll('td')
        .every((cell) => cell.text() === 'no run'),
    ).toBe(true);
    expect(
      rows
        .at(-2)!
        .findAll('td')
        .every((cell) => cell.text() === 'no run'),
    ).toBe(false);
  });
  it('marks the typed air in the next warmer row', () => {
    expect(grid(13).get('[aria-current]').element.parentElement?.textContent).toMatch(/^\s*14/);
    expect(grid(35).get('[aria-current]').text()).toBe('no run');
    expect(grid(null).find('[aria-current]').exists()).toBe(false);
  });
  it('marks a cell that says what holds in this air, not what holds in the next', () => {
    const short: Record<string, string> = {
      'usual care': 'usual',
      'half the run time': 'half',
      'walk only': 'walk',
    };
    for (let tempC = 0; tempC <= 25; tempC++) {
      for (const humidityPct of [35, 55, 70, 88, 95]) {
        const { band } = heatBand({ tempC, humidityPct });
        const marked = grid(tempC, humidityPct).get('[aria-current]').text();
        expect(marked, `${tempC} °C, ${humidityPct} %`).toBe(short[band] ?? band);
      }
    }
  });
});
