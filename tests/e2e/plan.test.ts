import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { deskPage } from './pages/deskPage.ts';
import { planPage } from './pages/planPage.ts';
import { welcomePage } from './pages/welcomePage.ts';
import { openDesk, type TestDesk } from './support/desk.ts';

// Sessions, review, edits and rules by hand, on the demonstration's Bramble, whose owner has told of
// every session but today's.
describe('a plan that goes on', () => {
  let desk: TestDesk;
  let page: Page;
  let complaints: readonly string[];

  beforeAll(async () => {
    desk = await openDesk();
    ({ page, complaints } = await desk.open({ reducedMotion: 'reduce' }));
    await welcomePage(page).openDemonstration();
    await deskPage(page).open('Bramble');
    await planPage(page).open('Bramble');
  });
  afterAll(() => desk?.close());

  it('takes a result by one key, and takes it back by another', async () => {
    const { sessions } = planPage(page);
    await sessions.getByRole('button', { name: /^Done/ }).first().focus();
    await page.keyboard.press('d');
    await sessions.getByText('every session so far has its result').waitFor();
    await page.keyboard.press('u');
    await sessions.getByRole('button', { name: /^Done/ }).first().waitFor();
  });

  it('goes back a step after stiffness of over a day', async () => {
    const plan = planPage(page);
    await plan.review.getByText('Go on as planned').waitFor();
    await plan.changeNewest();
    await plan.sessions.getByLabel('The next day').selectOption({ label: 'Stiff for over 24 h' });
    await plan.keepResult();
    // Stiffness over 24 h: back one step and 2 days off (soreness rules, human; M).
    await plan.review.getByText('Back one step').waitFor();
    expect(await plan.review.innerText()).toMatch(/evidence B/i);
  });

  it('keeps the review as a new version beside the old one, and shows what differs', async () => {
    const plan = planPage(page);
    await plan.takeOver(2);
    const goal = await plan.versions.getByText('Goal: ').innerText();
    const [before, after] = [...goal.matchAll(/(\d\d)\.(\d\d)\.(\d{4})/g)].map(
      ([, day, month, year]) => `${year}-${month}-${day}`,
    );
    expect(after! > before!).toBe(true);
    await plan.versions.getByText(/sessions differ/).click();
    await plan.versions.getByRole('table', { name: 'Run-minutes a week' }).waitFor();
    await plan.versions.getByText('All weeks of version 1').click();
    await plan.versions.getByRole('table', { name: 'Version 1, week by week' }).waitFor();
  });

  it('names the broken rule of an edit and asks for a reason', async () => {
    const plan = planPage(page);
    await plan.weeks.getByRole('button', { name: 'Edit by hand' }).click();
    await plan.editing
      .getByRole('button', { name: /^Change/ })
      .nth(3)
      .click();
    const form = plan.editing.getByRole('group', { name: /^Change/ });
    await form.getByLabel('Kind').selectOption({ label: 'Without a break' });
    await form.getByLabel('Run', { exact: true }).fill('40');
    await form.getByRole('button', { name: 'Set' }).click();
    await plan.editing
      .getByText(/run-minutes, .* at most/)
      .first()
      .waitFor();
    await plan.editing.getByRole('button', { name: 'Save as a new version' }).click();
    await plan.editing.getByRole('alert').getByText('Not saved.').waitFor();
  });

  it('can undo the edit', async () => {
    const { editing } = planPage(page);
    await editing.getByRole('button', { name: 'Undo the last change' }).click();
    await editing.getByText('Breaks a rule').first().waitFor({ state: 'detached' });
    await editing.getByText('Nothing is changed yet.').waitFor();
  });

  it('scales a whole week', async () => {
    const { editing } = planPage(page);
    const button = editing.getByRole('button', { name: /^Set the run-minutes of week/ }).nth(1);
    const week = /week (\d+)/.exec((await button.getAttribute('aria-label')) ?? '')?.[1];
    await button.click();
    await editing.getByLabel('Run-minutes of the week').fill('6');
    await page.keyboard.press('Enter');
    const part = editing.getByRole('region', { name: `Week ${week}`, exact: true });
    await part.getByText('by hand').first().waitFor();
    await editing.getByRole('button', { name: 'Undo the last change' }).click();
    await editing.getByText('Nothing is changed yet.').waitFor();
  });

  it('keeps an edit with the written reasons for what it breaks', async () => {
    const plan = planPage(page);
    await plan.editing
      .getByRole('button', { name: /^Change/ })
      .nth(3)
      .click();
    const form = plan.editing.getByRole('group', { name: /^Change/ });
    await form.getByLabel('Kind').selectOption({ label: 'Without a break' });
    await form.getByLabel('Run', { exact: true }).fill('40');
    await page.keyboard.press('Enter');
    await plan.editing.getByLabel('Keep it, because').first().waitFor();
    for (const reason of await plan.editing.getByLabel('Keep it, because').all()) {
      await reason.fill('Ran this far last summer.');
    }
    // As after a window that was closed by mistake: changes and reasons are back.
    await page.reload();
    await plan.editing.getByText(/Unsaved input of .* is back/).waitFor();
    await plan.editing.getByText('1 change. No rule is broken without a reason').waitFor();
    await plan.editing.getByRole('button', { name: 'Save as a new version' }).click();
    await page.getByRole('heading', { name: 'Version 3, in force' }).waitFor();
    const kept = plan.versions.getByText('Kept because: Ran this far last summer.');
    expect(await kept.count()).toBeGreaterThan(0);
  });

  it('shows the weeks on a calendar', async () => {
    const { weeks } = planPage(page);
    await weeks.getByLabel('Calendar').check();
    const table = weeks.getByRole('table', { name: /by calendar week/ });
    await table.getByText('today').waitFor();
  });

  it('stops at lameness, and says vet first', async () => {
    const plan = planPage(page);
    await plan.changeNewest();
    await plan.sessions.getByLabel('Lame').check();
    await plan.keepResult();
    await plan.review.getByText('Stop: the vet first').waitFor();
    await plan.takeOver(4);
    await page.getByText('Running is stopped.').first().waitFor();
  });

  it('follows a rule that the practice changed, and says so', async () => {
    const planned = async (): Promise<{ weeks: number; why: string }> => {
      await page.getByRole('link', { name: 'Desk', exact: true }).click();
      await deskPage(page).open('Bramble');
      await page.getByRole('link', { name: 'New follow-up' }).click();
      await page.getByLabel('Make a new version of the plan at this visit').check();
      const follows = await page
        .getByRole('region', { name: 'Running plan' })
        .getByText(/^\d+ weeks;/)
        .first()
        .innerText();
      const why = page.getByText('All weeks, and why').locator('..');
      await why.locator('summary').first().click();
      const reasons = await why.innerText();
      await page.getByRole('button', { name: 'Cancel' }).click();
      return { weeks: parseInt(follows, 10), why: reasons };
    };
    const before = await planned();
    await page.getByRole('link', { name: 'Settings' }).click();
    await page.getByRole('link', { name: 'Rules' }).click();
    const name = 'Weekly rise, unconditioned dog';
    await page.getByRole('button', { name: `Change: ${name}` }).click();
    await page.getByLabel('Value in this practice').fill('8');
    await page.getByRole('button', { name: 'Keep the change' }).click();
    await page
      .getByRole('alert')
      .getByText(/A reason is needed/)
      .waitFor();
    await page.getByLabel('Reason for the change').fill('Slower is what we have seen to last.');
    await page.getByRole('button', { name: 'Keep the change' }).click();
    await page.getByText('1 rule is changed.').waitFor();
    await page.getByText('Changed by this practice').waitFor();
    const after = await planned();
    expect(after.weeks).toBeGreaterThan(before.weeks);
    expect(after.why.replaceAll('\u00a0', ' ')).toContain('set by the practice; as published 20 %');
    expect(before.why).not.toContain('set by the practice');
    await page.getByRole('link', { name: 'Settings' }).click();
    await page.getByRole('link', { name: 'Rules' }).click();
    await page.getByRole('button', { name: `As published: ${name}` }).click();
    await page.getByText('All rules stand as published.').waitFor();
  });

  it('never breaks the content security policy or throws on the way', () => {
    expect(complaints).toEqual([]);
  });
});
