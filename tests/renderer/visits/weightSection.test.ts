import { describe, expect, it } from 'vitest';
import { mount } from '@vue/test-utils';
import { defineComponent, h, nextTick } from 'vue';
import { blankVisit } from '../../../electron/contract/records/forms.ts';
import type { Practice, VisitFacts } from '../../../electron/contract/records.ts';
import { useForm, type Form } from '../../../renderer/composables/useForm.ts';
import { useAssessment } from '../../../renderer/visits/useAssessment.ts';
import { newVisitForm, type VisitForm } from '../../../renderer/visits/visitForm.ts';
import WeightSection from '../../../renderer/visits/WeightSection.vue';
import { dogFile } from '../support/dogFile.ts';
import { appPlugins } from '../support/plugins.ts';

/** The part of the visit form on weight, with the assessment that goes with it. */
function mountSection(
  facts: Partial<VisitFacts>,
  settings: Partial<Practice> = {},
  firstWeighing = true,
) {
  const file = dogFile([]);
  let form!: Form<VisitForm>;
  const Frame = defineComponent(() => {
    form = useForm(newVisitForm(file, '2025-03-29'));
    Object.assign(form.values.visit, blankVisit('d', '2025-03-29'), facts);
    const live = useAssessment(form.values, {
      file,
      visitId: null,
      ramp: () => null,
      rules: () => [],
    });
    return () =>
      h(WeightSection, {
        modelValue: form.values.visit,
        assessment: live.value.assessment,
        sighthound: false,
        firstWeighing,
      });
  });
  const wrapper = mount(Frame, { global: { plugins: appPlugins(settings) } });
  const problem = () => wrapper.find('#field-visit-targetWeightKg-problem');
  return { wrapper, form, problem };
}

describe('how a dog was weighed', () => {
  const asked = (first: boolean) => mountSection({}, {}, first).wrapper.text();
  it('is compared with another weighing only where there is one', () => {
    expect(asked(true)).not.toMatch(/same scale|other scale/i);
    expect(asked(true)).toContain('The scale for this dog from now on');
    expect(asked(false)).toContain('Same scale');
  });
});

describe('a target weight beyond the aim', () => {
  it('is refused beside its field at once, and blocks saving', async () => {
    const { wrapper, form, problem } = mountSection({ weightKg: 28, foodGoal: 'lose' });
    expect(problem().exists()).toBe(false);
    await wrapper.get('#field-visit-targetWeightKg').setValue('30');
    await nextTick();
    expect(problem().text()).toMatch(/Target weight must be below the present weight of 28\.0.kg/);
    expect(form.attempt()).toBe(false);
  });

  it('is fine again once target or aim is changed', async () => {
    const { wrapper, form, problem } = mountSection({
      weightKg: 28,
      foodGoal: 'lose',
      targetWeightKg: 30,
    });
    await nextTick();
    expect(problem().exists()).toBe(true);
    await wrapper.get('#field-visit-targetWeightKg').setValue('26');
    await nextTick();
    expect(problem().exists()).toBe(false);
    form.values.visit.targetWeightKg = 30;
    await nextTick();
    expect(problem().exists()).toBe(true);
    form.values.visit.foodGoal = 'gain';
    await nextTick();
    expect(problem().exists()).toBe(false);
    expect(form.attempt()).toBe(true);
  });

  it('leaves the field’s own refusal of unreadable text alone', async () => {
    const { wrapper, form } = mountSection({ weightKg: 28, foodGoal: 'lose', targetWeightKg: 30 });
    await wrapper.get('#field-visit-targetWeightKg').setValue('heavy');
    await nextTick();
    expect(form.problemAt('visit.targetWeightKg')).toContain('write a number');
  });
});
