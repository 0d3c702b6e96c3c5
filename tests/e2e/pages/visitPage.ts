import type { Locator, Page } from 'playwright-core';

export interface TypedFood {
  readonly name: string;
  readonly kcalPer100g: string;
  readonly gramsPerDay: string;
  readonly treat?: boolean;
}

/** Clicks an empty field and types, as a hand does: each letter is a key. */
async function type(field: Locator, text: string): Promise<void> {
  await field.click();
  await field.pressSequentially(text);
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
    await page.getByLabel('Sound at walk and trot').check();
  },
  /** Opens the line that says what is normal. */
  async open(line: 'Grade the limbs' | 'Tick signs' | 'Something is known'): Promise<void> {
    await page.getByRole('button', { name: line }).click();
  },
  /** Opens every line and fold that stands for more. */
  async openLines(): Promise<void> {
    for (const name of ['Grade the limbs', 'Tick signs', 'Something is known', /^Change /]) {
      const lines = page.getByRole('button', { name, expanded: false });
      for (let left = await lines.count(); left > 0; left--) await lines.first().click();
    }
  },
  /** Opens what stands behind the panel's lines. */
  async evidence(): Promise<void> {
    await page
      .getByRole('complementary', { name: 'What follows' })
      .getByText('Evidence')
      .first()
      .click();
  },
  async noSigns(): Promise<void> {
    await page.getByLabel('No warning signs').check();
  },
  async nothingKnown(): Promise<void> {
    await page.getByLabel('Nothing known').check();
  },
  async acceptBoth(): Promise<void> {
    await page.getByRole('button', { name: 'Accept plan and food' }).click();
  },
  async addFood(food: TypedFood, index: number): Promise<void> {
    const button = food.treat === true ? 'Add a treat' : 'Add a food';
    await page.getByRole('button', { name: button }).click();
    const line = page.getByRole('listitem').filter({ has: page.getByLabel('Amount a day') });
    const entry = line.nth(index);
    await entry.getByLabel(food.treat === true ? 'Treat' : 'Food', { exact: true }).fill(food.name);
    await entry.getByLabel('Energy', { exact: true }).fill(food.kcalPer100g);
    await entry.getByLabel('Amount a day').fill(food.gramsPerDay);
  },
  async acceptFood(): Promise<void> {
    await page
      .getByRole('group', { name: 'Your decision on the food' })
      .getByLabel('Accept')
      .check();
  },
  /** The least that makes a plan and a ration of a sound grown dog. */
  async smallestIntake(): Promise<void> {
    await type(page.getByLabel('Body weight'), '24');
    await this.score(5);
    await this.soundAtBothGaits();
    await this.noSigns();
    await this.nothingKnown();
    await page.getByRole('group', { name: 'Walk base' }).getByLabel('Passed').click();
    await page.getByRole('button', { name: 'Add a food' }).click();
    for (const text of ['Dry food', '360', '250']) {
      await page.keyboard.type(text);
      await page.keyboard.press('Tab');
    }
    await this.acceptFood();
  },
  /** A follow-up at which nothing is wrong. */
  async allWell(): Promise<void> {
    await type(page.getByLabel('Body weight'), '29.2');
    await this.score(5);
    await page.getByRole('button', { name: /^All done as planned/ }).click();
    await this.soundAtBothGaits();
    await this.noSigns();
    await this.acceptBoth();
  },
  /** A follow-up of a dog that came back lame from a run. */
  async badWeek(): Promise<void> {
    await type(page.getByLabel('Body weight'), '29.2');
    await this.score(5);
    const wrong = page.getByRole('button', { name: /^Something wrong/ });
    await wrong.first().click();
    await page.getByLabel('Lame', { exact: true }).click();
    await page.getByRole('button', { name: 'Keep', exact: true }).click();
    await page.getByRole('button', { name: /^All done as planned/ }).click();
    await this.open('Grade the limbs');
    const lame = page.getByRole('group', { name: 'Left hind at trot' });
    await lame.getByRole('radio', { name: /^grade 1/ }).click();
    await page.getByRole('button', { name: 'All others sound' }).click();
    await this.noSigns();
    await this.acceptBoth();
  },
  /** Findings that the screening answers with four reasons. */
  async fourReasons(): Promise<void> {
    await page.getByLabel('Body weight').fill('38');
    await this.score(9);
    await this.soundAtBothGaits();
    await this.open('Grade the limbs');
    const lame = page.getByRole('group', { name: 'Left hind at trot' });
    await lame.getByRole('radio', { name: /^grade 2/ }).check();
    await this.open('Tick signs');
    await page.getByLabel('Collapse').check();
    await page.getByLabel('Cough').check();
  },
  async acceptPlan(): Promise<void> {
    const plan = page.getByRole('group', { name: 'Your decision on the plan' });
    await plan.getByLabel('Accept').check();
  },
  async save(dog: string): Promise<void> {
    await page.getByRole('button', { name: 'Save visit' }).click();
    await page.getByRole('heading', { level: 1, name: dog, exact: true }).waitFor();
  },
});
