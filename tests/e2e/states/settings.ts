import { lead, type Walk } from './walk.ts';

/** Settings, people, rules and where the numbers come from. */
export const settingsWalk: Walk = {
  name: 'settings',
  from: 'demonstration',
  async go(page, shot) {
    await lead(page, '/settings', 'Settings');
    await shot('settings', { whole: true });
    await page.getByRole('button', { name: 'Add a food' }).click();
    await page.getByRole('button', { name: 'Keep the food' }).click();
    await page.locator('.problem').first().waitFor();
    await shot('foods-refused', { at: page.getByRole('form', { name: 'Food' }) });
    await page.getByRole('button', { name: 'Edit “Harness fitted; shoulder stays free.”' }).click();
    await shot('phrases', { at: page.getByRole('form', { name: 'Phrase' }) });
    await page.getByRole('button', { name: 'Add somebody' }).click();
    const people = page.getByRole('region', { name: 'People' });
    const form = people.getByRole('form', { name: 'Practitioner' });
    await form.getByLabel('Initials').fill('12345');
    await form.getByRole('button', { name: 'Add to the practice' }).click();
    await form.locator('.problem').first().waitFor();
    await shot('people-refused', { at: form });
    for (const [name, initials] of [
      ['Maren Vale', 'MV'],
      ['Toby Reed', 'TR'],
    ] as const) {
      await form.getByLabel('Name', { exact: true }).fill(name);
      await form.getByLabel('Initials').fill(initials);
      await form.getByRole('button', { name: 'Add to the practice' }).click();
      const row = people.getByRole('row').filter({ hasText: initials });
      await row.waitFor();
      if (initials === 'MV') await page.getByRole('button', { name: 'Add somebody' }).click();
    }
    await page.getByLabel('At the desk').selectOption({ label: 'Toby Reed (TR)' });
    await people.getByRole('row').filter({ hasText: 'TR' }).getByText('at the desk').waitFor();
    await shot('people', { at: people.getByRole('row').filter({ hasText: 'TR' }) });
    await page.getByLabel('Accent colour').fill('greenish');
    await page.getByRole('button', { name: 'Save settings' }).click();
    await page.getByRole('alert').first().waitFor();
    await shot('settings-refused');

    await lead(page, '/settings/rules', 'Rules');
    await shot('rules');
    await page.getByRole('button', { name: 'Change: Weekly rise, unconditioned dog' }).click();
    await page.getByLabel('Value in this practice').fill('80');
    await page.getByRole('button', { name: 'Keep the change' }).click();
    await page.locator('.problem').first().waitFor();
    await shot('rules-refused', { at: page.getByLabel('Value in this practice') });
    await page.getByLabel('Value in this practice').fill('8');
    await page.getByLabel('Reason for the change').fill('Slower is what we have seen to last.');
    await page.getByRole('button', { name: 'Keep the change' }).click();
    await page.getByText('1 rule is changed.').waitFor();
    await shot('rules-changed');
    await shot('rules-whole', { whole: true, same: true });
    await lead(page, '/rules/capUnconditioned', 'Weekly rise, unconditioned dog');
    await shot('rule', { whole: true });
    await page.getByRole('link', { name: 'Change it' }).click();
    await page.locator('.asked').waitFor();
    await shot('rule-asked');
    await lead(page, '/year', 'The practice’s year');
    await page.locator('.drawing.drawn').first().waitFor();
    await shot('year');
    await shot('year-whole', { whole: true, same: true });
    await lead(page, '/science', 'About the science');
    await shot('science');
    await shot('science-whole', { whole: true, same: true });
  },
};
