import { TOUR_STEPS } from '../../../renderer/tour/steps.ts';
import { deskPage } from '../pages/deskPage.ts';
import { dogFormPage } from '../pages/dogFormPage.ts';
import { settingsPage } from '../pages/settingsPage.ts';
import { welcomePage } from '../pages/welcomePage.ts';
import { lead, type Walk } from './walk.ts';

/** From a fresh machine to the first dog, with the first steps. */
export const firstWalk: Walk = {
  name: 'first days',
  from: 'nothing',
  async go(page, shot) {
    await shot('welcome');
    await welcomePage(page).startEmpty();
    await shot('set-up', { whole: true });
    await page.getByRole('button', { name: 'Save settings' }).click();
    await page.getByRole('alert').first().waitFor();
    await shot('set-up-refused');
    await settingsPage(page).fill({
      'Name of the practice': 'Invented Practice',
      'Name of the practitioner': 'Kim Practitioner',
    });
    await settingsPage(page).save();
    const steps = page.getByRole('region', { name: 'First steps' });
    for (const [index, { title }] of TOUR_STEPS.entries()) {
      await steps.getByRole('heading', { name: title }).waitFor();
      await shot(`first-steps-${index + 1}`);
      if (index < TOUR_STEPS.length - 1) await steps.getByRole('button', { name: 'Next' }).click();
    }
    await steps.getByRole('button', { name: 'Done' }).click();
    await shot('desk-empty');
    await lead(page, '/bin', 'Bin');
    await shot('bin-empty-practice');
    await lead(page, '/', 'Desk');
    await deskPage(page).add('Rusk');
    await shot('new-dog', { whole: true });
    await page.getByRole('button', { name: /^Save/ }).click();
    await page.getByRole('alert').first().waitFor();
    await shot('new-dog-refused');
    await dogFormPage(page).fill({
      birthDay: '2022-03-04',
      sex: 'Female',
      adultWeight: '24',
      owner: 'Dana Owner',
      vet: 'Dr C. Vet',
    });
    await dogFormPage(page).save('Rusk');
    await page.getByRole('link', { name: 'Start the intake' }).waitFor();
    await shot('dog-without-visit');
    const dog = /dogs\/[0-9a-f-]+/.exec(page.url())![0];
    await lead(page, `/${dog}/plan`, 'Running plan of Rusk');
    await shot('plan-none');
    await lead(page, `/${dog}/handouts`, 'Handouts for Rusk');
    await shot('handouts-none');
    await lead(page, `/${dog}/visits/new`, 'Intake of Rusk');
    await page.getByRole('heading', { level: 2, name: 'Decisions' }).waitFor();
    await shot('intake', { whole: true });
  },
};
