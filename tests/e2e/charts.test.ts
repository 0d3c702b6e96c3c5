import { readFile } from 'node:fs/promises';
import type { Download, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { deskPage } from './pages/deskPage.ts';
import { welcomePage } from './pages/welcomePage.ts';
import { axeViolations } from './support/axe.ts';
import { openDesk, type TestDesk } from './support/desk.ts';

const PNG_SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);

describe('charts', () => {
  let desk: TestDesk;
  let page: Page;
  let complaints: readonly string[];
  /** What draws charts, as far as it was fetched before there was one. */
  let before: readonly string[];
  const drawingScripts = () =>
    page.evaluate(() =>
      performance
        .getEntriesByType('resource')
        .map(({ name }) => name)
        .filter((name) => /\/draw-[^/]+\.js$/.test(name)),
    );

  beforeAll(async () => {
    desk = await openDesk();
    ({ page, complaints } = await desk.open());
    await welcomePage(page).openDemonstration();
    await page.getByRole('link', { name: 'Bramble', exact: true }).first().waitFor();
    before = await drawingScripts();
    await deskPage(page).open('Bramble');
    await page.locator('.drawing.drawn').first().waitFor();
  });
  afterAll(() => desk?.close());

  it('fetch what draws them with the first of them, not before', async () => {
    expect(before).toEqual([]);
    expect((await drawingScripts()).length).toBeGreaterThan(0);
  });

  const weight = () => page.getByRole('figure', { name: 'Weight, kg' });

  async function save(chart: Locator, words: string): Promise<Download> {
    const download = page.waitForEvent('download');
    await chart.getByRole('button', { name: words }).click();
    return download;
  }

  /** What a browser makes of a PNG: its size, its corner, and how many pixels are dark. */
  async function looked(bytes: Buffer) {
    return page.evaluate(async (base64) => {
      const image = new Image();
      image.src = `data:image/png;base64,${base64}`;
      await image.decode();
      const canvas = document.createElement('canvas');
      canvas.width = image.naturalWidth;
      canvas.height = image.naturalHeight;
      const pen = canvas.getContext('2d')!;
      pen.drawImage(image, 0, 0);
      const { data } = pen.getImageData(0, 0, canvas.width, canvas.height);
      let dark = 0;
      for (let i = 0; i < data.length; i += 4) {
        if (data[i]! + data[i + 1]! + data[i + 2]! < 200) dark += 1;
      }
      return { width: canvas.width, height: canvas.height, corner: [...data.slice(0, 4)], dark };
    }, bytes.toString('base64'));
  }

  for (const scheme of ['light', 'dark'] as const) {
    // PNG (ISO/IEC 15948), 5.2: the eight bytes every file begins with (S).
    it(`saves the weight as a picture on white paper from a ${scheme} screen`, async () => {
      await page.emulateMedia({ colorScheme: scheme });
      const download = await save(weight(), 'Save picture (PNG)');
      expect(download.suggestedFilename()).toBe('Bramble Weight.png');
      const bytes = await readFile(await download.path());
      expect(bytes.subarray(0, 8)).toEqual(PNG_SIGNATURE);
      const { width, height, corner, dark } = await looked(bytes);
      expect(width).toBeGreaterThan(800);
      expect(corner).toEqual([255, 255, 255, 255]);
      // Ink on paper, and not the other way round: letters and weighings, but no dark ground.
      expect(dark).toBeGreaterThan(1000);
      expect(dark).toBeLessThan(0.05 * width * height);
    });

    it(`shows the table without axe violations in ${scheme}`, async () => {
      await page.emulateMedia({ colorScheme: scheme });
      const toggle = weight().getByRole('button', { name: 'As a table' });
      await toggle.click();
      await weight().getByRole('columnheader', { name: 'Weight, kg' }).waitFor();
      expect(await axeViolations(page)).toEqual([]);
      await toggle.click();
      await page.locator('.drawing.drawn').first().waitFor();
    });
  }

  it('walks along the weighings by keyboard, says each, and draws it where the point is', async () => {
    await page.emulateMedia({ colorScheme: 'light' });
    const drawing = weight().getByRole('application');
    const said = drawing.getByRole('status');
    await drawing.focus();
    await page.keyboard.press('Home');
    await page.keyboard.press('Home');
    const days: string[] = [];
    for (let stop = 0; stop < 4; stop += 1) {
      days.push(((await said.textContent()) ?? '').slice(0, 10));
      const [x, y] = (await drawing.getAttribute('data-at'))!.split(',').map(Number);
      const ink = await drawing.locator('canvas').evaluate(
        (canvas: HTMLCanvasElement, at) => {
          const ratio = canvas.width / canvas.clientWidth;
          const pen = canvas.getContext('2d')!;
          return [...pen.getImageData(at[0]! * ratio, at[1]! * ratio, 1, 1).data];
        },
        [x!, y!],
      );
      // The ink of the light page, where the chart says that the weighing is.
      expect(ink).toEqual([0x23, 0x26, 0x2b, 255]);
      await page.keyboard.press('ArrowRight');
    }
    expect(new Set(days).size).toBe(4);
    await page.keyboard.press('Escape');
  });

  it('keeps ink, bands and ground apart where the system forces its colours', async () => {
    await page.emulateMedia({ forcedColors: 'active', colorScheme: 'dark' });
    const drawing = weight().getByRole('application');
    const shares = () =>
      drawing.locator('canvas').evaluate((canvas: HTMLCanvasElement) => {
        const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
        const found = { bright: 0, between: 0 };
        for (let i = 0; i < data.length; i += 4) {
          if (data[i + 3]! < 128) continue;
          const light = data[i]! + data[i + 1]! + data[i + 2]!;
          if (light > 600) found.bright += 1;
          else if (light > 30) found.between += 1;
        }
        const all = canvas.width * canvas.height;
        return { bright: found.bright / all, between: found.between / all };
      });
    // Letters and weighings in the system's white; the corridor between it and the black ground.
    await expect.poll(async () => (await shares()).bright).toBeGreaterThan(0.005);
    expect((await shares()).bright).toBeLessThan(0.06);
    expect((await shares()).between).toBeGreaterThan(0.03);
    await page.emulateMedia({ forcedColors: 'none', colorScheme: 'light' });
    await page.locator('.drawing.drawn').first().waitFor();
  });

  it('comes closer by keys, and a value that is walked to is in sight', async () => {
    const drawing = weight().getByRole('application');
    await drawing.focus();
    await page.keyboard.press('End');
    const before = await drawing.getAttribute('data-at');
    for (let step = 0; step < 3; step += 1) await page.keyboard.press('+');
    await page.keyboard.press('End');
    const width = await drawing.evaluate((element) => element.clientWidth);
    const [x] = (await drawing.getAttribute('data-at'))!.split(',').map(Number);
    expect(x).toBeLessThanOrEqual(width);
    await page.keyboard.press('0');
    expect(await drawing.getAttribute('data-at')).toBe(before);
    await page.keyboard.press('Escape');
  });

  it('comes closer by the wheel and goes along by dragging, and steps back again', async () => {
    const drawing = weight().getByRole('application');
    await drawing.scrollIntoViewIfNeeded();
    await drawing.focus();
    await page.keyboard.press('Home');
    await page.keyboard.press('Home');
    const at = async () => Number((await drawing.getAttribute('data-at'))!.split(',')[0]);
    const whole = await at();
    const box = (await drawing.boundingBox())!;
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.wheel(0, -400);
    await expect.poll(at).toBeLessThan(whole - 20);
    const closer = await at();
    await page.mouse.down();
    await page.mouse.move(box.x + box.width / 2 + 60, box.y + box.height / 2, { steps: 4 });
    await page.mouse.up();
    await expect.poll(at).toBeGreaterThan(closer + 20);
    await drawing.focus();
    await page.keyboard.press('0');
    await page.keyboard.press('Home');
    await expect.poll(at).toBe(whole);
    await page.keyboard.press('Escape');
  });

  it('saves the numbers with their units, the weighings of the record among them', async () => {
    const download = await save(weight(), 'Save numbers (CSV)');
    expect(download.suggestedFilename()).toBe('Bramble Weight.csv');
    const text = await readFile(await download.path(), 'utf8');
    expect(text[0]).toBe('\uFEFF');
    const [head, ...rows] = text.slice(1).split('\r\n');
    expect(head).toContain('Day,"Weight, kg","Scale error, kg"');
    expect(rows.filter((row) => /^\d{4}-\d\d-\d\d,\d+\.\d,\d+\.\d\d,/.test(row))).toHaveLength(4);
  });

  it('saves the load of the plan, as a picture and as numbers', async () => {
    await page.keyboard.press('p');
    await page.getByRole('heading', { level: 1, name: 'Running plan of Bramble' }).waitFor();
    const load = page.getByRole('figure', { name: 'Running, minutes a week' });
    const picture = await save(load, 'Save picture (PNG)');
    expect((await looked(await readFile(await picture.path()))).dark).toBeGreaterThan(500);
    const numbers = await save(load, 'Save numbers (CSV)');
    const [head, ...rows] = (await readFile(await numbers.path(), 'utf8')).trim().split('\r\n');
    expect(head).toContain('Week,From,"Planned running, min","Done, min","Limit, min",Kind');
    expect(rows.length).toBeGreaterThan(10);
  });

  it('never breaks the content security policy or throws', () => {
    expect(complaints).toEqual([]);
  });

  it('break no rule of the content policy, all of them on one page', async () => {
    const broken = () =>
      page.evaluate(() => (window as unknown as { broken: string[] }).broken.slice());
    await page.evaluate(() => {
      const seen: string[] = [];
      (window as unknown as { broken: string[] }).broken = seen;
      document.addEventListener('securitypolicyviolation', (event) =>
        seen.push(event.effectiveDirective),
      );
    });
    await page.getByRole('link', { name: 'Back to Bramble' }).click();
    await page.getByRole('link', { name: 'All charts' }).click();
    await page.getByRole('heading', { level: 1, name: 'Charts of Bramble' }).waitFor();
    const drawings = page.locator('.drawing');
    await expect.poll(() => drawings.count()).toBeGreaterThan(5);
    await expect
      .poll(() => page.locator('.drawing:not(.drawn)').count(), { timeout: 10_000 })
      .toBe(0);
    expect(await axeViolations(page)).toEqual([]);
    expect(await broken()).toEqual([]);
    // The listener does hear: a style written into the page is refused and told.
    await page.evaluate(() => document.body.setAttribute('style', 'color: red'));
    await expect.poll(broken).toEqual(['style-src-attr']);
  });
});
