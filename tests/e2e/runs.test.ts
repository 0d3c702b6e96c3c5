import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addDays } from '../../core/index.ts';
import { boutLegs, walked } from '../core/track/walker.ts';
import { gpxOf } from '../service/runs/gpx.ts';
import { deskPage } from './pages/deskPage.ts';
import { planPage } from './pages/planPage.ts';
import { welcomePage } from './pages/welcomePage.ts';
import { openDesk, type TestDesk } from './support/desk.ts';

/** A recorded outing over a hill. */
function trackOf(day: string, climbM: number, seed: number): string {
  const walk = { walkMps: 1.4, runMps: 2.6, errorM: 3, jitterM: 0.3, everyS: 5, seed };
  const startS = new Date(`${day}T07:30:00`).getTime() / 1000;
  const { track } = walked({ ...walk, legs: boutLegs(3, 2, 2) }, startS);
  const segments = track.segments.map((points) =>
    points.map((point, at) => ({ ...point, elevationM: 200 + (climbM * at) / points.length })),
  );
  return gpxOf({ segments });
}

async function drop(page: Page, files: readonly (readonly [string, string])[]): Promise<void> {
  const transfer = await page.evaluateHandle((list) => {
    const data = new DataTransfer();
    for (const [name, text] of list) data.items.add(new File([text], name));
    return data;
  }, files);
  await page.locator('details.runs').dispatchEvent('drop', { dataTransfer: transfer });
}

describe('runs that come back', () => {
  let desk: TestDesk;
  let page: Page;
  let complaints: readonly string[];
  let today: string;

  beforeAll(async () => {
    desk = await openDesk();
    ({ page, complaints } = await desk.open({ reducedMotion: 'reduce', acceptDownloads: true }));
    await welcomePage(page).openDemonstration();
    await deskPage(page).open('Bramble');
    today = await page.evaluate(() => new Date().toLocaleDateString('sv'));
  });
  afterAll(() => desk?.close());

  const tracks = () => page.getByRole('article', { name: /^Track of/ });

  it('come after a plan that went home as a calendar', async () => {
    await page.getByRole('link', { name: 'Handouts' }).first().click();
    await page.getByText('By calendar and mail').click();
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save the calendar' }).click();
    const calendar = readFileSync(await (await download).path(), 'utf8');
    expect(calendar.match(/^UID:.*-outing-/gm)!.length).toBeGreaterThan(3);
    await page.getByRole('link', { name: 'Back to Bramble' }).click();
    await planPage(page).open('Bramble');
  });

  it('are read from many files at once, each in a sentence where it is none', async () => {
    const days = [1, 2, 3].map((ago) => addDays(today, -ago));
    await drop(page, [
      ...days.map((day, at) => [`run ${at}.gpx`, trackOf(day, 120, at + 1)] as const),
      ['bomb.gpx', '<!DOCTYPE gpx [<!ENTITY a "aaaa">]><gpx/>'],
      ['notes.gpx', 'not a track'],
    ]);
    await expect.poll(() => tracks().count()).toBe(3);
    const alerts = planPage(page).sessions.getByRole('alert');
    await expect.poll(() => alerts.count()).toBe(2);
    const said = (await alerts.allTextContents()).join(' ');
    expect(said).toMatch(/bomb\.gpx: This file declares entities.*notes\.gpx: This is neither/);
  });

  it('are shown against the plan, and their runs read by keyboard', async () => {
    const chart = tracks().first().getByRole('application');
    await chart.focus();
    await page.keyboard.press('Home');
    await page.keyboard.press('Home');
    await chart.getByText(/^Run 1, from minute \d+:\d\d: \d+:\d\d min at \d+\.\d km\/h$/).waitFor();
    await expect.poll(() => chart.getAttribute('data-at')).toMatch(/^\d+,\d+$/);
  });

  it('are taken over one by one, as corrected, and a run of its own is seen as such', async () => {
    const { sessions, review } = planPage(page);
    const before = await review.textContent();
    const unplanned = tracks().filter({ hasText: 'it counts as a run of its own' });
    expect(await unplanned.count()).toBeGreaterThan(0);
    for (const take of await tracks()
      .getByRole('button', { name: /^Take over/ })
      .all()) {
      await tracks().first().getByLabel('Climbed').fill('130');
      void take;
      const left = await tracks().count();
      await tracks()
        .first()
        .getByRole('button', { name: /^Take over/ })
        .click();
      await expect.poll(() => tracks().count()).toBe(left - 1);
    }
    const own = sessions.getByRole('region', { name: 'Runs that were not planned' });
    await own
      .getByText(/Done at [56](\.5)?\u00a0min/)
      .first()
      .waitFor();
    // What the record says today rests on what was run.
    await expect.poll(() => review.textContent()).not.toBe(before);
  });

  it('move the food with what was climbed, at the next visit', async () => {
    await page
      .getByRole('link', { name: /^Back to|Bramble/ })
      .first()
      .click();
    await page.getByRole('link', { name: 'Follow-up' }).first().click();
    await page.getByLabel('Body weight').fill('24.5');
    await page.getByText('counted with 130 m climbed an outing, the mean of the last 3').waitFor();
  });

  it('are kept as recorded only where the owner’s record asks for it', async () => {
    await page.getByRole('link', { name: 'Back to Bramble' }).click();
    await page.getByRole('link', { name: 'Edit dog and owner' }).click();
    await page.getByLabel('Keep the recordings of runs').check();
    await page.getByRole('button', { name: 'Save changes' }).click();
    await page.getByRole('link', { name: 'Follow-up' }).first().click();
    const files = page.getByRole('region', { name: 'Photos and letters' });
    await drop(page, [['lake.gpx', trackOf(addDays(today, -4), 10, 7)]]);
    await page.getByText('The owner asks to keep the recordings').waitFor();
    await tracks()
      .first()
      .getByRole('button', { name: /^Take over/ })
      .click();
    await files.getByRole('button', { name: 'Leave out lake.gpx' }).waitFor();
    expect(complaints).toEqual([]);
  });
});

describe('what goes home by calendar and mail', () => {
  let desk: TestDesk;
  let page: Page;
  beforeAll(async () => {
    desk = await openDesk();
    ({ page } = await desk.open({ acceptDownloads: true }));
    await welcomePage(page).openDemonstration();
    await deskPage(page).open('Bramble');
    await page.getByRole('link', { name: 'Handouts' }).first().click();
  });
  afterAll(() => desk?.close());

  it('is saved from the page of the handouts, and the story tells that it was made', async () => {
    await page.getByText('By calendar and mail').click();
    const saved = async (button: string) => {
      const download = page.waitForEvent('download');
      await page.getByRole('button', { name: button }).click();
      return (await download).suggestedFilename();
    };
    expect(await saved('Save the calendar')).toMatch(/^Bramble-calendar-.*\.ics$/);
    expect(await saved('Save the table of runs')).toMatch(/^Bramble-runs-.*\.csv$/);
    expect(await saved('Mail draft to the owner')).toMatch(/^Bramble-mail-to-owner-.*\.eml$/);
    await page.getByRole('link', { name: 'Back to Bramble' }).click();
    await page.getByText('Mail draft to the owner: made, not sent').waitFor();
    await page.getByText('Calendar file: made, not sent').waitFor();
  });
});
