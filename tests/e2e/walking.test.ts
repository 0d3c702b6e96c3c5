import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addDays } from '../../core/day.ts';
import { deskPage } from './pages/deskPage.ts';
import { visitPage } from './pages/visitPage.ts';
import type { TestDesk } from './support/desk.ts';
import { deskWithDog } from './support/ownPractice.ts';

// A dog that may only walk goes home with brisk walks, and comes back for its first run.
describe('a dog that may only walk', () => {
  let desk: TestDesk;

  beforeAll(async () => {
    desk = await deskWithDog('Ash');
  });
  afterAll(() => desk?.close());

  it('is offered a walking programme, told of it on its page, and runs once the walk base is walked', async () => {
    const { page, complaints } = await desk.open();
    await deskPage(page).open('Ash');
    await page.getByRole('link', { name: 'Start the intake' }).click();
    const visit = visitPage(page);
    await visit.smallestIntake();
    await page.getByRole('button', { name: /^Change day and kind/ }).click();
    const day = await page.getByLabel('Day of the visit').inputValue();
    await page.getByLabel('Day of the visit').fill(addDays(day, -12));
    const walks = page.getByRole('radio', { name: 'Brisk walks, up to the walk base' });
    expect(await walks.count()).toBe(0);
    await page.getByRole('group', { name: 'Walk base' }).getByLabel('Failed').click();
    await visit.follows.getByText('Walking only').waitFor();
    expect(await walks.isChecked()).toBe(true);
    await page.getByLabel('Walks briskly today').fill('25');
    await page
      .getByText(/^2 weeks; two brisk walks of 30\smin in a week first on/)
      .first()
      .waitFor();
    await visit.save('Ash');
    await page.getByText(/should only walk for now.*of the walking programme\./).waitFor();
    await page.getByText(/(Next|First) outing[^:]*: 30\smin brisk walk/).waitFor();

    await page.getByRole('link', { name: 'New follow-up' }).click();
    await page.getByRole('button', { name: /^All done as planned/ }).click();
    await page.getByText(/They are the walk\s+base\./).waitFor();
    await visit.soundAtBothGaits();
    await visit.noSigns();
    await page.getByRole('button', { name: 'Take it as passed' }).click();
    await page.getByLabel('Make a new version of the plan at this visit').check();
    // Nothing stands against running: what the plan trains is not asked any more.
    await page.getByLabel('Running without a break').waitFor();
    expect(await walks.count()).toBe(0);
    expect(complaints).toEqual([]);
    await page.context().close();
  });
});
