import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { dogFormPage } from '../pages/dogFormPage.ts';
import { startHost } from '../support/host.ts';
import { heading, lead, openDog, type Walk } from './walk.ts';

const NOBODY = '00000000-0000-4000-8000-000000000000';

/** What is not there, what two windows do to each other, and a program that no longer answers. */
export const troubleWalk: Walk = {
  name: 'trouble',
  from: 'own',
  async go(page, shot, desk) {
    await lead(page, '/nowhere', 'There is no such page');
    await shot('not-found');
    await lead(page, `/dogs/${NOBODY}`, 'The dog cannot be shown');
    await shot('dog-unknown');
    await openDog(page, 'Rusk');
    const dog = /dogs\/[0-9a-f-]+/.exec(page.url())![0];
    await lead(page, `/${dog}/visits/${NOBODY}`, 'The visit cannot be shown');
    await shot('visit-unknown');

    await lead(page, `/${dog}/edit`, 'Edit Rusk');
    const other = (await desk.open()).page;
    await lead(other, `/${dog}/edit`, 'Edit Rusk');
    await other.getByLabel('Breed').fill('Their crossbreed');
    await dogFormPage(other).save('Rusk');
    await other.context().close();
    await page.getByLabel('Breed').fill('My crossbreed');
    await page.getByRole('button', { name: /^Save/ }).click();
    await page.getByText(/was changed.*after you opened it/).waitFor();
    await shot('conflict');
    await page.getByRole('button', { name: 'Show what is stored now' }).click();
    await page.getByRole('alert').getByRole('row').filter({ hasText: 'Breed' }).waitFor();
    await shot('conflict-shown');

    const stranger = await desk.newPage();
    await stranger.goto(new URL('/', desk.host.address).href);
    await heading(stranger, 'Open Trotwell again from its start command');
    await shot('window-without-key', { page: stranger });
    await stranger.context().close();

    await desk.host.stop();
    await page.getByRole('button', { name: 'Save changes' }).click();
    await page
      .getByText(/does not answer/)
      .first()
      .waitFor();
    await shot('no-answer-to-save');
    await lead(page, '/', 'Desk');
    await page
      .getByText(/does not answer/)
      .first()
      .waitFor();
    await shot('no-answer');
  },
};

/** Records that something else wrote over. */
export const damageWalk: Walk = {
  name: 'damaged records',
  from: 'own',
  async go(page, shot, desk) {
    await desk.host.stop();
    await writeFile(join(desk.folder, 'trotwell.sqlite'), 'no records');
    const again = await startHost(desk.folder);
    await page.goto(again.address);
    await heading(page, 'Your records cannot be opened');
    await shot('damaged');
    await again.stop();
  },
};
