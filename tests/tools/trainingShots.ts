// Pictures of plan, heat, gait and rules in their states; part of `npm run screenshots`.
import type { Page } from 'playwright-core';
import { planPage } from '../e2e/pages/planPage.ts';

export type Shot = (name: string, options?: { readonly whole?: boolean }) => Promise<void>;

/** From the dog's page and back to it: the plan with results, review, edit and versions. */
export async function planStates(page: Page, shot: Shot): Promise<void> {
  const plan = planPage(page);
  await plan.open('Bramble');
  await shot('plan');
  await shot('plan-whole', { whole: true });
  await plan.weeks.getByLabel('Calendar').check();
  await plan.weeks.scrollIntoViewIfNeeded();
  await shot('plan-calendar');
  await plan.weeks.getByRole('button', { name: 'Edit by hand' }).click();
  await plan.editing
    .getByRole('button', { name: /^Change/ })
    .nth(2)
    .click();
  const form = plan.editing.getByRole('group', { name: /^Change/ });
  await form.getByLabel('Kind').selectOption({ label: 'Without a break' });
  await form.getByLabel('Run', { exact: true }).fill('40');
  await page.keyboard.press('Enter');
  await plan.editing.getByLabel('Keep it, because').first().scrollIntoViewIfNeeded();
  await shot('plan-edit');
  await plan.editing.getByRole('button', { name: 'Leave without saving' }).click();
  await plan.changeNewest();
  await plan.sessions.getByLabel('The next day').selectOption({ label: 'Stiff for over 24 h' });
  await shot('plan-result');
  await plan.keepResult();
  await plan.review.getByText('Back one step').waitFor();
  await plan.takeOver(2);
  await plan.versions.getByText(/sessions differ/).click();
  await shot('plan-reviewed', { whole: true });
  await page.getByRole('link', { name: 'Back to Bramble' }).click();
}

/** From the dog's page and back to it. */
export async function heatStates(page: Page, shot: Shot): Promise<void> {
  await page.getByRole('link', { name: 'Heat', exact: true }).click();
  await page.getByRole('heading', { level: 1, name: 'Heat and Bramble' }).waitFor();
  await page.getByLabel('Air temperature in the shade').fill('11');
  await page.getByRole('textbox', { name: 'Humidity' }).fill('70');
  await shot('heat');
  await shot('heat-whole', { whole: true });
  await page.getByRole('link', { name: 'Back to Bramble' }).click();
}

/** In the visit form: measurements and tapped footfalls. */
export async function gaitStates(page: Page, shot: Shot): Promise<void> {
  await page.locator('summary', { hasText: 'Measurements' }).click();
  for (const [label, value] of [
    ['Stifle flexion, left hind', '50'],
    ['Stifle flexion, right hind', '41'],
    ['Thigh girth, left hind', '36.5'],
    ['Thigh girth, right hind', '38'],
  ] as const) {
    await page.getByLabel(label, { exact: true }).fill(value);
  }
  await page.getByLabel('Stifle flexion, left hind', { exact: true }).scrollIntoViewIfNeeded();
  await shot('visit-measurements');
  await page.locator('summary', { hasText: 'Footfall timing' }).click();
  const pad = page.getByRole('group', { name: /^Tap the footfalls/ });
  await pad.focus();
  for (let stride = 0; stride < 6; stride++) {
    for (const pair of [
      ['s', 'k'],
      ['l', 'd'],
    ]) {
      for (const key of pair) await page.keyboard.down(key);
      await page.waitForTimeout(120);
      for (const key of pair) await page.keyboard.up(key);
      await page.waitForTimeout(60);
    }
  }
  await pad.scrollIntoViewIfNeeded();
  await shot('visit-footfalls');
}

export async function rulesStates(page: Page, shot: Shot): Promise<void> {
  await page.getByRole('link', { name: 'Settings' }).click();
  await page.getByRole('link', { name: 'Rules' }).click();
  await page.getByRole('heading', { level: 1, name: 'Rules' }).waitFor();
  await shot('rules');
  await page.getByRole('button', { name: 'Change: Weekly rise, unconditioned dog' }).click();
  await page.getByLabel('Value in this practice').fill('8');
  await page.getByLabel('Reason for the change').fill('Slower is what we have seen to last.');
  await shot('rules-change');
  await page.getByRole('button', { name: 'Keep the change' }).click();
  await page.getByText('1 rule is changed.').waitFor();
  await shot('rules-changed');
}
