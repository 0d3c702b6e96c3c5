import type { Page } from 'playwright-core';

export interface TypedFood {
  readonly name: string;
  readonly kcalPer100g: string;
  readonly gramsPerDay: string;
  readonly treat?: boolean;
}

/** The form of intake and follow-up, worked as a practitioner works it. */
export const visitPage = (page: Page) => ({
  weight: page.getByLabel('Body weight'),
  follows: page.getByRole('complementary', { name: 'What follows' }),

  async score(bcs: number): Promise<void> {
    const group = page.getByRole('group', { name: 'Body condition score' });
    await group.getByRole('radio', { name: `${bcs} of 9` }).check();
  },
  async soundAtBothGaits(): Promise<void> {
    await page.getByRole('button', { name: 'sound at walk' }).click();
    await page.getByRole('button', { name: 'sound at trot' }).click();
  },
  async addFood(food: TypedFood, index: number): Promise<void> {
    const button = food.treat === true ? 'Add a treat' : 'Add a food';
    await page.getByRole('button', { name: button }).click();
    const line = page.getByRole('listitem').filter({ has: page.getByLabel('Amount a day') });
    const entry = line.nth(index);
    await entry.getByLabel(food.treat === true ? 'Treat' : 'Food', { exact: true }).fill(food.name);
    await entry.getByLabel('Energy').fill(food.kcalPer100g);
    await entry.getByLabel('Amount a day').fill(food.gramsPerDay);
  },
  async acceptFood(): Promise<void> {
    await page
      .getByRole('group', { name: 'Your decision on the food' })
      .getByLabel('Accept')
      .check();
  },
  async save(dog: string): Promise<void> {
    await page.getByRole('button', { name: 'Save visit' }).click();
    await page.getByRole('heading', { level: 1, name: dog, exact: true }).waitFor();
  },
});
