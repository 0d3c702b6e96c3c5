import { mount } from '@vue/test-utils';
import { describe, expect, it } from 'vitest';
import { withRules, type RuleChanges } from '../../../core/index.ts';
import RuleLine from '../../../renderer/rules/RuleLine.vue';
import { appPlugins } from '../support/plugins.ts';

function line(changes: RuleChanges) {
  const rule = withRules(changes).find(({ id }) => id === 'heatShiftC')!;
  const change = {
    ruleId: 'heatShiftC',
    value: rule.value,
    reason: 'A warm valley.',
    updatedAt: '2025-03-01T09:00:00.000Z',
  };
  return mount(RuleLine, {
    props: { rule, change: rule.changed ? change : null },
    global: { plugins: appPlugins() },
    attachTo: document.body,
  });
}

describe('a rule of the practice', () => {
  it('shows value, range and evidence as published, with nothing to take back', () => {
    const text = line({}).text();
    expect(text).toContain('3\u202f°C');
    expect(text).toContain('Evidence D');
    expect(text).not.toContain('As published');
  });
  it('that was changed says from what, when and why', () => {
    const text = line({ heatShiftC: 4 }).text().replaceAll('\u202f', ' ');
    expect(text).toContain('4 °C');
    expect(text).toContain('Changed by this practice from 3 °C on 2025-03-01: A warm valley.');
    expect(text).toContain('As published');
  });
  it('is not changed without a reason, nor outside its range', async () => {
    const wrapper = line({});
    await wrapper.get('button').trigger('click');
    await wrapper.get('#field-heatShiftC-value').setValue('400');
    await wrapper.get('form').trigger('submit');
    const said = wrapper.get('[role=alert]').text();
    expect(said).toContain('Value in this practice must be from');
    expect(said).toContain('A reason is needed');
  });
});
