import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { deskPage } from './pages/deskPage.ts';
import { dogFormPage } from './pages/dogFormPage.ts';
import { recordsPage } from './pages/recordsPage.ts';
import { openDesk, type TestDesk } from './support/desk.ts';
import { startPracticeWith } from './support/ownPractice.ts';

const OF_LOCK = 'under the blue flower pot';
const OF_BACKUP = 'seven slow brown hounds';

describe('backup, restore and lock on an own practice', () => {
  let desk: TestDesk;
  let page: Page;
  let complaints: readonly string[];
  let file: { name: string; mimeType: string; buffer: Buffer };

  beforeAll(async () => {
    desk = await openDesk();
    ({ page, complaints } = await desk.open());
    await startPracticeWith(page, 'Rusk');
  });
  afterAll(() => desk?.close());

  const heading = (name: string) => page.getByRole('heading', { level: 1, name }).waitFor();
  async function chooseBackup(buffer: Buffer): Promise<void> {
    const dialogue = page.waitForEvent('filechooser', { timeout: 5_000 });
    await recordsPage(page).restore.getByRole('button', { name: 'Choose a backup file' }).click();
    await (await dialogue).setFiles({ ...file, buffer });
    // The form of the file before is there until this one has arrived.
    await expect.poll(() => recordsPage(page).restore.getByRole('alert').count()).toBe(0);
    await recordsPage(page).restore.getByText('is protected by a passphrase.').waitFor();
  }

  it('refuses a short passphrase and one that differs the second time', async () => {
    const { backups, open } = recordsPage(page);
    await open();
    await backups.getByLabel('Passphrase of this backup').fill('short');
    await backups.getByLabel('The same again').fill('shorter');
    await backups.getByRole('button', { name: 'Make a backup' }).click();
    const text = () => backups.innerText();
    await expect.poll(text).toContain('The passphrase must have from 10 to 200 characters.');
    expect(await text()).toContain('The passphrase is not the same both times.');
  });

  it('hands over a backup that does not show what it holds', async () => {
    const { backups } = recordsPage(page);
    await backups.getByLabel('Passphrase of this backup').fill(OF_BACKUP);
    await backups.getByLabel('The same again').fill(OF_BACKUP);
    const coming = page.waitForEvent('download');
    await backups.getByRole('button', { name: 'Make a backup' }).click();
    const download = await coming;
    const name = download.suggestedFilename();
    await backups.getByText(`${name} is handed over for saving.`).waitFor();
    expect(await backups.getByLabel('Passphrase of this backup').inputValue()).toBe('');
    file = {
      name,
      mimeType: 'application/octet-stream',
      buffer: await readFile(await download.path()),
    };
    expect(file.buffer.includes('Rusk')).toBe(false);
    expect(file.buffer.includes('SQLite format 3')).toBe(false);
  });

  it('tells a wrong passphrase and a damaged file apart', async () => {
    await page.getByRole('link', { name: 'Desk' }).click();
    await deskPage(page).open('Rusk');
    await page.getByRole('link', { name: /^Edit/ }).first().click();
    await page.getByLabel('Name of the dog').fill('Crumb');
    await dogFormPage(page).save('Crumb');
    await page.getByRole('link', { name: 'Edit dog and owner' }).waitFor();

    const { restore, contents, open } = recordsPage(page);
    await open();
    await chooseBackup(file.buffer);
    expect(await restore.getByRole('alert').count()).toBe(0);
    await restore.getByLabel('Passphrase of the backup').fill('another one altogether');
    await restore.getByRole('button', { name: 'Look into it' }).last().click();
    await restore.getByText('That alone does not mean that the file is damaged').first().waitFor();
    expect(await contents.count()).toBe(0);

    const cut = file.buffer.subarray(0, file.buffer.length - 40);
    await chooseBackup(cut);
    await restore.getByLabel('Passphrase of the backup').fill(OF_BACKUP);
    await restore.getByLabel('Passphrase of the backup').press('Enter');
    await restore
      .getByText(/damaged|cut off|not whole|incomplete/i)
      .first()
      .waitFor();
    expect(await contents.count()).toBe(0);
  });

  it('shows what is in the backup, and restores it', async () => {
    const { restore, contents } = recordsPage(page);
    await chooseBackup(file.buffer);
    await restore.getByLabel('Passphrase of the backup').fill(OF_BACKUP);
    await restore.getByLabel('Passphrase of the backup').press('Enter');
    await contents.getByRole('row', { name: /^Dogs 1 1$/ }).waitFor();
    expect(await contents.innerText()).toContain('Invented Practice');
    await contents.getByRole('button', { name: 'Restore this backup' }).click();
    await heading('Desk');
    await page.getByText('The backup is restored.').waitFor();
    await page.getByRole('link', { name: 'Rusk', exact: true }).first().waitFor();
    expect(await page.getByRole('link', { name: 'Crumb', exact: true }).count()).toBe(0);
  });

  it('opens a backup given to the start in a window of its own, and the next in its place', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'trotwell-e2e-files-'));
    const [whole, other] = [join(folder, 'Löwe & Sohn.trotwell'), join(folder, 'other.trotwell')];
    await writeFile(whole, file.buffer);
    await writeFile(other, 'no backup');
    const opened = await desk.newPage();
    await opened.goto(await desk.host.openedWith(whole));
    await opened.getByRole('heading', { level: 1, name: 'Restore a backup' }).waitFor();
    await opened.getByText('Löwe & Sohn.trotwell is protected by a passphrase.').waitFor();
    const route = (await desk.host.openedWith(other)).split('&').slice(1).join('&');
    // As the Electron window is led to it while its page stays.
    await opened.evaluate((hash) => (location.hash = hash), route);
    await opened.getByText('This file is not a backup of Trotwell.').first().waitFor();
    await opened.context().close();
    await rm(folder, { recursive: true });
  });

  it('keeps what was there before the restore as a backup, and takes the restore back', async () => {
    const { restore, contents, open } = recordsPage(page);
    await open();
    await restore
      .getByRole('listitem')
      .filter({ hasText: 'before a restore' })
      .getByRole('button')
      .click();
    await contents.getByRole('button', { name: 'Restore this backup' }).click();
    await heading('Desk');
    await page.getByRole('link', { name: 'Crumb', exact: true }).first().waitFor();
  });

  it('locks with a passphrase, refuses a wrong one, and comes back to the same place', async () => {
    const { lock, open } = recordsPage(page);
    await open();
    await lock.getByLabel('New passphrase').fill(OF_LOCK);
    await lock.getByLabel('The same again').fill(OF_LOCK);
    await lock.getByRole('button', { name: 'Set the passphrase' }).click();
    await lock.getByText('The passphrase is kept.').waitFor();
    // A notice that was just given does not stand over the lock.
    const notice = page.getByText('The retention period is saved.');
    await page.getByRole('button', { name: 'Save the period' }).press('Enter');
    await notice.waitFor();
    await lock.getByRole('button', { name: 'Lock now' }).press('Enter');
    await heading('Locked');
    expect(await page.getByText('Crumb').count()).toBe(0);
    expect(await notice.count()).toBe(0);

    const given = page.getByLabel('Passphrase', { exact: true });
    await given.fill(OF_BACKUP);
    await given.press('Enter');
    await page.getByText('Still locked.').waitFor();
    await page.reload();
    await heading('Locked');
    await given.fill(OF_LOCK);
    await given.press('Enter');
    await heading('Records and backups');
  });

  it('takes the lock away only with the present passphrase', async () => {
    const { lock } = recordsPage(page);
    await lock.getByLabel('Present passphrase').fill(OF_BACKUP);
    await lock.getByRole('button', { name: 'Take the lock away' }).click();
    await lock.getByRole('alert').first().waitFor();
    await lock.getByLabel('Present passphrase').fill(OF_LOCK);
    await lock.getByRole('button', { name: 'Take the lock away' }).click();
    await lock.getByText('The lock is taken away.').waitFor();
    expect(await lock.getByRole('button', { name: 'Lock now' }).count()).toBe(0);
    expect(complaints).toEqual([]);
  });
});
