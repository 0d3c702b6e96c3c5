import { flushPromises, mount } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import ChartFrame from '../../../renderer/chart/ChartFrame.vue';
import { useNotice } from '../../../renderer/stores/notice.ts';
import type { Practice } from '../../../electron/contract/records.ts';
import { appPlugins } from '../support/plugins.ts';

type Saved = { name: string; text: string; kind: string };
let saved: Saved[] = [];

function frame(settings: Partial<Practice> = {}) {
  return mount(ChartFrame, {
    props: {
      title: 'Weight, kg',
      of: 'Tib',
      specs: [],
      table: {
        columns: [
          { head: 'Day', unit: '', kind: 'day' },
          { head: 'Weight', unit: 'kg', kind: 'number', digits: 1 },
        ],
        rows: [
          ['2025-02-01', 26.4],
          ['2025-02-15', null],
        ],
      },
    },
    global: { plugins: appPlugins(settings) },
    attachTo: document.body,
  });
}
const button = (wrapper: ReturnType<typeof frame>, words: string) =>
  wrapper.findAll('button').find((found) => found.text() === words)!;

beforeEach(() => {
  saved = [];
  Object.defineProperty(window, 'trotwell', {
    configurable: true,
    value: {
      calls: {},
      saveFile: async (name: string, base64: string, kind: string) => {
        const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
        saved.push({
          name,
          text: new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes),
          kind,
        });
        return true;
      },
    },
  });
});
afterEach(() => {
  Reflect.deleteProperty(window, 'trotwell');
  document.body.innerHTML = '';
});

describe('the frame of a chart', () => {
  it('names the chart with its unit', () => {
    const wrapper = frame();
    const id = wrapper.get('figure').attributes('aria-labelledby');
    expect(wrapper.get('h3').attributes('id')).toBe(id);
    expect(wrapper.get('h3').text()).toBe('Weight, kg');
  });

  it('shows the same numbers as a table and goes back to the picture', async () => {
    const wrapper = frame({ dayFormat: 'DD.MM.YYYY' });
    const toggle = button(wrapper, 'As a table');
    expect(toggle.attributes('aria-pressed')).toBe('false');
    expect(wrapper.find('table').exists()).toBe(false);
    await toggle.trigger('click');
    expect(toggle.attributes('aria-pressed')).toBe('true');
    expect(wrapper.findAll('thead th').map((head) => head.text())).toEqual(['Day', 'Weight, kg']);
    expect(wrapper.findAll('tbody tr').map((row) => row.text())).toEqual([
      '01.02.202526.4',
      '15.02.2025–',
    ]);
    expect(wrapper.get('.picture').attributes('style')).toContain('display: none');
    await toggle.trigger('click');
    expect(wrapper.find('table').exists()).toBe(false);
  });

  it('saves the numbers under the dog’s name, and says so', async () => {
    const wrapper = frame();
    await button(wrapper, 'Save numbers (CSV)').trigger('click');
    await flushPromises();
    expect(saved).toEqual([
      {
        name: 'Tib Weight.csv',
        text: '\uFEFFDay,"Weight, kg"\r\n2025-02-01,26.4\r\n2025-02-15,\r\n',
        kind: 'csv',
      },
    ]);
    expect(useNotice().text).toBe('Tib Weight.csv is saved.');
  });
});
