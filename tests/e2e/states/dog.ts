import type { Page } from 'playwright-core';
import { dogPage } from '../pages/dogPage.ts';
import { heading, openBramble, openDog, type Shot, type Walk } from './walk.ts';

/** A weighing that is kept, then amended without a reason, and removed. */
async function weighingStates(page: Page, shot: Shot): Promise<void> {
  await page.getByLabel('Body weight').fill('25.8');
  await page.getByRole('button', { name: 'Keep the weighing' }).click();
  await page
    .getByRole('button', { name: /^Amend the weighing/ })
    .first()
    .click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Body weight').fill('25.7');
  await dialog.getByRole('button', { name: 'Save the amendment' }).click();
  await dialog.locator('.problem, [role=alert]').first().waitFor();
  await shot('weighing-amend-refused');
  await dialog.getByRole('button', { name: 'Cancel' }).click();
  await page
    .getByRole('button', { name: /^Remove the weighing/ })
    .first()
    .click();
  await page.getByRole('button', { name: 'Undo' }).waitFor();
  await shot('weighing-removed');
}

/** The page of a dog with what hangs on it: charts, weighings, its form, heat, handouts. */
export const dogWalk: Walk = {
  name: 'dog',
  from: 'demonstration',
  async go(page, shot) {
    for (const dog of ['Tarn', 'Juno', 'Pip']) {
      await openDog(page, dog);
      await shot(`dog-${dog.toLowerCase()}`, { whole: true });
    }
    await openBramble(page);
    await shot('dog');
    await shot('dog-whole', { whole: true, same: true });
    const { timeline, weight } = dogPage(page);
    await timeline.getByRole('button', { name: /^Food/ }).click();
    await shot('dog-timeline-food', { at: timeline });
    await page.getByText('Sound wherever it was looked at').click();
    await shot('dog-lameness', { at: page.getByRole('region', { name: 'Lameness' }) });
    await weight.getByRole('button', { name: 'As a table' }).first().click();
    await weight.getByRole('columnheader', { name: 'Weight, kg' }).first().waitFor();
    await shot('dog-weight-table', { at: weight });
    await weight.getByRole('button', { name: 'As a table' }).first().click();
    await page.getByRole('button', { name: 'Add a weighing' }).click();
    await page.getByRole('button', { name: 'Keep the weighing' }).click();
    await page.locator('.problem').first().waitFor();
    await shot('weighing-refused', { at: page.getByRole('form', { name: /^Add a weighing/ }) });
    await weighingStates(page, shot);
    await page.getByRole('button', { name: /^Why/ }).first().click();
    await page.getByRole('dialog').waitFor();
    await shot('dog-why');
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'More', exact: true }).click();
    await page.getByRole('menu').waitFor();
    await shot('dog-menu');
    await page.keyboard.press('Escape');

    await page.getByRole('link', { name: 'Edit dog and owner' }).click();
    await heading(page, 'Edit Bramble');
    await shot('edit-dog', { whole: true });
    await page.getByLabel('Name of the dog').fill('');
    await page.getByRole('button', { name: /^Save/ }).click();
    await page.getByRole('alert').first().waitFor();
    await shot('edit-dog-refused');
    await openBramble(page);
    await page.getByRole('link', { name: 'Heat', exact: true }).click();
    await heading(page, 'Heat and Bramble');
    await page.getByLabel('Air temperature in the shade').fill('11');
    await page.getByRole('textbox', { name: 'Humidity' }).fill('70');
    await shot('heat');
    await shot('heat-whole', { whole: true, same: true });
    await page.getByRole('link', { name: 'Back to Bramble' }).click();
    await page.getByRole('link', { name: 'Handouts' }).click();
    await page.locator('.page-text span').first().waitFor({ state: 'attached' });
    await shot('handout');
    await page.getByRole('group', { name: 'Sheet' }).getByLabel('Assessment record').check();
    await page.getByRole('region', { name: 'Preview: Assessment record' }).waitFor();
    await page.locator('.page-text span').first().waitFor({ state: 'attached' });
    await shot('handout-record');
  },
};
