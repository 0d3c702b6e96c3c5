import type { Page } from 'playwright-core';
import { visitPage } from '../pages/visitPage.ts';
import { heading, openDog, type Shot } from './walk.ts';

/** A follow-up while a plan runs: sessions, both proposals with each answer, the sheets printed. */
export async function followUpStates(page: Page, shot: Shot): Promise<void> {
  await openDog(page, 'Juno');
  await page.getByRole('link', { name: 'New follow-up' }).click();
  await heading(page, 'Follow-up of Juno');
  const part = (name: string) => page.getByRole('heading', { level: 2, name, exact: true });
  const visit = visitPage(page);
  const sessions = part('Sessions since the last visit');
  await shot('follow-up-not-seen', { at: part('Decisions') });
  await visit.weight.fill('29.2');
  await visit.score(5);
  await visit.soundAtBothGaits();
  await page
    .getByRole('button', { name: /^Something wrong/ })
    .first()
    .click();
  await shot('follow-up-session-more', { at: sessions });
  await page.getByRole('button', { name: 'Close', exact: true }).click();
  await page.getByRole('button', { name: /^All done as planned/ }).click();
  await shot('follow-up-sessions-told', { at: sessions });

  const plan = page.getByRole('group', { name: 'Your decision on the plan' });
  await plan.getByLabel('Decline').check();
  await page.getByRole('button', { name: 'Save visit' }).click();
  await page.getByRole('alert').first().waitFor();
  await shot('follow-up-declined', { at: part('Decisions') });
  await plan.getByLabel('Edit').check();
  await page
    .getByRole('button', { name: /^Set the run-minutes/ })
    .first()
    .click();
  await page.getByLabel('Run-minutes of the week').fill('60');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Set', exact: true }).click();
  await page.getByText('Breaks a rule').first().waitFor();
  await shot('follow-up-edited', { at: page.getByLabel('Keep it, because').first() });
  await visit.acceptFood();
  await plan.getByLabel('Accept').check();
  await shot('follow-up-accepted', { at: part('Decisions') });
  await page.getByRole('button', { name: 'Save and print the sheets' }).click();
  await page.getByText(/^The sheets, /).waitFor();
  await shot('follow-up-printed');
}
