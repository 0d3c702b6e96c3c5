import { afterEach, describe, expect, it } from 'vitest';
import { nextTick } from 'vue';
import ScaleField from '../../../renderer/components/fields/ScaleField.vue';
import { mountField } from '../support/mountField.ts';

const OPTIONS = [
  { value: null, label: '–', name: 'not scored' },
  ...[1, 2, 3].map((value) => ({ value, label: String(value), name: `${value} of 3` })),
];

afterEach(() => {
  document.body.innerHTML = '';
});

function mountScale() {
  const props = { label: 'Score', options: OPTIONS };
  const { wrapper, form } = mountField(
    ScaleField,
    { score: null as number | null },
    'score',
    props,
  );
  const radios = wrapper.findAll('input');
  return { form, radios };
}

describe('a digit on a scale', () => {
  it('chooses the option of that label, and the focus goes with it', async () => {
    const { form, radios } = mountScale();
    await radios[0]!.trigger('keydown', { key: '2' });
    await nextTick();
    expect(form.values.score).toBe(2);
    expect((radios[2]!.element as HTMLInputElement).checked).toBe(true);
    expect(document.activeElement).toBe(radios[2]!.element);
  });

  it.each([
    ['a digit the scale does not have', { key: '9' }],
    ['a digit that belongs to the browser', { key: '2', ctrlKey: true }],
    ['a letter', { key: 'a' }],
  ])('%s chooses nothing', async (_what, pressed) => {
    const { form, radios } = mountScale();
    await radios[0]!.trigger('keydown', pressed);
    expect(form.values.score).toBe(null);
  });
});
