import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { deskPage } from './pages/deskPage.ts';
import { dogPage } from './pages/dogPage.ts';
import { visitPage } from './pages/visitPage.ts';
import { openDesk, type TestDesk } from './support/desk.ts';
import { startPracticeWith } from './support/ownPractice.ts';

describe('a saved visit', () => {
  let desk: TestDesk;

  beforeAll(async () => {
    desk = await openDesk();
    const { page } = await desk.open();
    await startPracticeWith(page, 'Ash');
    await page.getByRole('link', { name: 'Start the intake' }).click();
    await visitPage(page).weight.fill('23');
    await visitPage(page).save('Ash');
    await page.context().close();
  });
  afterAll(() => desk?.close());

  async function openVisit(): Promise<Page> {
    const { page } = await desk.open();
    await deskPage(page).open('Ash');
    await dogPage(page).amendVisit(/open this intake/);
    return page;
  }
  const saveOf = (page: Page) => page.getByRole('button', { name: 'Save amendment' });
  const reasonOf = (page: Page) => page.getByLabel('Reason for the amendment');
  const historyOf = (page: Page) => page.getByRole('region', { name: 'History of this visit' });

  it('is amended with a reason, and its history says what changed and why', async () => {
    const page = await openVisit();
    await page.getByText('Nothing is changed yet.').waitFor();
    await visitPage(page).weight.fill('24');
    await page.getByText('1 field changed.').waitFor();
    await saveOf(page).click();
    await page.getByRole('button', { name: /Reason for the amendment is needed/ }).waitFor();

    await reasonOf(page).fill('Read off wrongly.');
    await saveOf(page).click();
    await page.getByRole('heading', { level: 1, name: 'Ash', exact: true }).waitFor();
    await page.getByRole('link', { name: /open this intake/ }).click();
    const history = historyOf(page);
    await history.getByText('Reason: Read off wrongly.').waitFor();
    const row = history.getByRole('row').filter({ hasText: 'Body weight' });
    expect(await row.innerText()).toMatch(/23\.0\skg\s+24\.0\skg/);
    await page.context().close();
  });

  it('changed in another window is not written over unseen', async () => {
    const mine = await openVisit();
    const theirs = await openVisit();
    await visitPage(mine).weight.fill('25');
    await reasonOf(mine).fill('Mine.');
    await visitPage(theirs).weight.fill('26');
    await reasonOf(theirs).fill('Theirs.');
    await saveOf(theirs).click();
    await theirs.getByRole('heading', { level: 1, name: 'Ash', exact: true }).waitFor();

    await saveOf(mine).click();
    await mine.getByText(/was changed.*after you opened it/).waitFor();
    expect(await visitPage(mine).weight.inputValue()).toBe('25');
    await mine.getByRole('button', { name: 'Show what is stored now' }).click();
    const stored = mine.getByRole('alert').getByRole('row').filter({ hasText: 'Body weight' });
    expect(await stored.innerText()).toMatch(/26\.0\skg\s+25\.0\skg/);

    await mine.getByRole('button', { name: 'Save mine over it' }).click();
    await mine.getByRole('heading', { level: 1, name: 'Ash', exact: true }).waitFor();
    await mine.getByRole('link', { name: /open this intake/ }).click();
    await historyOf(mine).getByText('Reason: Mine.').waitFor();
    expect(
      await historyOf(mine)
        .getByText(/^Reason:/)
        .allInnerTexts(),
    ).toEqual(['Reason: Read off wrongly.', 'Reason: Theirs.', 'Reason: Mine.']);
    await mine.context().close();
    await theirs.context().close();
  });

  it('carries the initials of who is at the desk, once there are two', async () => {
    const { page } = await desk.open();
    await page.getByRole('link', { name: 'Settings' }).click();
    const people = page.getByRole('region', { name: 'People' });
    for (const [name, initials] of [
      ['Maren Vale', 'MV'],
      ['Toby Reed', 'TR'],
    ] as const) {
      expect(await page.getByLabel('At the desk').count()).toBe(0);
      await page.getByRole('button', { name: 'Add somebody' }).click();
      const form = page.getByRole('form', { name: 'Practitioner' });
      await form.getByLabel('Name', { exact: true }).fill(name);
      await form.getByLabel('Initials').fill(initials);
      await form.getByRole('button', { name: 'Add to the practice' }).click();
      await people.getByRole('row').filter({ hasText: initials }).waitFor();
    }
    await page.getByLabel('At the desk').selectOption({ label: 'Toby Reed (TR)' });
    await people.getByRole('row').filter({ hasText: 'TR' }).getByText('at the desk').waitFor();
    await page.context().close();

    const visit = await openVisit();
    await visitPage(visit).weight.fill('22');
    await reasonOf(visit).fill('Signed.');
    await saveOf(visit).click();
    await visit.getByRole('heading', { level: 1, name: 'Ash', exact: true }).waitFor();
    await visit.getByRole('link', { name: /open this intake/ }).click();
    const last = historyOf(visit).getByRole('heading', { level: 3 }).last();
    expect(await last.innerText()).toMatch(/^Amended on .* by TR$/);
    await visit.context().close();
  });
});
