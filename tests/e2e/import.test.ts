import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openDesk, type TestDesk } from './support/desk.ts';
import { startPracticeWith } from './support/ownPractice.ts';
import { welcomePage } from './pages/welcomePage.ts';

/** Semicolons, decimal commas, days as DD.MM.YYYY, kg; line 4 has a day the calendar lacks. */
const GERMAN =
  'Hund;Datum;Gewicht (kg)\r\nRusk;13.01.2026;24,6\r\nRusk;27.01.2026;24,5\r\nRusk;31.02.2026;24,3\r\n';
const GERMAN_MENDED = GERMAN.replace('31.02.2026', '28.02.2026');
/** Commas, days as MM/DD/YYYY, pounds; the second row tells which number is the month. */
const AMERICAN = 'Dog,Date,Weight (lb)\nRusk,03/04/2026,53.2\nRusk,03/18/2026,52.9\n';

describe('weights from a table', () => {
  let desk: TestDesk;
  let page: Page;
  let complaints: readonly string[];

  beforeAll(async () => {
    desk = await openDesk();
    ({ page, complaints } = await desk.open());
    await startPracticeWith(page, 'Rusk');
  });
  afterAll(() => desk?.close());

  const part = () => page.getByRole('region', { name: 'Import of weights' });
  const rows = () => part().getByRole('region', { name: 'Rows of the table' }).locator('tbody tr');
  const chosen = (label: string) =>
    part()
      .getByLabel(label)
      .evaluate((select: HTMLSelectElement) => select.selectedOptions[0]?.label);
  async function openImport(): Promise<void> {
    await page.evaluate(() => (location.hash = '#/settings/records'));
    // The page of a dog has such a link too, and chooses the dog.
    await page.getByRole('heading', { level: 1, name: 'Records and backups' }).waitFor();
    await page.getByRole('link', { name: 'Import weights' }).click();
    await page.getByRole('heading', { level: 1, name: 'Import weights' }).waitFor();
  }
  async function choose(name: string, text: string): Promise<void> {
    const dialogue = page.waitForEvent('filechooser');
    await part().getByRole('button', { name: 'Choose a table' }).click();
    await (
      await dialogue
    ).setFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(text, 'utf8') });
    await part().getByText(name).waitFor();
  }
  const rowTexts = async () =>
    (await rows().allInnerTexts()).map((text) => text.replace(/\s+/g, ' ').trim());

  it('shows a refused row with its column and reason, and keeps nothing', async () => {
    await openImport();
    await choose('weights.csv', GERMAN);
    await part().getByText('2 new, 0 known, 1 refused.').waitFor();
    expect(await chosen('Days are written')).toBe('DD.MM.YYYY');
    expect(await chosen('Decimal sign')).toBe('Comma: 24,3');
    expect(await chosen('Unit of the weights')).toBe('kg');
    const [first, second] = await rowTexts();
    expect(first).toMatch(/^4 refused Datum: The day must be a day of the calendar/);
    expect(second).toMatch(/^2 new Rusk .*24\.6 kg$/);
    expect(await part().getByRole('button', { name: /^Keep/ }).count()).toBe(0);
  });

  it('leaves a refused row out by one key, and takes it in again', async () => {
    await part().getByRole('button', { name: 'Choose a table' }).focus();
    await page.keyboard.press('x');
    await part().getByText('2 new, 0 known, 0 refused. Left out: 1.').waitFor();
    const keep = part().getByRole('button', { name: 'Keep 2 weighings' });
    await expect.poll(() => keep.evaluate((it) => it === document.activeElement)).toBe(true);
    await part().getByRole('button', { name: 'Take in again, line 4' }).press('Enter');
    await part().getByText('2 new, 0 known, 1 refused.').waitFor();
    const again = part().getByRole('button', { name: 'Leave out line 4' });
    await expect.poll(() => again.evaluate((it) => it === document.activeElement)).toBe(true);
  });

  it('keeps the rows of the mended file, and knows them when they come again', async () => {
    await choose('mended.csv', GERMAN_MENDED);
    await part().getByRole('button', { name: 'Keep 3 weighings' }).click();
    await part().getByText('3 weighings were added').waitFor();
    await choose('again.csv', GERMAN_MENDED);
    await part().getByText('0 new, 3 known, 0 refused.').waitFor();
    expect(await part().getByRole('button', { name: /^Keep/ }).count()).toBe(0);
  });

  it('marks a weight far off the others, and leaves it out by the same key', async () => {
    await choose('slip.csv', `${GERMAN_MENDED}Rusk;14.03.2026;42,2\r\n`);
    await part().getByText('1 new, 3 known, 0 refused.').waitFor();
    await part().getByRole('button', { name: 'Leave out line 5' }).waitFor();
    await part().getByRole('button', { name: 'Choose a table' }).focus();
    await page.keyboard.press('x');
    await part().getByText('0 new, 3 known, 0 refused. Left out: 1.').waitFor();
  });

  it('reads pounds and days with the month in front, and takes the import back', async () => {
    await choose('pounds.csv', AMERICAN);
    await part().getByText('2 new, 0 known, 0 refused.').waitFor();
    expect(await chosen('Days are written')).toBe('MM/DD/YYYY');
    expect(await chosen('Unit of the weights')).toBe('lb');
    // International pound, 0.45359237 kg (S): 53.2 lb = 24.13 kg, 52.9 lb = 24.00 kg.
    const [first, second] = await rowTexts();
    expect(first).toMatch(/24\.1\d? kg$/);
    expect(second).toMatch(/24(\.00?)? kg$/);
    await part().getByRole('button', { name: 'Keep 2 weighings' }).click();
    await part().getByText('2 weighings were added').waitFor();
    await part().getByRole('button', { name: 'Take the import back' }).click();
    await part().getByText('2 weighings were removed').waitFor();
  });

  it('has what was kept in the records, and not what was taken back', async () => {
    await choose('mended.csv', GERMAN_MENDED);
    await part().getByText('0 new, 3 known, 0 refused.').waitFor();
    await choose('pounds.csv', AMERICAN);
    await part().getByText('2 new, 0 known, 0 refused.').waitFor();
    await part().getByLabel('Column of the weight').selectOption('Not chosen');
    await part().getByText('Choose the columns of the dog, the day and the weight').waitFor();
    expect(await rows().count()).toBe(0);
    expect(complaints).toEqual([]);
  });
});

describe('a bundle of one owner', () => {
  let demo: TestDesk;
  let fresh: TestDesk;
  beforeAll(async () => {
    demo = await openDesk();
    fresh = await openDesk();
  });
  afterAll(async () => {
    await demo?.close();
    await fresh?.close();
  });

  it('goes out of the demonstration and comes into an empty practice', async () => {
    const from = (await demo.open()).page;
    await welcomePage(from).openDemonstration();
    await from.getByRole('link', { name: 'Bramble' }).first().click();
    await from.getByRole('heading', { level: 1, name: 'Bramble' }).waitFor();
    const coming = from.waitForEvent('download');
    await from.getByText(/^A copy of all that is kept about/).click();
    await from.getByRole('button', { name: 'Export this owner’s records' }).click();
    const buffer = await readFile(await (await coming).path());

    const { page, complaints } = await fresh.open();
    await welcomePage(page).startEmpty();
    await page.evaluate(() => (location.hash = '#/settings/records'));
    await page.getByRole('link', { name: 'Import an exported bundle' }).click();
    const part = page.getByRole('region', { name: 'Import of a bundle' });
    const choose = async (): Promise<void> => {
      const dialogue = page.waitForEvent('filechooser');
      await part.getByRole('button', { name: 'Choose a bundle' }).click();
      await (await dialogue).setFiles({ name: 'bundle.zip', mimeType: 'application/zip', buffer });
    };
    await choose();
    await part.getByRole('row', { name: /^Owners 1 0$/ }).waitFor();
    await part.getByRole('button', { name: 'Import the bundle' }).click();
    await part.getByText(/records came in\.$/).waitFor();
    await choose();
    await part.getByText('Everything in this bundle is here already.').waitFor();

    await page.evaluate(() => (location.hash = '#/'));
    await page.getByRole('link', { name: 'Bramble' }).first().click();
    await page.getByRole('heading', { level: 1, name: 'Bramble' }).waitFor();
    const weighings = page.getByRole('table', { name: /^Weighings/ }).getByRole('row');
    expect(await weighings.count()).toBeGreaterThan(3);
    expect(complaints).toEqual([]);
  });
});
