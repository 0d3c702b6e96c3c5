import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { deskPage } from './pages/deskPage.ts';
import { visitPage } from './pages/visitPage.ts';
import type { TestDesk } from './support/desk.ts';
import { deskWithDog } from './support/ownPractice.ts';

describe('unsaved input', () => {
  let desk: TestDesk;

  beforeAll(async () => {
    desk = await deskWithDog('Ash');
  });
  afterAll(() => desk?.close());

  async function openIntake() {
    const { page } = await desk.open();
    await deskPage(page).open('Ash');
    await page.getByRole('link', { name: 'Start the intake' }).click();
    await page.getByRole('heading', { level: 1, name: 'Intake of Ash' }).waitFor();
    return page;
  }

  it('survives closing the window, as it was typed', async () => {
    const first = await openIntake();
    const kept = first.waitForResponse((response) => response.url().endsWith('/call/drafts/put'));
    await visitPage(first).weight.fill('51 lb');
    await kept;
    await first.context().close();

    const second = await openIntake();
    await second.getByText(/Unsaved input of .* is back/).waitFor();
    expect(await visitPage(second).weight.inputValue()).toBe('51 lb');
    await second.context().close();
  });

  it('survives leaving the page for another', async () => {
    const page = await openIntake();
    await page.getByLabel('Diagnosis').fill('Short behind');
    await page.getByRole('link', { name: 'Desk' }).click();
    await deskPage(page).open('Ash');
    await page.getByRole('link', { name: 'Start the intake' }).click();
    await page.getByText(/Unsaved input of .* is back/).waitFor();
    expect(await page.getByLabel('Diagnosis').inputValue()).toBe('Short behind');
    await page.context().close();
  });

  it('goes when it is done without, and stays gone', async () => {
    const page = await openIntake();
    await page.getByRole('button', { name: 'Do without it' }).click();
    expect(await visitPage(page).weight.inputValue()).toBe('');
    await page.reload();
    await page.getByRole('heading', { level: 1, name: 'Intake of Ash' }).waitFor();
    expect(
      await page
        .getByText(/Unsaved input/)
        .filter({ hasText: 'is back' })
        .count(),
    ).toBe(0);
    await page.context().close();
  });

  it('is dropped after a save', async () => {
    const page = await openIntake();
    await visitPage(page).weight.fill('23');
    await visitPage(page).save('Ash');
    await page.getByRole('link', { name: 'New follow-up' }).click();
    await page.getByRole('heading', { level: 1, name: 'Follow-up of Ash' }).waitFor();
    expect(await visitPage(page).weight.inputValue()).toBe('');
    expect(await page.getByText('is back').count()).toBe(0);
    await page.context().close();
  });
});
