import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { exifSegment, jpegWith, pngOf } from '../support/pictures.ts';
import { deskPage } from './pages/deskPage.ts';
import { dogPage } from './pages/dogPage.ts';
import { welcomePage } from './pages/welcomePage.ts';
import { openDesk, type TestDesk } from './support/desk.ts';
import { tabAndPress, tabTo } from './support/keyboard.ts';

const section = (page: Page) => page.getByRole('region', { name: 'Photos and letters' });
const entry = (page: Page, name: string) =>
  section(page).getByRole('listitem').filter({ hasText: name });

describe('photos and letters at a visit', () => {
  let desk: TestDesk;
  let page: Page;
  let complaints: readonly string[];

  beforeAll(async () => {
    desk = await openDesk();
    ({ page, complaints } = await desk.open());
    await welcomePage(page).openDemonstration();
    await deskPage(page).open('Bramble');
    await dogPage(page).amendVisit();
    await section(page).waitFor();
  });
  afterAll(() => desk?.close());

  async function choose(name: string, mimeType: string, buffer: Buffer): Promise<void> {
    const dialogue = page.waitForEvent('filechooser');
    const button = section(page).getByRole('button', { name: 'Add files' });
    await button.focus();
    await page.keyboard.press('Enter');
    await (await dialogue).setFiles({ name, mimeType, buffer });
  }

  it('adds a photo by keyboard, with a small picture drawn the right way up', async () => {
    // 16 by 8 pixels lying on its side: Exif's orientation 6 turns it to 8 by 16 (CIPA DC-008; M).
    await choose('stride <b>.jpg', 'image/jpeg', jpegWith([exifSegment(6, 'N 47 E 8')]));
    const line = entry(page, 'stride b.jpg');
    await line.waitFor();
    expect(await line.textContent()).toMatch(/Photo, less than 0\.1 MB/);
    const size = await line
      .locator('img')
      .evaluate((image: HTMLImageElement) => [image.naturalWidth, image.naturalHeight]);
    expect(size).toEqual([8, 16]);
  });

  it('adds a dropped PNG, and refuses a program, an SVG and half a picture by name', async () => {
    const files = [
      ['scan.png', pngOf(60, 40)],
      ['letter.pdf', Buffer.from('MZ')],
      ['x.svg', Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"/>')],
      ['half.png', pngOf(60, 40).subarray(0, 60)],
    ] as const;
    const dropped = files.map(([name, bytes]) => [name, bytes.toString('base64')] as const);
    const transfer = await page.evaluateHandle((list) => {
      const data = new DataTransfer();
      for (const [name, base64] of list) {
        const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
        data.items.add(new File([bytes], name));
      }
      return data;
    }, dropped);
    await section(page).locator('.place').dispatchEvent('drop', { dataTransfer: transfer });
    await entry(page, 'scan.png').waitFor();
    const alerts = section(page).getByRole('alert');
    await expect.poll(() => alerts.count()).toBe(3);
    expect(await alerts.allTextContents()).toEqual([
      expect.stringMatching(/^letter\.pdf: A photo must be a JPEG/),
      expect.stringMatching(/^x\.svg: A photo must be a JPEG/),
      expect.stringMatching(/^half\.png: The file is cut off/),
    ]);
  });

  it('adds several files chosen together, and names the one it refuses', async () => {
    const dialogue = page.waitForEvent('filechooser');
    await section(page).getByRole('button', { name: 'Add files' }).press('Enter');
    const chooser = await dialogue;
    expect(chooser.isMultiple()).toBe(true);
    await chooser.setFiles([
      { name: 'before.png', mimeType: 'image/png', buffer: pngOf(50, 40) },
      { name: 'no-photo.png', mimeType: 'image/png', buffer: Buffer.from('MZ') },
      { name: 'after.png', mimeType: 'image/png', buffer: pngOf(40, 50) },
    ]);
    await entry(page, 'after.png').waitFor();
    await entry(page, 'before.png').waitFor();
    const alerts = section(page).getByRole('alert');
    expect(await alerts.allTextContents()).toEqual([expect.stringMatching(/^no-photo\.png: /)]);
  });

  it('opens a photo in a dialogue named after it, and saves a copy without its place', async () => {
    await entry(page, 'stride b.jpg').getByRole('button', { name: 'Open' }).click();
    const dialogue = page.getByRole('dialog', { name: 'stride b.jpg' });
    await dialogue.getByRole('img', { name: 'stride b.jpg' }).waitFor();
    const download = page.waitForEvent('download');
    await dialogue.getByRole('button', { name: 'Save a copy' }).click();
    const saved = await download;
    expect(saved.suggestedFilename()).toBe('stride b.jpg');
    const bytes = await readFile(await saved.path());
    expect(bytes.subarray(0, 2)).toEqual(Buffer.from([0xff, 0xd8]));
    expect(bytes.includes('N 47 E 8')).toBe(false);
    await page.keyboard.press('Escape');
    await dialogue.waitFor({ state: 'detached' });
  });

  it('removes a file into the bin and takes that back', async () => {
    await entry(page, 'scan.png').getByRole('button', { name: 'Remove' }).click();
    await entry(page, 'scan.png').waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Undo' }).click();
    await entry(page, 'scan.png').waitFor();
  });

  it('complains of nothing', async () => {
    expect(complaints).toEqual([]);
  });

  it('shows small pictures on the dog’s timeline', async () => {
    await page.goBack();
    await page.getByRole('button', { name: /^Open scan\.png/ }).waitFor();
    await page.getByRole('link', { name: 'Back to Bramble' }).click();
    await page.getByRole('heading', { level: 1, name: 'Bramble', exact: true }).waitFor();
    await page.getByRole('button', { name: /^Open scan\.png/ }).click();
    await page.getByRole('dialog', { name: 'scan.png' }).waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
  });

  it('shows them beside those of the visit before, by keyboard', async () => {
    await tabAndPress(page, page.getByRole('link', { name: 'The last two visits side by side' }));
    await page.getByRole('heading', { level: 1, name: 'Two visits of Bramble' }).waitFor();
    const photo = page.getByRole('button', { name: /^Open scan\.png/ });
    await tabAndPress(page, photo);
    await page.getByRole('dialog', { name: 'scan.png' }).waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    expect(await photo.evaluate((it) => it === document.activeElement)).toBe(true);
  });

  it('sets photos from the same side beside each other, under their days, by keyboard', async () => {
    const together = page.getByRole('link', { name: 'The last two visits side by side' });
    const heads = page.locator('.heads a');
    for (const visit of [0, 1]) {
      await tabAndPress(page, heads.nth(visit));
      await page.getByRole('heading', { level: 1, name: /^Follow-up of Bramble, / }).waitFor();
      await tabAndPress(page, page.getByRole('link', { name: 'Amend', exact: true }));
      await page.getByRole('heading', { level: 2, name: 'Amendment' }).waitFor();
      await page.keyboard.press('Alt+9');
      await tabTo(page, section(page).getByLabel('Kind'));
      for (let down = 0; down < 2; down++) await page.keyboard.press('ArrowDown');
      await choose(`left ${visit}.png`, 'image/png', pngOf(60 + visit, 40));
      await entry(page, `left ${visit}.png`).getByText('Photo from the left').waitFor();
      // Each is reached by Tab elsewhere.
      await page.getByRole('button', { name: 'Cancel' }).press('Enter');
      await together.press('Enter');
      await page.getByRole('heading', { level: 1, name: 'Two visits of Bramble' }).waitFor();
    }
    const row = page.locator('.line').filter({ hasText: 'Photo from the left' });
    const photos = row.getByRole('figure');
    await photos.nth(1).waitFor();
    expect(await photos.locator('figcaption').allInnerTexts()).toEqual([
      'left 0.png',
      'left 1.png',
    ]);
    for (const at of [0, 1]) {
      const [photo, head, first] = [photos.nth(at), heads.nth(at), photos.first()];
      expect((await photo.boundingBox())!.x).toBe((await head.boundingBox())!.x);
      expect((await photo.boundingBox())!.y).toBe((await first.boundingBox())!.y);
    }
  });
});
