import { mount } from '@vue/test-utils';
import { describe, expect, it } from 'vitest';
import { causesOf, defaultRules, source, type RuleId } from '../../../core/index.ts';
import RulePage from '../../../renderer/pages/RulePage.vue';
import { ruleAnchor, ruleValue } from '../../../renderer/rules/ruleText.ts';
import { usePractice } from '../../../renderer/stores/practice.ts';
import { DEFAULT_CHOICES } from '../../../renderer/units/shown.ts';
import { appPlugins } from '../support/plugins.ts';

const spelled = (rule: Parameters<typeof ruleValue>[0], value: number) =>
  ruleValue(rule, value, DEFAULT_CHOICES);
const page = (ruleId: string) =>
  mount(RulePage, { props: { ruleId }, global: { plugins: appPlugins() } });

describe('the page of a rule', () => {
  it.each(defaultRules())('says what $id is, how sure, and from where', (rule) => {
    const text = page(rule.id).text();
    expect(text).toContain(rule.name);
    expect(text).toContain(spelled(rule, rule.value));
    expect(text).toContain(`${String(rule.min).replace('-', '−')} to ${spelled(rule, rule.max)}`);
    for (const id of rule.sources) expect(text).toContain(source(id).reference);
  });

  it.each(defaultRules())('tells where $id decides, and leads to its own line', ({ id }) => {
    const wrapper = page(id);
    const causes = wrapper.get('[aria-labelledby=rule-causes]').text();
    for (const { place, text } of causesOf(id as RuleId)) {
      expect(causes).toContain(place);
      expect(causes).toContain(text);
    }
    const change = wrapper.findAll('a').find((link) => link.text() === 'Change it')!;
    expect(change.attributes('href')).toBe(`/settings/rules#${ruleAnchor(id)}`);
  });

  it('shows the value as published beside a changed one, with the reason', async () => {
    const rule = defaultRules().find(({ id }) => id === 'capConditioned')!;
    const wrapper = page(rule.id);
    const updatedAt = '2025-03-01T10:00:00.000Z';
    usePractice().keepRules([
      { ruleId: rule.id, value: 12, reason: 'Soft ground here', updatedAt },
    ]);
    await wrapper.vm.$nextTick();
    expect(wrapper.text()).toContain(spelled(rule, 12));
    expect(wrapper.text()).toContain(spelled(rule, rule.value));
    expect(wrapper.text()).toContain('Soft ground here');
  });

  it('says so where there is no such rule', () => {
    expect(page('toString').text()).toContain('There is no such rule');
  });
});
