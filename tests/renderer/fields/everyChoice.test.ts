import type { VueWrapper } from '@vue/test-utils';
import { afterEach, describe, expect, it } from 'vitest';
import { nextTick, type Component } from 'vue';
import CheckField from '../../../renderer/components/fields/CheckField.vue';
import PassphraseField from '../../../renderer/components/fields/PassphraseField.vue';
import RadioField from '../../../renderer/components/fields/RadioField.vue';
import SelectField from '../../../renderer/components/fields/SelectField.vue';
import { mountField } from '../support/mountField.ts';
import { written } from './fieldsOfPages.ts';

/** Each kind of field that is chosen or kept as it is, and how a hand answers it. */
interface Kind {
  readonly field: Component;
  readonly start: unknown;
  readonly answers: readonly unknown[];
  give(wrapper: VueWrapper, index: number): Promise<unknown>;
}

const OPTIONS = ['first', 'second', 'third'];

const KINDS: Readonly<Record<string, Kind>> = {
  SelectField: {
    field: SelectField,
    start: 'first',
    answers: OPTIONS,
    give: (wrapper, index) => wrapper.get('select').setValue(String(index)),
  },
  RadioField: {
    field: RadioField,
    start: 'first',
    answers: OPTIONS,
    give: (wrapper, index) => wrapper.findAll('input')[index]!.trigger('change'),
  },
  CheckField: {
    field: CheckField,
    start: false,
    answers: [false, true],
    give: (wrapper, index) => wrapper.get('input').setValue(index === 1),
  },
  PassphraseField: {
    field: PassphraseField,
    start: '',
    answers: ['a b c d e f', ' kept as typed '],
    give: (wrapper, index) =>
      wrapper.get('input').setValue(['a b c d e f', ' kept as typed '][index]),
  },
};

afterEach(() => {
  document.body.innerHTML = '';
});

const fields = Object.keys(KINDS).flatMap((component) =>
  written(component).map(
    ({ file, attributes }) => [component, file, attributes['label'] ?? '', attributes] as const,
  ),
);

describe.each(fields)('%s of %s, “%s”', (component, _file, label, attributes) => {
  const { field, start, answers, give } = KINDS[component]!;
  const mountIt = () => {
    const options = OPTIONS.map((value) => ({ value, label: `The ${value}` }));
    const props = { label, ...('options' in attributes ? { options } : {}) };
    return mountField(field, { it: start }, 'it', props);
  };

  it('has a name of its own, in words', () => {
    expect(label).toMatch(/[A-Z][a-z ]/);
    const { wrapper } = mountIt();
    expect(wrapper.get('legend, label').text()).toContain(label);
  });

  it('keeps each answer', async () => {
    const { wrapper, form } = mountIt();
    for (const index of [...answers.keys()].toReversed()) {
      await give(wrapper, index);
      expect(form.values.it).toBe(answers[index]);
    }
  });

  it('shows what is refused beside it until it is answered anew, and tells a screen reader', async () => {
    const { wrapper, form } = mountIt();
    const message = `${label}: this cannot be kept.`;
    form.takeError({ kind: 'input', message, fields: [{ path: 'it', message }] });
    await nextTick();
    const problem = wrapper.get('.problem');
    expect(problem.text()).toBe(message);
    expect(wrapper.get('[aria-describedby]').attributes('aria-describedby')).toContain(
      problem.attributes('id'),
    );
    await give(wrapper, answers.length - 1);
    expect(wrapper.find('.problem').exists()).toBe(false);
  });
});

it('finds the fields of the pages', () => {
  // Fewer would mean that the pages are no longer read as they are written.
  expect(fields.length).toBeGreaterThan(60);
});
