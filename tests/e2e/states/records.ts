import { readFile } from 'node:fs/promises';
import type { Locator, Page } from 'playwright-core';
import { recordsPage } from '../pages/recordsPage.ts';
import { bundleStates } from './bundle.ts';
import { heading, lead, type Shot, type Walk } from './walk.ts';

const PASSPHRASE = 'seven slow brown hounds';
/** Line 4 has a day the calendar lacks. */
const TABLE =
  'Hund;Datum;Gewicht (kg)\r\nRusk;13.01.2026;24,6\r\nRusk;27.01.2026;24,5\r\nRusk;31.02.2026;24,3\r\n';

async function choose(page: Page, button: Locator, name: string, buffer: Buffer): Promise<void> {
  const dialogue = page.waitForEvent('filechooser');
  await button.click();
  await (await dialogue).setFiles({ name, mimeType: 'application/octet-stream', buffer });
}

async function importStates(page: Page, shot: Shot): Promise<void> {
  await lead(page, '/settings/records/import', 'Import weights');
  await shot('import');
  const part = page.getByRole('region', { name: 'Import of weights' });
  const button = part.getByRole('button', { name: 'Choose a table' });
  await choose(page, button, 'weights.csv', Buffer.from(TABLE));
  await part.getByText('2 new, 0 known, 1 refused.').waitFor();
  await shot('import-preview', { whole: true });
  await part.getByRole('button', { name: 'Leave out line 4' }).click();
  await part.getByText('Left out: 1.').waitFor();
  await shot('import-left-out', { whole: true });
  await choose(page, button, 'mended.csv', Buffer.from(TABLE.replace('31.02', '28.02')));
  await part.getByRole('button', { name: 'Keep 3 weighings' }).click();
  await part.getByText('3 weighings were added').waitFor();
  await shot('import-done');
}

async function restoreStates(page: Page, shot: Shot, backup: Buffer): Promise<void> {
  const { restore, contents } = recordsPage(page);
  const button = restore.getByRole('button', { name: 'Choose a backup file' });
  await choose(page, button, 'letter.txt', Buffer.from('no backup'));
  await restore.getByRole('alert').first().waitFor();
  await shot('restore-refused', { at: restore });
  await choose(page, button, 'backup.trotwell', backup);
  await restore.getByText('is protected by a passphrase.').waitFor();
  await restore.getByLabel('Passphrase of the backup').fill('another one altogether');
  await restore.getByLabel('Passphrase of the backup').press('Enter');
  await restore.getByText('That alone does not mean that the file is damaged').first().waitFor();
  await shot('restore-wrong-passphrase', { at: restore });
  await restore.getByLabel('Passphrase of the backup').fill(PASSPHRASE);
  await restore.getByLabel('Passphrase of the backup').press('Enter');
  await contents.getByRole('row', { name: /^Dogs/ }).waitFor();
  await shot('restore-preview', { at: contents });
  await lead(page, '/restore', 'Restore a backup');
  await shot('restore');
}

/** Backup, restore, import and lock of an own practice. */
export const recordsWalk: Walk = {
  name: 'records',
  from: 'own',
  async go(page, shot) {
    const { backups, lock, open } = recordsPage(page);
    await importStates(page, shot);
    await bundleStates(page, shot);
    await open();
    await shot('records', { whole: true });
    await backups.getByLabel('Passphrase of this backup').fill('short');
    await backups.getByRole('button', { name: 'Make a backup' }).click();
    await backups.getByRole('alert').first().waitFor();
    await shot('backup-refused', { at: backups });
    await backups.getByLabel('Passphrase of this backup').fill(PASSPHRASE);
    await backups.getByLabel('The same again').fill(PASSPHRASE);
    const coming = page.waitForEvent('download');
    await backups.getByRole('button', { name: 'Make a backup' }).click();
    const backup = await readFile(await (await coming).path());
    await backups.getByText('is handed over for saving.').waitFor();
    await shot('backup-made', { at: backups });
    await restoreStates(page, shot, backup);

    await open();
    await lock.getByLabel('New passphrase').fill(PASSPHRASE);
    await lock.getByLabel('The same again').fill(PASSPHRASE);
    await lock.getByRole('button', { name: 'Set the passphrase' }).click();
    await lock.getByText('The passphrase is kept.').waitFor();
    await shot('lock-set', { at: lock });
    await lock.getByRole('button', { name: 'Lock now' }).click();
    await heading(page, 'Locked');
    await shot('locked');
    await page.getByLabel('Passphrase', { exact: true }).fill('a wrong one');
    await page.keyboard.press('Enter');
    await page.getByText('Still locked.').waitFor();
    await shot('locked-refused');
  },
};
