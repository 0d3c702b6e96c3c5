import { planPage } from '../pages/planPage.ts';
import { openBramble, type Walk } from './walk.ts';

/** The plan with results, review, edit by hand and versions. */
export const planWalk: Walk = {
  name: 'plan',
  from: 'demonstration',
  async go(page, shot) {
    const plan = planPage(page);
    await openBramble(page);
    await plan.open('Bramble');
    await shot('plan');
    await shot('plan-whole', { whole: true, same: true });
    const load = page.getByRole('figure', { name: /^Running, minutes a week/ });
    await load.getByRole('button', { name: 'As a table' }).click();
    await load.getByRole('table').first().waitFor();
    await shot('plan-load-table', { at: load });
    await plan.weeks.getByLabel('Calendar').check();
    await shot('plan-calendar', { at: plan.weeks });
    await plan.weeks.getByRole('button', { name: 'Edit by hand' }).click();
    await plan.editing
      .getByRole('button', { name: /^Change/ })
      .nth(2)
      .click();
    const form = plan.editing.getByRole('group', { name: /^Change/ });
    await form.getByLabel('Kind').selectOption({ label: 'Without a break' });
    await form.getByLabel('Run', { exact: true }).fill('999');
    await form.getByRole('button', { name: 'Set' }).click();
    await form.locator('.problem').first().waitFor();
    await shot('plan-session-refused', { at: form });
    await form.getByLabel('Run', { exact: true }).fill('40');
    await form.getByRole('button', { name: 'Set' }).click();
    await plan.editing.getByLabel('Keep it, because').first().waitFor();
    await shot('plan-edit', { at: plan.editing.getByLabel('Keep it, because').first() });
    await plan.editing.getByRole('button', { name: 'Save as a new version' }).click();
    await plan.editing.getByRole('alert').getByText('Not saved.').waitFor();
    await shot('plan-edit-refused', { at: plan.editing.getByRole('alert') });
    await plan.editing.getByRole('button', { name: 'Leave without saving' }).click();
    await plan.changeNewest();
    await plan.sessions.getByLabel('The next day').selectOption({ label: 'Stiff for over 24 h' });
    await shot('plan-result', { at: plan.sessions });
    await plan.keepResult();
    await plan.review.getByText('Back one step').waitFor();
    await shot('plan-review', { at: plan.review });
    await plan.takeOver(2);
    await plan.versions.getByText(/sessions differ/).click();
    await shot('plan-reviewed', { whole: true });
  },
};
