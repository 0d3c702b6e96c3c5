import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { nextTick } from 'vue';
import DayField from '../../../renderer/components/fields/DayField.vue';
import ScaleField from '../../../renderer/components/fields/ScaleField.vue';
import { LIMITS } from '../../../electron/contract/limits.ts';
import { mountField } from '../support/mountField.ts';

const folder = join(import.meta.dirname, '../../../renderer');
const BEFORE = '2025-02-28';
const FIRST = '2025-03-01';
const TODAY = '2025-03-29';
const TOMORROW = '2025-03-30';

/** Every day field of the program: its page, its label, and the ends it has of its own. */
const DAYS = [
  ['dogs/form/DogFields.vue', 'Day of birth', 'to today'],
  ['visits/WhySection.vue', 'Day of the visit', 'to today'],
  ['visits/HistoryFields.vue', 'Given on', 'any'],
  ['visits/HistoryFields.vue', 'Ends on', 'any'],
  ['visits/ClearancePart.vue', 'Cleared on', 'any'],
  ['visits/InjuryPart.vue', 'When', 'any'],
  ['visits/MedicinePart.vue', 'Heat illness on', 'any'],
  ['visits/MedicinePart.vue', 'Ill since the last visit, well again since', 'to today'],
  ['visits/QuestionnairePart.vue', 'Filled in on', 'any'],
  ['visits/PlanMoreFields.vue', 'First day', 'any'],
  ['visits/PlanMoreFields.vue', 'Day of an event', 'any'],
  ['visits/FoodSwitchFields.vue', 'First day of the changeover', 'any'],
  ['visits/RunDaysFields.vue', 'From', 'any'],
  ['visits/RunDaysFields.vue', 'To', 'any'],
  ['visits/PlanProposalPart.vue', 'The vet cleared the dog on', 'to today'],
  ['plans/ReviewPart.vue', 'The vet cleared the dog on', 'to today'],
  ['plans/EditSession.vue', 'Day', 'from a day'],
  ['weighings/WeighingFields.vue', 'Day', 'from a day to today'],
] as const;

afterEach(() => {
  document.body.innerHTML = '';
});

type Ends = (typeof DAYS)[number][2];

/** The ends of a field in these tests: from `FIRST`, to today, or neither. */
const endsOf = (ends: Ends) => ({
  ...(ends.startsWith('from') ? { min: FIRST } : {}),
  ...(ends.endsWith('today') ? { max: TODAY } : {}),
});

function mountDay(label: string, ends: Ends) {
  const props = { label, ...endsOf(ends) };
  const mounted = mountField(DayField, { day: '' }, 'day', props, { dayFormat: 'DD.MM.YYYY' });
  const { wrapper } = mounted;
  return {
    ...mounted,
    text: () => (wrapper.get('input').element as HTMLInputElement).value,
    problem: () => (wrapper.find('.problem').exists() ? wrapper.get('.problem').text() : null),
    async type(day: string) {
      await wrapper.get('input').setValue(day);
      await nextTick();
    },
    async leave() {
      await wrapper.get('input').trigger('blur');
      await nextTick();
    },
  };
}

/** What a field of these ends says of a day beyond them. */
const SAID: Readonly<Record<Ends, string>> = {
  any: '',
  'to today': 'must not be later than 29.03.2025.',
  'from a day': 'must not be earlier than 01.03.2025.',
  'from a day to today': 'must be from 01.03.2025 to 29.03.2025.',
};

describe.each(DAYS)('%s, “%s”', (_file, label, ends) => {
  const { min, max } = { min: undefined, max: undefined, ...endsOf(ends) };

  it('takes the days inside, the first and the last too', async () => {
    for (const day of [min ?? '1980-01-01', '2025-03-12', max ?? '2150-12-31']) {
      const field = mountDay(label, ends);
      await field.type(day);
      await field.leave();
      expect(field.problem()).toBeNull();
      expect(field.form.values.day).toBe(day);
      expect(field.form.attempt()).toBe(true);
    }
  });

  it.each([
    ['before', BEFORE, min !== undefined],
    ['after', TOMORROW, max !== undefined],
  ])('refuses the day %s its end by name and range, at once', async (_where, day, refused) => {
    const field = mountDay(label, ends);
    await field.type(day);
    expect(field.problem()).toBe(refused ? `${label} ${SAID[ends]}` : null);
    expect(field.text()).toBe(day);
    expect(field.form.attempt()).toBe(!refused);
    await field.type('2025-03-12');
    expect(field.problem()).toBeNull();
    expect(field.form.attempt()).toBe(true);
  });

  it.each(['0202-03-29', '1979-12-31', '2151-01-01'])('refuses %s, by its name', async (day) => {
    const field = mountDay(label, ends);
    await field.type(day);
    await field.leave();
    expect(field.problem()).toBe(`${label} must be a day from 1980 to 2150, written DD.MM.YYYY.`);
    expect(field.text()).toBe(day);
    expect(field.form.values.day).toBe('');
    expect(field.form.attempt()).toBe(false);
  });

  it('is no day yet when it is emptied', async () => {
    const field = mountDay(label, ends);
    await field.type(TODAY);
    await field.type('');
    expect(field.problem()).toBeNull();
    expect(field.form.values.day).toBe('');
  });
});

describe('the list of day fields', () => {
  it('has each one there is, with the ends it has', () => {
    const found = globSync('**/*.vue', { cwd: folder }).flatMap((file) =>
      [...readFileSync(join(folder, file), 'utf8').matchAll(/<DayField\b([^]*?)\/>/g)].map(
        ([, attributes]) => {
          const label = /\slabel="([^"]*)"/.exec(attributes!)?.[1];
          const from = /\s:min=/.test(attributes!) ? 'from a day' : '';
          const to = /\s:max=/.test(attributes!) ? 'to today' : '';
          return [file, label, `${from} ${to}`.trim() || 'any'].join(', ');
        },
      ),
    );
    expect(found.toSorted()).toEqual(DAYS.map((row) => row.join(', ')).toSorted());
  });
});

describe.each([
  ['Body condition score, 1 to 9', LIMITS.bcs],
  ['Left fore at walk', LIMITS.lameness],
])('the scale “%s”', (label, { min, max }) => {
  const grades = Array.from({ length: max - min + 1 }, (_, index) => min + index);
  const options = [
    { value: null, label: '–', name: 'not looked at' },
    ...grades.map((grade) => ({ value: grade, label: `${grade}`, name: `grade ${grade}` })),
  ];
  const mountScale = (start: number | null) => {
    const values: { grade: number | null } = { grade: start };
    return mountField(ScaleField, values, 'grade', { label, options });
  };

  it('has its name, and one radio of one group for each grade, so that the arrow keys move', () => {
    const { wrapper } = mountScale(null);
    expect(wrapper.get('legend').text()).toBe(label);
    const radios = wrapper.findAll('input');
    expect(radios.map((radio) => radio.attributes('type'))).toEqual(options.map(() => 'radio'));
    expect(new Set(radios.map((radio) => radio.attributes('name'))).size).toBe(1);
    expect(radios.map((radio) => radio.attributes('aria-label'))).toEqual(
      options.map(({ name }) => name),
    );
    expect(radios.filter((radio) => radio.attributes('tabindex') !== undefined)).toEqual([]);
  });

  it('keeps every grade, the least and the most too, and none', async () => {
    const { wrapper, form } = mountScale(null);
    for (const [index, { value }] of [...options.entries()].toReversed()) {
      await wrapper.findAll('input')[index]!.trigger('change');
      expect(form.values.grade).toBe(value);
      const checked = wrapper
        .findAll('input')
        .filter(({ element }) => (element as HTMLInputElement).checked);
      expect(checked).toHaveLength(1);
    }
  });

  it('shows what the service refuses under its own name, until it is answered', async () => {
    const { wrapper, form } = mountScale(min);
    const message = `${label} is needed.`;
    form.takeError({ kind: 'input', message, fields: [{ path: 'grade', message }] });
    await nextTick();
    expect(wrapper.get('.problem').text()).toBe(message);
    expect(wrapper.get('fieldset').attributes('aria-describedby')).toBe(
      wrapper.get('.problem').attributes('id'),
    );
    await wrapper.findAll('input')[1]!.trigger('change');
    expect(wrapper.find('.problem').exists()).toBe(false);
  });
});
