import { mount } from '@vue/test-utils';
import { describe, expect, it } from 'vitest';
import WeightChart from '../../../renderer/chart/WeightChart.vue';
import type { ChartPoint } from '../../../renderer/chart/weightSeries.ts';
import type { Practice } from '../../../electron/contract/records.ts';
import { specsIn } from '../support/charts.ts';
import { appPlugins } from '../support/plugins.ts';

const POINTS = [
  { day: '2025-01-01', kg: 26.4, errorKg: 0.27, flag: '' },
  { day: '2025-01-15', kg: 26.1, errorKg: 0.27, flag: '' },
  { day: '2025-02-01', kg: 24, errorKg: 0.6, flag: 'another scale' },
];
const plain = (text = '') => text.replaceAll(/[\u00a0\u202f]/g, ' ');

function chart(
  settings: Partial<Practice> = {},
  points: readonly ChartPoint[] = POINTS,
  hold: { low: number; high: number } | null = null,
) {
  const weight = {
    points,
    trend: [],
    corridor: [],
    hold,
    targetKg: 22,
    days: ['2025-01-01', '2025-02-01'] as const,
    marks: [{ day: '2025-01-15', words: '850 kcal' }],
  };
  return mount(WeightChart, {
    props: {
      weight,
      label: 'Weight',
      of: 'Tib',
    },
    global: { plugins: appPlugins(settings) },
    attachTo: document.body,
  });
}
const specOf = (wrapper: ReturnType<typeof chart>) => specsIn(wrapper)[0]!;

describe('the weight chart', () => {
  it('is one tab stop where arrow keys walk along the weighings, each read out with its unit, its error and why it is looked at twice', async () => {
    const wrapper = chart();
    const drawing = wrapper.get('[role="application"]');
    const read = () => plain(wrapper.get('[role="status"]').text());
    expect(wrapper.findAll('[tabindex="0"]')).toHaveLength(1);
    expect(read()).toBe('');
    await drawing.trigger('keydown', { key: 'ArrowRight' });
    expect(read()).toBe('2025-02-01: 24.0 kg, scale error 0.60 kg; another scale');
    await drawing.trigger('keydown', { key: 'ArrowLeft' });
    await drawing.trigger('keydown', { key: 'Home' });
    expect(read()).toBe('2025-01-01: 26.4 kg, scale error 0.27 kg');
    await drawing.trigger('keydown', { key: 'Escape' });
    expect(read()).toBe('');
  });

  it('draws a flagged weighing hollow in a shape of its own, one between visits in another, and what happened', () => {
    const between = { ...POINTS[0]!, day: '2025-01-20', between: true };
    const spec = specOf(chart({}, [...POINTS, between]));
    const lines = spec.series.filter((series) => series.kind === 'line');
    const [visits, others, key] = lines;
    expect(visits!.points.map(({ shape }) => shape)).toEqual(['dot', 'dot', 'triangle']);
    expect(key).toMatchObject({ name: 'to be looked at twice', shape: 'triangle', points: [] });
    expect(visits!.points.map(({ hollow }) => hollow)).toEqual([false, false, true]);
    expect(others!.points.map(({ shape }) => shape)).toEqual(['diamond']);
    expect(spec.uprights!.map(({ words }) => words)).toEqual(['850 kcal']);
  });

  it('shows what it is to be held in from the first to the last day drawn, and its ends in the key', () => {
    const { series } = specOf(chart({}, [POINTS[0]!], { low: 21.6, high: 22.7 }));
    const band = series.find(({ kind }) => kind === 'band')!;
    expect(plain(band.name)).toBe('where it is to hold, 21.6 to 22.7 kg');
    const [from, to] = band.points.map(({ x }) => x);
    expect(to! - from!).toBe(31);
    const target = series.find(({ name }) => name.startsWith('target'))!;
    expect(target.points.map(({ x }) => x)).toEqual([from, to]);
    expect(series.some(({ name }) => name === 'to be looked at twice')).toBe(false);
  });

  it('works in pounds, axis and all', () => {
    const spec = specOf(chart({ weightUnit: 'lb' }));
    expect(spec.y.unit).toBe('lb');
    const [weighed] = spec.series.filter((series) => series.kind === 'line');
    expect(weighed!.points[0]!.y).toBeCloseTo(58.2, 1);
    expect(plain(weighed!.points[0]!.text)).toContain('58.2 lb');
    expect(spec.series.map(({ name }) => plain(name))).toContain('target 48.5 lb');
  });
});
