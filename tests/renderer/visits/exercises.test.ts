import { describe, expect, it } from 'vitest';
import { EXERCISES, screenForRunning } from '../../../core/index.ts';
import { blankVisit } from '../../../electron/contract/records/forms.ts';
import ExercisesPart from '../../../renderer/visits/ExercisesPart.vue';
import { mountField } from '../support/mountField.ts';

const screening = screenForRunning({ ageMonths: 40, weightKg: 25, bcs: 5, signs: [] });

async function open(facts: Partial<ReturnType<typeof blankVisit>>) {
  const visit = { ...blankVisit('d', '2026-03-01'), ...facts };
  const { wrapper, form } = mountField(ExercisesPart, { visit }, 'visit', {
    screening,
    runs: false,
  });
  await wrapper.get('button').trigger('click');
  return { wrapper, chosen: () => form.values.visit.exercises };
}

describe('strength exercises at a visit', () => {
  it('are proposed, chosen by the practitioner, and taken back one by one', async () => {
    const { wrapper, chosen } = await open({});
    expect(chosen()).toBeNull();
    const take = wrapper.findAll('button').find((button) => button.text() === 'Take these')!;
    await take.trigger('click');
    const proposed = [...chosen()!];
    expect(proposed.length).toBeGreaterThanOrEqual(3);
    await wrapper
      .findAll('input')
      [EXERCISES.findIndex(({ id }) => id === proposed[0])]!.setValue(false);
    expect(chosen()).toEqual(proposed.slice(1));
  });

  it('say what speaks against one, and name a choice that no longer fits', async () => {
    const spine = { joints: null, spine: 'yes', heart: null, words: '' } as const;
    const { wrapper } = await open({ disease: spine, exercises: ['play-bow'] });
    expect(wrapper.text()).toContain('Look again, by what was found: Play bow');
    expect(wrapper.text()).toContain('not with: spine');
    expect(wrapper.text()).not.toMatch(/Proposed: [^.]*Play bow/);
  });
});
