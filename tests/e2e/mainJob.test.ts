import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addDays, addMonths } from '../../core/day.ts';

import { deskPage } from './pages/deskPage.ts';
import { dogFormPage } from './pages/dogFormPage.ts';
import { dogPage } from './pages/dogPage.ts';
import { handoutsPage } from './pages/handoutsPage.ts';
import { settingsPage } from './pages/settingsPage.ts';
import { visitPage } from './pages/visitPage.ts';
import { welcomePage } from './pages/welcomePage.ts';
import { openDesk, type TestDesk } from './support/desk.ts';
import { pdfText } from './support/pdfText.ts';

// The main job as a practitioner does it, on a fresh machine: real host, real database, real PDFs.
describe('the main job by hand', () => {
  let desk: TestDesk;
  let page: Page;
  let complaints: readonly string[];
  let today: string;

  beforeAll(async () => {
    desk = await openDesk();
    ({ page, complaints } = await desk.open());
    await page.getByRole('heading', { level: 1, name: 'Welcome to Trotwell' }).waitFor();
    today = await page.evaluate(() => {
      const now = new Date();
      const two = (n: number) => String(n).padStart(2, '0');
      return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
    });
  }, 60_000);

  afterAll(() => desk?.close());

  it('takes the start code out of the address', () => {
    expect(page.url()).not.toContain('start=');
  });

  it('starts empty and asks for the practice', async () => {
    await welcomePage(page).startEmpty();
    await settingsPage(page).fill({
      'Name of the practice': 'Mill Brook Canine Fitness',
      'Name of the practitioner': 'Kim Practitioner',
    });
    await settingsPage(page).save();
  });

  it('adds a dog and its owner', async () => {
    await deskPage(page).add('Rusk');
    expect(await page.getByLabel('Name of the dog').inputValue()).toBe('Rusk');
    await dogFormPage(page).fill({
      birthDay: addMonths(today, -48),
      sex: 'Male',
      adultWeight: '24',
      owner: 'Dana Owner',
      vet: 'Dr C. Vet',
    });
    await dogFormPage(page).save('Rusk');
  });

  it('assesses the dog, with computations beside the form', async () => {
    await page.getByRole('link', { name: 'Start the intake' }).click();
    const visit = visitPage(page);
    await page.getByRole('button', { name: 'Change day and kind of visit' }).click();
    await page.getByLabel('Day of the visit').fill(addDays(today, -42));
    await page.getByRole('group', { name: 'Walk base' }).getByLabel('Passed').check();
    await page.getByLabel('The treating vet has referred or consented').check();
    // The vet of the owner's record.
    const vet = page.getByRole('textbox', { name: 'Vet', exact: true });
    expect(await vet.inputValue()).toBe('Dr C. Vet');
    await visit.weight.fill('62 lb');
    // International pound: 62 lb = 28.12 kg (S).
    await page.getByText('= 28.12 kg').waitFor();
    await visit.score(7);
    await page.getByRole('group', { name: 'Aim of feeding' }).getByLabel('Lose weight').check();
    await page.getByLabel('Target weight').fill('23,5');
    await visit.soundAtBothGaits();
    await visit.noSigns();
    await visit.nothingKnown();
    await visit.addFood({ name: 'Dry food', kcalPer100g: '360', gramsPerDay: '300' }, 0);
    await visit.addFood({ name: 'Biscuit', kcalPer100g: '400', gramsPerDay: '20', treat: true }, 1);
    // RER = 70 × kg^0.75 (Hand et al. 2010, Table 5-2; S): 28.12 kg → 854.8 kcal.
    await visit.follows.getByText('Ready to start').waitFor();
    await visit.evidence();
    await visit.follows.getByText('855').waitFor();
  });

  it('explains a number on request, by keyboard', async () => {
    const why = visitPage(page).follows.getByRole('button', { name: /^Why 855/ });
    await why.focus();
    await page.keyboard.press('Enter');
    const sheet = page.getByRole('dialog', { name: 'Resting energy requirement' });
    await sheet.getByText('70 × kg to the power 0.75').waitFor();
    await sheet.getByText(/Small Animal Clinical Nutrition/).waitFor();
    await page.keyboard.press('Escape');
    await sheet.waitFor({ state: 'detached' });
  });

  it('keeps unsaved input over a reload', async () => {
    await page.getByLabel('Notes on the visit').fill('Pulls to the left on the lead.');
    await page.reload();
    await page.getByText(/Unsaved input of .* is back/).waitFor();
    expect(await page.getByLabel('Notes on the visit').inputValue()).toContain('Pulls to the left');
    expect(await visitPage(page).weight.inputValue()).toBe('62 lb');
    expect(await page.getByLabel('Amount a day').first().inputValue()).toBe('300');
  });

  it('keeps everything when saving fails, and says what happened', async () => {
    await page.route('**/call/visits/save', (route) => route.abort());
    await page.getByRole('button', { name: 'Save visit' }).click();
    await page
      .getByRole('alert')
      .getByText(/does not answer/)
      .waitFor();
    expect(await visitPage(page).weight.inputValue()).toBe('62 lb');
    await page.unroute('**/call/visits/save');
  });

  it('names the field that is not acceptable, and leads to it', async () => {
    await visitPage(page).weight.fill('620 lb');
    await page.getByRole('button', { name: 'Save visit' }).click();
    const problem = page
      .getByRole('alert')
      .getByRole('button', { name: /Body weight must be from/ });
    await problem.click();
    expect(await visitPage(page).weight.evaluate((field) => field === document.activeElement)).toBe(
      true,
    );
    await visitPage(page).weight.fill('62 lb');
  });

  it('saves the intake with its plan and its food', async () => {
    await visitPage(page).acceptFood();
    await visitPage(page).save('Rusk');
    await page.getByText('The visit of Rusk is saved.').waitFor();
    // Six weeks ago, and no outing told since: the walk base comes first again.
    await page.getByText('The plan waits: the walk base').waitFor();
  });

  it('prints the running plan', async () => {
    await page.getByRole('link', { name: 'Handouts' }).click();
    const handouts = handoutsPage(page);
    await handouts.choose('Running plan');
    expect(await handouts.previewText()).toContain('Rusk');
    const text = pdfText(await handouts.savePdf());
    expect(text).toContain('Mill Brook Canine Fitness');
    expect(text).toContain('Running plan for Rusk');
  });

  it('follows up: the dog has not lost weight in six weeks, so the food goes down', async () => {
    await page.getByRole('link', { name: 'Back to Rusk' }).click();
    // A loss plan starts at RER of the target weight, 70 × 23.5^0.75 (Hand et al. 2010, p. 532; S).
    expect(await dogPage(page).kcalPerDay()).toBe(747);
    await page.getByRole('link', { name: 'New follow-up' }).click();
    const visit = visitPage(page);
    await visit.weight.fill('28.4');
    await visit.score(7);
    await visit.soundAtBothGaits();
    await visit.follows.getByText('a new ration').waitFor();
    await visit.acceptFood();
    await visit.save('Rusk');
    expect(await dogPage(page).visits.count()).toBe(2);
    // A step is 5 to 20 % of the ration (from memory; M).
    const after = await dogPage(page).kcalPerDay();
    expect(after).toBeLessThanOrEqual(747 * 0.95 + 1);
    expect(after).toBeGreaterThanOrEqual(747 * 0.8 - 1);
  });

  it('prints the new food', async () => {
    const kcal = await dogPage(page).kcalPerDay();
    await page.getByRole('link', { name: 'Handouts' }).click();
    const handouts = handoutsPage(page);
    await handouts.choose('Feeding sheet');
    await handouts.previewText();
    const text = pdfText(await handouts.savePdf());
    expect(text).toContain('Rusk');
    expect(text).toContain('Dry food');
    expect(text).toContain(`${kcal} kcal`);
  });

  it('finds the dog again from the desk', async () => {
    await page
      .getByRole('navigation', { name: 'Main' })
      .getByRole('link', { name: 'Desk' })
      .click();
    await deskPage(page).box.fill('dana');
    await page.getByText('1 dog found').waitFor();
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: 'Rusk' }).waitFor();
  });

  it('never breaks the content security policy or throws on the way', () => {
    const ours = complaints.filter((line) => !line.includes('net::ERR_FAILED'));
    expect(ours).toEqual([]);
  });
});
