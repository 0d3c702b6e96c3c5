import { describe, expect, it } from 'vitest';
import { nextTick } from 'vue';
import DayField from '../../../renderer/components/fields/DayField.vue';
import { mountField } from '../support/mountField.ts';

describe('a day that may not lie in the future', () => {
  const birth = () =>
    mountField(DayField, { day: '' }, 'day', { label: 'Day of birth', max: '2025-03-29' });

  it('is refused beside the field at once, before any attempt to save', async () => {
    const { wrapper, form } = birth();
    await wrapper.get('input').setValue('2025-03-30');
    await nextTick();
    expect(wrapper.get('.problem').text()).toContain('Day of birth must not be later than');
    expect(form.attempt()).toBe(false);
  });

  it('is fine today and before', async () => {
    const { wrapper, form } = birth();
    await wrapper.get('input').setValue('2025-03-30');
    await wrapper.get('input').setValue('2025-03-29');
    expect(wrapper.find('.problem').exists()).toBe(false);
    expect(form.attempt()).toBe(true);
  });
});
