import { mount } from '@vue/test-utils';
import { describe, expect, it } from 'vitest';
import { assess, weightAhead, type Assessment } from '../../../core/index.ts';
import { dayNumber } from '../../../core/day.ts';
import FoodAhead from '../../../renderer/food/FoodAhead.vue';
import type { Practice } from '../../../electron/contract/records.ts';
import { grownDog, visit } from '../../core/assess/visits.ts';
import { specsIn } from '../support/charts.ts';
import { appPlugins } from '../support/plugins.ts';

const lose = { foodGoal: 'lose', targetWeightKg: 26, bcs: 7, kcal: 900 } as const;
const assessment = assess({
  dog: grownDog,
  visits: [
    visit('2025-01-06', 30, lose),
    visit('2025-02-03', 29.6, lose),
    visit('2025-03-03', 29.2, lose),
  ],
  foodDecisions: [{ decidedOn: '2025-01-06', kcalPerDay: 850, known: { runningKcalPerDay: 0 } }],
  day: '2025-03-03',
})!;

const ahead = (
  ownKcal: number | null,
  more: Partial<Assessment> = {},
  settings: Partial<Practice> = {},
) =>
  mount(FoodAhead, {
    props: { assessment: { ...assessment, ...more }, ownKcal, of: 'Rusk' },
    global: { plugins: appPlugins(settings) },
  });
const lines = (wrapper: ReturnType<typeof ahead>) =>
  specsIn(wrapper)[0]!.series.filter((one) => one.kind === 'line' && one.shape !== 'none');

describe('the weight ahead at the decision on the food', () => {
  it('draws the proposed ration as core predicts it, week by week, from the day of the visit', () => {
    const [line, ...more] = lines(ahead(null));
    expect(more).toEqual([]);
    const predicted = weightAhead({
      body: assessment.body!,
      day: '2025-03-03',
      kcalPerDay: assessment.food.kcalPerDay!,
    });
    expect(line!.points.map((point) => 'y' in point && [point.x, point.y])).toEqual(
      predicted.map(({ day, kg }) => [dayNumber(day), kg]),
    );
  });

  it('sets the practitioner’s own figure beside it as it is typed', async () => {
    const wrapper = ahead(null);
    expect(wrapper.text()).not.toContain('your figure');
    await wrapper.setProps({ ownKcal: 600 } as never);
    expect(lines(wrapper).map(({ name }) => name)).toContain('your figure, 600\u00a0kcal/day');
    const [proposed, own] = lines(wrapper);
    const end = (one: typeof own) => (one!.points.at(-1) as { y: number }).y;
    expect(end(own)).toBeLessThan(end(proposed));
    expect(wrapper.text()).toMatch(/600.kcal\/day, your figure: in 8 weeks/);
    // What is half typed or out of range is no ration.
    await wrapper.setProps({ ownKcal: 200_000 } as never);
    expect(wrapper.text()).not.toContain('your figure');
  });

  it('shows the corridor and the target inside its weeks', () => {
    const names = specsIn(ahead(null))[0]!.series.map(({ name }) => name);
    expect(names).toContain('planned corridor');
    expect(names).toContain('target 26.0\u00a0kg');
  });

  it('says nothing of a growing dog', () => {
    expect(ahead(600, { body: null }).text()).toBe('');
  });

  it('carries the same numbers in its table, in the practice’s unit', async () => {
    const wrapper = ahead(600, {}, { weightUnit: 'lb' });
    await wrapper
      .findAll('button')
      .find((one) => one.text() === 'As a table')!
      .trigger('click');
    const heads = wrapper.findAll('thead th').map((head) => head.text());
    expect(heads[1]).toBe('as proposed, lb');
    expect(wrapper.findAll('tbody tr')).toHaveLength(9);
    const first = Number(wrapper.get('tbody td').text());
    expect(first).toBeCloseTo(assessment.body!.kg / 0.45359237, 1);
  });
});
