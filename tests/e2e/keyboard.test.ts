import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openDesk, type TestDesk } from './support/desk.ts';
import { tabAndChoose, tabAndPress, tabAndType, tabTo } from './support/keyboard.ts';
import { pdfText } from './support/pdfText.ts';

// From the first start to a printed plan without once touching a mouse.
describe('the main job by keyboard alone', () => {
  let desk: TestDesk;
  let page: Page;

  beforeAll(async () => {
    desk = await openDesk();
    ({ page } = await desk.open());
  });
  afterAll(() => desk?.close());

  const button = (name: string | RegExp) => page.getByRole('button', { name });
  const link = (name: string) => page.getByRole('link', { name, exact: true });
  const group = (name: string | RegExp) => page.getByRole('group', { name });
  const heading = (name: string) => page.getByRole('heading', { level: 1, name, exact: true });

  it('skips to the page by the first stop', async () => {
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Skip to the page');
    await page.keyboard.press('Enter');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('main');
  });

  it('sets the practice up', async () => {
    await tabAndPress(page, button('Start empty'));
    await heading('Set up your practice').waitFor();
    await tabAndType(page, page.getByLabel('Name of the practice'), 'Keys Only');
    await tabAndChoose(page, group('Weight'), 'Pounds');
    await tabAndPress(page, button('Save settings'));
    await heading('Desk').waitFor();
  });

  it('moves the focus to the heading of a new page', async () => {
    await page.waitForFunction(() => document.activeElement?.id === 'page-title');
  });

  it('adds a dog', async () => {
    await tabAndType(page, page.getByRole('searchbox'), 'Tib');
    await page.keyboard.press('Enter');
    await heading('New dog').waitFor();
    const birth = page.getByLabel('Day of birth');
    await tabTo(page, birth);
    await page.keyboard.type('06152021');
    await tabAndType(page, page.getByLabel('Name of the owner'), 'Kay Board');
    await tabAndPress(page, button('Save dog and owner'));
    await heading('Tib').waitFor();
  });

  it('assesses it', async () => {
    await tabAndPress(page, link('Start the intake'));
    await heading('Intake of Tib').waitFor();
    await tabAndChoose(page, group('Walk base'), 'Passed');
    // In a practice that works in pounds a bare number is pounds.
    await tabAndType(page, page.getByLabel('Body weight'), '44');
    await tabAndChoose(page, group(/^Body condition score/), '5 of 9');
    await tabAndPress(page, button('sound at walk'));
    await tabAndPress(page, button('sound at trot'));
    await tabAndChoose(page, group('Left hind at trot'), 'grade 1');
    await tabAndChoose(page, group('Left hind at trot'), 'grade 0');
    await page.getByText('Ready to start').waitFor();
    await tabAndPress(page, button('Add a food'));
    await page.keyboard.type('Dry food');
    await tabAndType(page, page.getByLabel('Energy', { exact: true }), '360');
    await tabAndType(page, page.getByLabel('Amount a day'), '200');
    await tabAndChoose(page, group('Your decision'), 'Accept');
    await tabAndPress(page, button('Save visit'));
    await heading('Tib').waitFor();
  });

  it('reads the weights off the chart by the arrow keys', async () => {
    const point = page.locator('.point').first();
    await tabTo(page, point);
    expect(await point.getAttribute('aria-label')).toContain('44.0');
  });

  it('prints the plan', async () => {
    await tabAndPress(page, link('Handouts'));
    await heading('Handouts for Tib').waitFor();
    await tabAndChoose(page, group('Paper'), 'Letter');
    await page.locator('.page-text span').first().waitFor({ state: 'attached' });
    const download = page.waitForEvent('download');
    await tabAndPress(page, button('Save PDF'));
    const text = pdfText(await readFile(await (await download).path()));
    expect(text).toContain('Running plan for Tib');
  });
});
