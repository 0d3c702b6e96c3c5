import type { VueWrapper } from '@vue/test-utils';
import { describe, expect, it } from 'vitest';
import { defineComponent, h, nextTick } from 'vue';
import { useForm, type Form } from '../../../renderer/composables/useForm.ts';
import { usePractice } from '../../../renderer/stores/practice.ts';
import DietTable from '../../../renderer/visits/DietTable.vue';
import { blankDietEntry, type DietEntry } from '../../../renderer/visits/visitForm.ts';
import { openOwn, type TestDesk } from '../../service/support/desk.ts';
import { deskClient, mountAtDesk, press, shows } from '../support/atDesk.ts';

const KEPT = [
  { name: 'Dry food, adult', kind: 'food', kcalPer100g: 360 },
  { name: 'Dry food, light', kind: 'food', kcalPer100g: 310 },
  { name: 'Dried liver', kind: 'treat', kcalPer100g: 340 },
] as const;

/** The food table of a visit in a practice that keeps two foods and a treat. */
async function foodTable(diet: DietEntry[], given?: TestDesk) {
  const desk = given ?? (await openOwn());
  for (const food of KEPT) await desk.ok('shelf/keepFood', { id: null, food });
  let form: Form<{ diet: DietEntry[] }> | undefined;
  const Frame = defineComponent(() => {
    form = useForm({ diet });
    const { values } = form;
    return () => h(DietTable, { modelValue: values.diet });
  });
  const { wrapper, notice } = await mountAtDesk(Frame, deskClient(desk));
  const status = await desk.ok('app/status', {});
  usePractice().take(status);
  await nextTick();
  return { desk, notice, table: wrapper, diet: form!.values.diet };
}
const nameOf = (table: VueWrapper, index = 0) => table.get(`#field-visit-diet-${index}-name`);
const offered = (table: VueWrapper) =>
  table.findAll('[role="option"]').map((line) =>
    line
      .text()
      .split(/\s{2,}|\n/)[0]!
      .trim(),
  );
const marked = (table: VueWrapper) =>
  table.findAll('[role="option"][aria-selected="true"]').map((line) => line.text());

describe('a food of the practice', () => {
  it('is offered by any part of its name, and taken with its energy by the arrow keys and Enter', async () => {
    const { table, diet } = await foodTable([{ ...blankDietEntry(false), gramsPerDay: 200 }]);
    const name = nameOf(table);
    expect(offered(table)).toEqual([]);
    await name.setValue('LIGHT');
    expect(offered(table).join()).toContain('Dry food, light');
    expect(offered(table)).toHaveLength(1);
    await name.trigger('keydown', { key: 'ArrowDown' });
    const line = table.get('[role="option"]');
    expect(name.attributes('aria-activedescendant')).toBe(line.attributes('id'));
    await name.trigger('keydown', { key: 'Enter' });
    expect(diet[0]).toMatchObject({ name: 'Dry food, light', kcalPer100g: 310, gramsPerDay: 200 });
    expect(offered(table)).toEqual([]);
    const energy = table.get('#field-visit-diet-0-kcalPer100g').element as HTMLInputElement;
    expect(energy.value).toBe('310');
  });

  it('is taken by pointer too, and takes what was said of another food away', async () => {
    const label = { proteinPct: 26, fatPct: 15, fibrePct: 3, moisturePct: 9, ashPct: 7 };
    const other: DietEntry = { ...blankDietEntry(false), name: '', kcalPer100g: 300, label };
    const { table, diet } = await foodTable([{ ...other, energyFrom: 'label', gramsPerCup: 90 }]);
    await nameOf(table).trigger('keydown', { key: 'ArrowDown' });
    expect(offered(table)).toHaveLength(2);
    await table.findAll('[role="option"]')[0]!.trigger('click');
    expect(diet[0]).toEqual({
      ...blankDietEntry(false),
      name: 'Dry food, adult',
      kcalPer100g: 360,
    });
  });

  it('takes the place of an energy that could not be read', async () => {
    const { table, diet } = await foodTable([blankDietEntry(false)]);
    const energy = table.get('#field-visit-diet-0-kcalPer100g');
    await energy.setValue('lots');
    await energy.trigger('blur');
    await nameOf(table).setValue('adult');
    await nameOf(table).trigger('keydown', { key: 'ArrowDown' });
    await nameOf(table).trigger('keydown', { key: 'Enter' });
    expect((energy.element as HTMLInputElement).value).toBe('360');
    expect(diet[0]!.kcalPer100g).toBe(360);
    expect(table.find('.problem').exists()).toBe(false);
  });

  it('is never taken by typing alone, nor by Enter while no line is marked', async () => {
    const { table, diet } = await foodTable([blankDietEntry(false)]);
    await nameOf(table).setValue('Dry food, adult');
    await nameOf(table).trigger('keydown', { key: 'Enter' });
    expect(diet[0]).toMatchObject({ name: 'Dry food, adult', kcalPer100g: null });
  });

  it('is left again by the arrow keys, and its list by Esc and by leaving the field', async () => {
    const { table } = await foodTable([blankDietEntry(false)]);
    const name = nameOf(table);
    await name.setValue('dry');
    for (const lines of [1, 1, 0]) {
      await name.trigger('keydown', { key: 'ArrowDown' });
      expect(marked(table)).toHaveLength(lines);
    }
    await name.trigger('keydown', { key: 'Escape' });
    expect(offered(table)).toEqual([]);
    await name.setValue('dr');
    expect(offered(table)).toHaveLength(2);
    await name.trigger('focusout');
    expect(offered(table)).toEqual([]);
  });

  it('is offered to a food, a treat to a treat', async () => {
    const { table } = await foodTable([blankDietEntry(true)]);
    await nameOf(table).setValue('dr');
    expect(offered(table).join()).toContain('Dried liver');
    expect(offered(table)).toHaveLength(1);
  });
});

describe('a food that is not kept', () => {
  const typed = { ...blankDietEntry(false), name: 'Wet food', kcalPer100g: 95 };

  it('is kept for the next dog by one button, which then goes', async () => {
    const { desk, table, notice } = await foodTable([typed]);
    await press(table, 'Keep for the next dog');
    await expect.poll(() => notice.text).toBe('Wet food is kept.');
    expect(table.text()).not.toContain('Keep for the next dog');
    const { shelf } = await desk.ok('app/status', {});
    expect(shelf.foods).toContainEqual(
      expect.objectContaining({ name: 'Wet food', kind: 'food', kcalPer100g: 95 }),
    );
  });

  it('gives the kept one of its name its new energy', async () => {
    const { desk, table } = await foodTable([
      { ...typed, name: 'dry food, ADULT', kcalPer100g: 352 },
    ]);
    await press(table, 'Keep for the next dog');
    await expect.poll(() => table.text()).not.toContain('Keep for the next dog');
    const { foods } = (await desk.ok('app/status', {})).shelf;
    expect(foods).toHaveLength(KEPT.length);
    expect(foods.find(({ name }) => name === 'dry food, ADULT')?.kcalPer100g).toBe(352);
  });

  it('cannot be kept before it has a name and an energy', async () => {
    const { table } = await foodTable([
      { ...typed, name: '  ' },
      { ...typed, kcalPer100g: null },
    ]);
    await shows(table, 'Add a food');
    expect(table.text()).not.toContain('Keep for the next dog');
  });
});
