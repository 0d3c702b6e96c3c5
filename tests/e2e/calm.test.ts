import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { visitPage } from './pages/visitPage.ts';
import { welcomePage } from './pages/welcomePage.ts';
import { line, loadOf, visitForm } from './support/calm.ts';
import { openDesk, type TestDesk } from './support/desk.ts';
import { countInput } from './support/keystrokes.ts';
import { startPracticeWith } from './support/ownPractice.ts';
import { heading, openBramble, openDog } from './states/walk.ts';

const MAX = {
  'empty intake, visible controls': 60,
  'empty intake, height in px': 2400,
  'empty intake, words': 400,
  'panel, words': 90,
  // What fits beside the form in a window of 800.
  'panel, height in px': 640,
  'smallest intake, clicks': 14,
  'smallest intake, keys': 40,
  'follow-up after a bad week, clicks': 12,
  'follow-up after a bad week, keys': 40,
  'follow-up, all well, clicks': 10,
  'follow-up, all well, keys': 12,
  'page of a dog, visible controls': 35,
  'page of a dog, height in px': 2100,
  'page of a dog, words': 420,
} as const;
type What = keyof typeof MAX;

// How much a visit asks of eye and hand, at 1280 x 800. The limits are our own (D).
describe('the calm of a visit', () => {
  let desk: TestDesk;
  let page: Page;
  const found = new Map<What, number>();
  const note = (what: What, is: number) => found.set(what, is);

  beforeAll(async () => {
    desk = await openDesk();
    ({ page } = await desk.open());
    await startPracticeWith(page, 'Rusk');
  });
  afterAll(async () => {
    console.log([...found].map(([what, is]) => line(what, is, MAX[what])).join('\n'));
    await desk?.close();
  });

  it('shows an empty intake', async () => {
    await page.getByRole('link', { name: 'Start the intake' }).click();
    await heading(page, 'Intake of Rusk');
    const form = await loadOf(visitForm(page), '.follows');
    note('empty intake, visible controls', form.controls);
    note('empty intake, height in px', form.height);
    note('empty intake, words', form.words);
  });

  it('takes the smallest intake', async () => {
    const tally = await countInput(page);
    const visit = visitPage(page);
    await visit.smallestIntake();
    await visit.save('Rusk');
    const { keys, pointers } = await tally();
    note('smallest intake, clicks', pointers);
    note('smallest intake, keys', keys);
  });

  it('holds what follows beside it, with four reasons', async () => {
    await page.getByRole('link', { name: 'New follow-up' }).click();
    const visit = visitPage(page);
    await visit.fourReasons();
    const { words, height } = await loadOf(visit.follows);
    note('panel, words', words);
    note('panel, height in px', height);
  });

  it.each([
    ['allWell', 'follow-up, all well'],
    ['badWeek', 'follow-up after a bad week'],
  ] as const)('takes a follow-up: %s', async (kind, of) => {
    const other = await openDesk();
    try {
      const { page: second } = await other.open();
      await welcomePage(second).openDemonstration();
      await openDog(second, 'Juno');
      await second.getByRole('link', { name: 'New follow-up' }).click();
      await heading(second, 'Follow-up of Juno');
      const tally = await countInput(second);
      await visitPage(second)[kind]();
      await visitPage(second).save('Juno');
      const { keys, pointers } = await tally();
      note(`${of}, clicks`, pointers);
      note(`${of}, keys`, keys);
    } finally {
      await other.close();
    }
  });

  it('shows the page of a dog with a plan, a ration and four visits', async () => {
    const other = await openDesk();
    try {
      const { page: second } = await other.open();
      await welcomePage(second).openDemonstration();
      await openBramble(second);
      const { controls, height, words } = await loadOf(second.locator('main article'));
      note('page of a dog, visible controls', controls);
      note('page of a dog, height in px', height);
      note('page of a dog, words', words);
    } finally {
      await other.close();
    }
  });

  it.each(Object.keys(MAX) as What[])('keeps to its limit: %s', (what) => {
    expect(found.get(what)).toBeLessThanOrEqual(MAX[what]);
  });
});
