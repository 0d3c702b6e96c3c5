import type { VueWrapper } from '@vue/test-utils';
import { describe, expect, it } from 'vitest';
import type { Component } from 'vue';
import FoodsPart from '../../../renderer/settings/FoodsPart.vue';
import PhrasesPart from '../../../renderer/settings/PhrasesPart.vue';
import { openOwn } from '../../service/support/desk.ts';
import { comesTrue, deskClient, mountAtDesk, press, shows } from '../support/atDesk.ts';

async function partOf(component: Component) {
  const desk = await openOwn();
  const { wrapper, notice } = await mountAtDesk(component, deskClient(desk));
  const kept = async () => (await desk.ok('app/status', {})).shelf;
  return { part: wrapper, notice, kept };
}
const food = (part: VueWrapper, name: string) => part.get(`#field-own-food-food-${name}`);

describe('the foods in the settings', () => {
  it('are added, changed and removed, and a removed one comes back', async () => {
    const { part, notice, kept } = await partOf(FoodsPart);
    await press(part, 'Add a food');
    expect(document.activeElement).toBe(food(part, 'name').element);
    await food(part, 'name').setValue('Dry food');
    await food(part, 'kcalPer100g').setValue('1500 kJ');
    await part.get('form').trigger('submit');
    await shows(part, 'Add a food');
    expect(notice.text).toBe('Dry food is kept.');
    expect(document.activeElement?.textContent).toBe('Add a food');

    await press(part, 'Edit Dry food');
    await food(part, 'name').setValue('Dry food, adult');
    await food(part, 'kcalPer100g').setValue('352');
    await press(part, 'Save changes');
    await shows(part, 'Dry food, adult');
    const [changed] = (await kept()).foods;
    expect(changed).toMatchObject({ name: 'Dry food, adult', kind: 'food', kcalPer100g: 352 });

    await press(part, 'Remove Dry food, adult');
    await comesTrue(async () => expect((await kept()).foods).toEqual([]));
    expect(part.find('table').exists()).toBe(false);
    await notice.action!.run();
    expect((await kept()).foods).toEqual([changed]);
    await shows(part, 'Dry food, adult');
  });

  it('need a name and an energy, said beside the field', async () => {
    const { part, kept } = await partOf(FoodsPart);
    await press(part, 'Add a food');
    await part.get('form').trigger('submit');
    await shows(part, 'Name of the food is needed.');
    await shows(part, 'Energy of the food must be from 5 to 950');
    await press(part, 'Cancel');
    expect(part.find('form').exists()).toBe(false);
    expect((await kept()).foods).toEqual([]);
  });
});

describe('the phrases in the settings', () => {
  it('are added, changed and removed', async () => {
    const { part, notice, kept } = await partOf(PhrasesPart);
    const text = () => part.get('#field-own-phrase-text');
    await press(part, 'Add a phrase');
    await text().setValue('Lead walks only.');
    await part.get('form').trigger('submit');
    await shows(part, 'Lead walks only.');
    await press(part, 'Edit “Lead walks only.”');
    await text().setValue('Walks on the lead only.');
    await press(part, 'Save changes');
    await shows(part, 'Walks on the lead only.');
    expect((await kept()).phrases).toMatchObject([{ text: 'Walks on the lead only.' }]);
    await press(part, 'Remove “Walks on the lead only.”');
    await comesTrue(async () => expect((await kept()).phrases).toEqual([]));
    expect(notice.text).toContain('is removed');
  });

  it('are not kept twice', async () => {
    const { part } = await partOf(PhrasesPart);
    for (let time = 0; time < 2; time += 1) {
      await press(part, 'Add a phrase');
      await part.get('#field-own-phrase-text').setValue('Lead walks only.');
      await part.get('form').trigger('submit');
      await shows(part, time === 0 ? 'Add a phrase' : 'This phrase is kept already.');
    }
  });
});
