import { describe, expect, it } from 'vitest';
import { h, nextTick } from 'vue';
import DietTable from '../../../renderer/visits/DietTable.vue';
import FoodSection from '../../../renderer/visits/FoodSection.vue';
import {
  blankDietEntry,
  newVisitForm,
  type DietEntry,
} from '../../../renderer/visits/visitForm.ts';
import { dogFile } from '../support/dogFile.ts';
import { mountField } from '../support/mountField.ts';

const food = (name: string, kcalPer100g: number, gramsPerDay: number): DietEntry => ({
  ...blankDietEntry(false),
  name,
  kcalPer100g,
  gramsPerDay,
});
const plain = (text: string) => text.replaceAll(/[\u00a0\u202f]/g, ' ');

function mountDiet(diet: DietEntry[]) {
  return mountField(DietTable, { diet }, 'diet', {});
}

describe('what the dog eats', () => {
  it('is summed up in kcal a day', () => {
    const { wrapper } = mountDiet([food('Dry', 360, 200), food('Wet', 100, 150)]);
    expect(plain(wrapper.get('.total').text())).toBe('Eats now 870 kcal/day');
  });

  it('leaves a food without its numbers out of the sum', () => {
    const { wrapper } = mountDiet([food('Dry', 360, 200), blankDietEntry(false)]);
    expect(plain(wrapper.get('.total').text())).toBe('Eats now 720 kcal/day');
  });

  it('takes a new food, with the focus in its name', async () => {
    const { wrapper, form } = mountDiet([]);
    await wrapper.findAll('button').at(0)!.trigger('click');
    await nextTick();
    expect(form.values.diet).toHaveLength(1);
    expect(document.activeElement?.id).toBe('field-visit-diet-0-name');
  });

  it('brings a removed food back', async () => {
    const { wrapper, form } = mountDiet([food('Dry', 360, 200), food('Wet', 100, 150)]);
    await wrapper.get('button[aria-label="Remove Dry"]').trigger('click');
    expect(form.values.diet.map(({ name }) => name)).toEqual(['Wet']);
    expect(wrapper.text()).toContain('Dry is removed.');
    await wrapper.get('.note button').trigger('click');
    expect(form.values.diet.map(({ name }) => name)).toEqual(['Dry', 'Wet']);
  });

  it('does not hand a half-typed number on to the food that moves up', async () => {
    const { wrapper, form } = mountDiet([food('Dry', 360, 200), food('Wet', 100, 150)]);
    await wrapper.get('#field-visit-diet-0-gramsPerDay').setValue('lots');
    await wrapper.get('button[aria-label="Remove Dry"]').trigger('click');
    const input = wrapper.get('#field-visit-diet-0-gramsPerDay').element as HTMLInputElement;
    expect(input.value).toBe('150');
    expect(form.attempt()).toBe(true);
  });

  it('computes the energy from the label where the pack declares none', async () => {
    // FEDIAF 2017, p. 118, four steps: 26/15/3/9/7 gives 375.55 kcal per 100 g (S).
    const label = { proteinPct: 26, fatPct: 15, fibrePct: 3, moisturePct: 9, ashPct: 7 };
    const { wrapper, form } = mountDiet([{ ...food('Dry', 300, 200), label }]);
    expect(plain(wrapper.text())).toContain('By the four steps 376 kcal/100 g');
    expect(plain(wrapper.text())).toContain('differ by more than 10 %');
    await wrapper.get('#field-visit-diet-0-energyFrom').setValue(true);
    await nextTick();
    expect(form.values.diet[0]!.kcalPer100g).toBeCloseTo(375.55, 2);
    const energy = wrapper.get('#field-visit-diet-0-kcalPer100g');
    expect(energy.attributes('readonly')).toBeDefined();
  });

  it('forgets what was refused about a label that is closed without a share', async () => {
    const { wrapper, form } = mountDiet([food('Dry', 300, 200)]);
    const label = wrapper.get<HTMLDetailsElement>('details.label');
    const turn = async (open: boolean) => {
      label.element.open = open;
      await label.trigger('toggle');
    };
    await turn(true);
    await wrapper.get('#field-visit-diet-0-label-ashPct').setValue('lots');
    expect(form.attempt()).toBe(false);
    await turn(false);
    expect(form.values.diet[0]!.label).toBeNull();
    expect(form.attempt()).toBe(true);
  });
});

describe('a treat told by the piece', () => {
  const at = (name: string) => `#field-visit-diet-0-${name}`;
  const biscuit = (kcalPer100g: number | null): DietEntry => ({
    ...blankDietEntry(true),
    name: 'Biscuit',
    kcalPer100g,
  });

  it('comes to its grams a day by the weight of a piece', async () => {
    const { wrapper, form } = mountDiet([biscuit(400)]);
    await wrapper.get(at('gramsPerDay')).setValue('lots');
    await wrapper.get(at('pieces')).setValue('4');
    await wrapper.get(at('grams')).setValue('8');
    expect(form.values.diet[0]).toMatchObject({ gramsPerDay: 32, kcalPer100g: 400 });
    expect((wrapper.get(at('gramsPerDay')).element as HTMLInputElement).value).toBe('32');
    expect(form.attempt()).toBe(true);
    expect(plain(wrapper.get('.pieces').text())).toContain('4 of 8 grams: 32 grams a day.');
  });

  it('comes to them by the energy of a piece where that of 100 g is known', async () => {
    // 36 kcal at 400 kcal/100 g are 9 g a piece.
    const { wrapper, form } = mountDiet([biscuit(400)]);
    await wrapper.get(at('pieces')).setValue('4');
    await wrapper.get(at('kcal')).setValue('36');
    expect(form.values.diet[0]).toMatchObject({ gramsPerDay: 36, kcalPer100g: 400 });
  });

  it('gives the energy of 100 g where both are known, and nothing where neither is', async () => {
    const { wrapper, form } = mountDiet([biscuit(null)]);
    await wrapper.get(at('pieces')).setValue('4');
    await wrapper.get(at('kcal')).setValue('36');
    expect(form.values.diet[0]).toMatchObject({ gramsPerDay: null, kcalPer100g: null });
    await wrapper.get(at('grams')).setValue('8');
    expect(form.values.diet[0]).toMatchObject({ gramsPerDay: 32, kcalPer100g: 450 });
  });

  it('is asked of treats alone', () => {
    expect(
      mountDiet([food('Dry', 360, 200)])
        .wrapper.find('.pieces')
        .exists(),
    ).toBe(false);
  });
});

describe('a food that gives way to another', () => {
  /** The food part of a form in which the dry food is being replaced. */
  async function replacing() {
    const empty = newVisitForm(dogFile([]), '2026-03-02');
    const visit = { ...empty.visit, diet: [food('Dry', 360, 200), food('Wet', 100, 150)] };
    const Part = (props: { modelValue: typeof empty }) =>
      h(FoodSection, { visit: props.modelValue.visit, food: props.modelValue.food });
    Part.props = ['modelValue'];
    const { wrapper, form } = mountField(Part, { form: { ...empty, visit } }, 'form', {});
    await wrapper.get('button[aria-label="Replace by another food: Dry"]').trigger('click');
    await nextTick();
    expect(document.activeElement?.id).toBe('field-food-foodSwitch-name');
    return { wrapper, now: () => form.values.form.food };
  }

  it('goes by its name, also when that is typed anew', async () => {
    const { wrapper, now } = await replacing();
    await wrapper.get('#field-visit-diet-0-name').setValue('Dry food');
    expect(now()).toMatchObject({ switches: true, foodSwitch: { replaces: 'Dry food' } });
    expect(wrapper.find('[aria-label="Food in place of Dry food"]').exists()).toBe(true);
  });

  it('is no longer replaced once it is out of the table, nor once that is taken back', async () => {
    const first = await replacing();
    await first.wrapper.get('button[aria-label="Remove Dry"]').trigger('click');
    expect(first.now().switches).toBe(false);
    first.wrapper.unmount();
    const second = await replacing();
    const back = second.wrapper.findAll('button').find((one) => one.text() === 'Keep feeding Dry');
    await back!.trigger('click');
    expect(second.now().switches).toBe(false);
  });
});
