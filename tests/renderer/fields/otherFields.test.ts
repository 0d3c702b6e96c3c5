import { describe, expect, it } from 'vitest';
import { computed, nextTick, ref } from 'vue';
import { blankDog } from '../../../electron/contract/records/forms.ts';
import DogFields from '../../../renderer/dogs/form/DogFields.vue';
import DayField from '../../../renderer/components/fields/DayField.vue';
import ErrorSummary from '../../../renderer/components/fields/ErrorSummary.vue';
import RadioField from '../../../renderer/components/fields/RadioField.vue';
import ScaleField from '../../../renderer/components/fields/ScaleField.vue';
import SelectField from '../../../renderer/components/fields/SelectField.vue';
import TextField from '../../../renderer/components/fields/TextField.vue';
import type { Problem } from '../../../renderer/composables/useForm.ts';
import { mount } from '@vue/test-utils';
import { mountField } from '../support/mountField.ts';

const COATS = [
  { value: 'ordinary', label: 'Ordinary' },
  { value: 'thick', label: 'Thick' },
];

describe('a text field', () => {
  it('is labelled, keeps what is typed and shows what the service refused', async () => {
    const { wrapper, form } = mountField(TextField, { name: '' }, 'name', { label: 'Name' });
    const input = wrapper.get('input');
    expect(wrapper.get('label').attributes('for')).toBe(input.attributes('id'));
    form.takeError({
      kind: 'input',
      message: 'Name is needed.',
      fields: [{ path: 'name', message: 'Name is needed.' }],
    });
    await nextTick();
    expect(wrapper.get('.problem').text()).toBe('Name is needed.');
    await input.setValue('Bramble');
    expect(form.values.name).toBe('Bramble');
    expect(wrapper.find('.problem').exists()).toBe(false);
  });
});

describe('a day field', () => {
  it('keeps an ISO day', async () => {
    const { wrapper, form } = mountField(DayField, { day: '' }, 'day', { label: 'Day' });
    await wrapper.get('input').setValue('2025-03-29');
    expect(form.values.day).toBe('2025-03-29');
  });
  it('gives null when an optional day is emptied', async () => {
    const values: { day: string | null } = { day: '2025-03-29' };
    const { wrapper, form } = mountField(DayField, values, 'day', { label: 'Day', optional: true });
    await wrapper.get('input').setValue('');
    expect(form.values.day).toBeNull();
  });
  it('refuses a year the program does not know', async () => {
    const { wrapper, form } = mountField(DayField, { day: '' }, 'day', { label: 'Day of birth' });
    await wrapper.get('input').setValue('0202-03-29');
    await wrapper.get('input').trigger('blur');
    expect(wrapper.get('.problem').text()).toBe(
      'Day of birth must be a day from 1980 to 2150, written YYYY-MM-DD.',
    );
    expect(form.values.day).toBe('');
  });
});

describe('a choice', () => {
  it('is taken from a select', async () => {
    const props = { label: 'Coat', options: COATS };
    const { wrapper, form } = mountField(SelectField, { coat: 'ordinary' }, 'coat', props);
    await wrapper.get('select').setValue('1');
    expect(form.values.coat).toBe('thick');
  });
  it('is taken from a radio group under a legend', async () => {
    const props = { label: 'Coat', options: COATS };
    const { wrapper, form } = mountField(RadioField, { coat: 'ordinary' }, 'coat', props);
    expect(wrapper.get('legend').text()).toBe('Coat');
    await wrapper.findAll('input')[1]!.setValue(true);
    expect(form.values.coat).toBe('thick');
  });
  it('may be none at all on a scale, and each grade has a spoken name', async () => {
    const options = [
      { value: null, label: '–', name: 'not looked at' },
      { value: 2, label: '2', name: 'grade 2: slight' },
    ];
    const values: { grade: number | null } = { grade: null };
    const { wrapper, form } = mountField(ScaleField, values, 'grade', { label: 'Fore', options });
    const radios = wrapper.findAll('input');
    expect(radios[1]!.attributes('aria-label')).toBe('grade 2: slight');
    await radios[1]!.setValue(true);
    expect(form.values.grade).toBe(2);
    await radios[0]!.setValue(true);
    expect(form.values.grade).toBeNull();
  });
});

describe('the summary of what stands in the way', () => {
  const problem = { path: 'dog.name', message: 'Name of the dog is needed.' };
  const formWith = (problems: readonly Problem[]) => ({
    name: '',
    problems: computed(() => problems),
    failures: ref(1),
  });

  it('is an alert, and each line leads to its field', async () => {
    document.body.innerHTML = '<input id="field-dog-name">';
    const summary = mount(ErrorSummary, {
      props: { error: null, form: formWith([problem]) },
      attachTo: document.body,
    });
    expect(summary.get('[role=alert]').text()).toContain('Everything you typed is still here.');
    await summary.get('button').trigger('click');
    expect(document.activeElement?.id).toBe('field-dog-name');
  });
  it('takes the focus after every failed attempt', async () => {
    const form = formWith([problem]);
    const summary = mount(ErrorSummary, {
      props: { error: null, form },
      attachTo: document.body,
    });
    form.failures.value++;
    await nextTick();
    await nextTick();
    expect(document.activeElement).toBe(summary.get('[role=alert]').element);
  });
  it('says what happened when no field is to blame', () => {
    const error = { kind: 'storage', message: 'The disk is full.' } as const;
    const summary = mount(ErrorSummary, { props: { error, form: formWith([]) } });
    expect(summary.text()).toContain('The disk is full.');
  });
  it('is absent while all is well', () => {
    const summary = mount(ErrorSummary, { props: { error: null, form: formWith([]) } });
    expect(summary.find('[role=alert]').exists()).toBe(false);
  });
});

describe('the fields of a dog', () => {
  it('ask for the nose where the breed has a short one, until it is ticked', async () => {
    const dog = { ...blankDog('female'), name: 'Momo', breed: 'Pug' };
    const { wrapper } = mountField(DogFields, { dog }, 'dog', { today: '2026-01-05' });
    const asks = () => wrapper.text().includes('Often so in this breed.');
    expect(asks()).toBe(true);
    await wrapper.get('input[type=checkbox]').setValue(true);
    expect(asks()).toBe(false);
    await wrapper.get('input[type=checkbox]').setValue(false);
    await wrapper.get('[id$=breed]').setValue('Pointer');
    expect(asks()).toBe(false);
  });
});
