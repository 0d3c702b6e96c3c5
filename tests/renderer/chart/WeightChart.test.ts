import { mount } from '@vue/test-utils';
import { describe, expect, it } from 'vitest';
import WeightChart from '../../../renderer/chart/WeightChart.vue';
import type { Practice } from '../../../electron/contract/records.ts';
import { appPlugins } from '../support/plugins.ts';

const POINTS = [
  { day: '2025-01-01', kg: 26.4, errorKg: 0.27, flag: '' },
  { day: '2025-01-15', kg: 26.1, errorKg: 0.27, flag: '' },
  { day: '2025-02-01', kg: 24, errorKg: 0.6, flag: 'another scale' },
];
const plain = (text = '') => text.replaceAll(/[\u00a0\u202f]/g, ' ');

function chart(settings: Partial<Practice> = {}, points = POINTS) {
  return mount(WeightChart, {
    props: { points, trend: [], corridor: [], targetKg: 22, label: 'Weight', of: 'Tib' },
    global: { plugins: appPlugins(settings) },
    attachTo: document.body,
  });
}

describe('the weight chart', () => {
  it('reads every weighing out with its unit, its error and why it is looked at twice', () => {
    const labels = chart()
      .findAll('.point')
      .map((point) => plain(point.attributes('aria-label')));
    expect(labels[0]).toBe('2025-01-01: 26.4 kg, scale error 0.27 kg');
    expect(labels[2]).toContain('another scale');
  });

  it('has one tab stop, and the arrow keys walk along the weighings', async () => {
    const wrapper = chart();
    const points = wrapper.findAll('.point');
    expect(points.filter((point) => point.attributes('tabindex') === '0')).toHaveLength(1);
    await points[2]!.trigger('keydown', { key: 'ArrowLeft' });
    expect(document.activeElement).toBe(points[1]!.element);
    await points[1]!.trigger('keydown', { key: 'Home' });
    expect(document.activeElement).toBe(points[0]!.element);
    await points[0]!.trigger('keydown', { key: 'ArrowLeft' });
    expect(document.activeElement).toBe(points[0]!.element);
    expect(plain(wrapper.get('.reading').text())).toContain('26.4 kg');
  });

  it('works in pounds, axis and all', () => {
    const wrapper = chart({ weightUnit: 'lb' });
    expect(wrapper.get('.unit').text()).toBe('lb');
    expect(plain(wrapper.findAll('.point')[0]!.attributes('aria-label'))).toContain('58.2 lb');
    expect(plain(wrapper.get('.key').text())).toContain('target 48.5 lb');
  });

  it('draws a single weighing without numbers that are none', () => {
    const wrapper = chart({}, POINTS.slice(0, 1));
    expect(wrapper.html()).not.toMatch(/NaN|Infinity/);
  });
});
