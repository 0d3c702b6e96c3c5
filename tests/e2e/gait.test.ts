import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { deskPage } from './pages/deskPage.ts';
import { visitPage } from './pages/visitPage.ts';
import { welcomePage } from './pages/welcomePage.ts';
import { openDesk, type TestDesk } from './support/desk.ts';

describe('measuring gait and air', () => {
  let desk: TestDesk;
  let page: Page;
  let complaints: readonly string[];

  beforeAll(async () => {
    desk = await openDesk();
    ({ page, complaints } = await desk.open({ reducedMotion: 'reduce' }));
    await welcomePage(page).openDemonstration();
    await deskPage(page).open('Pip');
  });
  afterAll(() => desk?.close());

  const measure = (label: string, value: string) =>
    page.getByLabel(label, { exact: true }).fill(value);

  it('judges measurements while they are typed', async () => {
    await page.getByRole('link', { name: 'New follow-up' }).click();
    await page.locator('summary', { hasText: 'Measurements' }).click();
    await measure('Stifle flexion, left hind', '50');
    await measure('Stifle flexion, right hind', '41');
    // Jaegger 2002, hind limb from memory (M): stifle flexion 42 degrees.
    await page.getByText('+8\u202f° from published').waitFor();
    await page.getByText('beyond error').waitFor();
    for (const [limb, kg] of [
      ['left fore', '3.2'],
      ['right fore', '3.1'],
      ['left hind', '1.4'],
      ['right hind', '2.6'],
    ] as const) {
      await measure(`Standing weight, ${limb}`, kg);
    }
    await page.getByText(/Hind limbs differ by/).waitFor();
  });

  it('times footfalls by taps', async () => {
    await page.locator('summary', { hasText: 'Footfall timing' }).click();
    await page.getByRole('group', { name: /^Tap the footfalls/ }).focus();
    // The page's clock is stepped by hand: how fast the machine taps is nothing to test.
    await page.clock.install();
    await page.clock.pauseAt(Date.now() + 60_000);
    for (let stride = 0; stride < 4; stride++) {
      for (const pair of [
        ['s', 'k'],
        ['l', 'd'],
      ]) {
        for (const key of pair) await page.keyboard.down(key);
        await page.clock.runFor(90);
        for (const key of pair) await page.keyboard.up(key);
        await page.clock.runFor(90);
      }
    }
    await page.clock.resume();
    await page.getByText('3 strides', { exact: false }).first().waitFor();
    await page.getByText('Type or correct the times').click();
    const times = page.getByLabel('Left hind, touch-downs, s');
    expect(await times.inputValue()).toBe('0 0.36 0.72 1.08');
  });

  it('keeps them and shows their course on the page of the dog', async () => {
    await page.getByRole('textbox', { name: 'Body weight' }).fill('10.3');
    await visitPage(page).save('Pip');
    const gait = page.getByRole('region', { name: 'Gait', exact: true });
    await page.getByText('Measurements and footfalls over the visits').click();
    await gait.getByRole('rowheader', { name: 'Left hind stifle flexion' }).waitFor();
    await gait.getByText('first measurement').first().waitFor();
    await gait.getByText('3 strides', { exact: false }).first().waitFor();
  });

  it('lets no short-nosed dog run without clearance, however cool it is', async () => {
    await page.getByRole('link', { name: 'Heat', exact: true }).click();
    await page.getByLabel('Air temperature in the shade').fill('41 F');
    await page.getByText('= 5.0\u202f°C').waitFor();
    await page.getByRole('textbox', { name: 'Humidity' }).fill('40');
    const now = page.getByRole('region', { name: 'In this air' });
    await now.getByText('No run', { exact: true }).waitFor();
    await page.getByText(/clearance: no running at any temperature/).waitFor();
  });

  it('never breaks the content security policy or throws on the way', () => {
    expect(complaints).toEqual([]);
  });
});
