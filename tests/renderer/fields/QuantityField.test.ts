import { describe, expect, it } from 'vitest';
import { nextTick } from 'vue';
import QuantityField from '../../../renderer/components/fields/QuantityField.vue';
import type { Practice } from '../../../electron/contract/records.ts';
import { mountField } from '../support/mountField.ts';

const start: { weight: number | null } = { weight: null };
function mountWeight(settings: Partial<Practice> = {}, values = start) {
  const props = { limit: 'weightKg', dimension: 'weight' };
  const mounted = mountField(QuantityField, values, 'weight', props, settings);
  return { ...mounted, input: mounted.wrapper.get('input') };
}

describe('a quantity field', () => {
  it('has a visible label, its unit and its range', () => {
    const { wrapper, input } = mountWeight();
    expect(wrapper.get('label').text()).toBe('Body weight');
    expect(wrapper.get('label').attributes('for')).toBe(input.attributes('id'));
    expect(wrapper.get('.unit').text()).toBe('kg');
    expect(wrapper.get('.hint').text()).toBe('0.1 to 150 kg');
    expect(input.attributes('aria-describedby')).toBe('field-weight-hint');
  });

  it('keeps kilograms however the weight is typed', async () => {
    const { form, input } = mountWeight();
    await input.setValue('28,4');
    expect(form.values.weight).toBe(28.4);
    await input.setValue('62 lb');
    expect(form.values.weight).toBeCloseTo(28.1227, 4);
  });

  it('keeps the text as typed and says what it read', async () => {
    const { wrapper, input } = mountWeight();
    await input.setValue('62 lb');
    expect((input.element as HTMLInputElement).value).toBe('62 lb');
    expect(wrapper.get('.hint').text().replaceAll('\u00a0', ' ')).toContain('= 28.12 kg');
  });

  it('works in pounds for a practice that does', async () => {
    const { wrapper, form, input } = mountWeight({ weightUnit: 'lb' }, { weight: 20 });
    expect((input.element as HTMLInputElement).value).toBe('44.09');
    expect(wrapper.get('.unit').text()).toBe('lb');
    await input.setValue('50');
    expect(form.values.weight).toBeCloseTo(22.6796, 4);
  });

  it('says what is wrong only once the field is left, and blocks saving at once', async () => {
    const { wrapper, form, input } = mountWeight();
    await input.setValue('500');
    expect(form.values.weight).toBeNull();
    expect(wrapper.find('.problem').exists()).toBe(false);
    await input.trigger('blur');
    expect(wrapper.get('.problem').text()).toBe('Body weight must be from 0.1 to 150 kg.');
    expect(input.attributes('aria-invalid')).toBe('true');
    expect(input.attributes('aria-describedby')).toContain('field-weight-problem');
    expect(form.attempt()).toBe(false);
    await input.setValue('50');
    expect(wrapper.find('.problem').exists()).toBe(false);
    expect(form.attempt()).toBe(true);
  });

  it('shows a problem that the service found, until the field is changed', async () => {
    const { wrapper, form, input } = mountWeight();
    const message = 'Body weight must be from 0.1 to 150 kg.';
    form.takeError({ kind: 'input', message, fields: [{ path: 'weight', message }] });
    await nextTick();
    expect(wrapper.get('.problem').text()).toBe(message);
    await input.setValue('30');
    expect(wrapper.find('.problem').exists()).toBe(false);
  });

  it('takes over a draft with its text as typed', async () => {
    const { form, input } = mountWeight();
    form.replace({ weight: 28.1227 }, { weight: '62 lb' });
    await nextTick();
    expect((input.element as HTMLInputElement).value).toBe('62 lb');
  });
});
