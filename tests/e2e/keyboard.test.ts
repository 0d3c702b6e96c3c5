import { readFile } from 'node:fs/promises';
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { RenderedHandout } from '../../electron/contract/contract.ts';
import { welcomePage } from './pages/welcomePage.ts';
import { axeViolations } from './support/axe.ts';
import { openDesk, type TestDesk } from './support/desk.ts';
import { tabAndChoose, tabAndPress, tabAndTick, tabAndType, tabTo } from './support/keyboard.ts';
import { countInput, keystrokeEstimate, type Tally } from './support/keystrokes.ts';
import { holdPrinting } from './support/printing.ts';
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

  /** What stands behind a field. */
  const unitOf = (field: Locator) => field.locator('xpath=following-sibling::*[1]').innerText();
  const inFocus = (field: Locator) => field.evaluate((it) => it === document.activeElement);

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
    await tabAndChoose(page, group('Distance'), 'Miles');
    await tabTo(page, page.getByLabel('Days', { exact: true }));
    for (let down = 0; down < 3; down++) await page.keyboard.press('ArrowDown');
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
    await page.keyboard.type('6/15/2021');
    await tabTo(page, page.getByRole('radio', { name: 'Female' }));
    await page.keyboard.press('Space');
    // As the practice writes days; and who runs in miles measures in inches.
    expect(await birth.inputValue()).toBe('06/15/2021');
    expect(await unitOf(page.getByLabel('Height at the withers'))).toBe('in');
    await tabAndType(page, page.getByLabel('Name of the owner'), 'Kay Board');
    await tabAndType(page, page.getByLabel('Treating vet'), 'Dr Wren');
    await tabAndPress(page, button('Save dog and owner'));
    await heading('Tib').waitFor();
  });

  it('assesses it', async () => {
    await tabAndPress(page, link('Start the intake'));
    await heading('Intake of Tib').waitFor();
    // The focus is in the first field.
    await page.waitForFunction(() => document.activeElement?.id === 'field-visit-referral');
    await page.keyboard.type('Wants to run 5 km.');
    await tabAndType(page, page.getByLabel('Diagnosis'), 'Strained psoas, healed');
    // In a practice that works in pounds a bare number is pounds.
    await tabAndType(page, page.getByLabel('Body weight'), '44');
    // The step of a scale in pounds is a round one, and a pace is one of a mile.
    await page.getByText('The scale for this dog from now on, step 0.2 lb').waitFor();
    await page.getByText('For example 10:30.').waitFor();
    await tabAndChoose(page, group(/^Body condition score/), '5 of 9');
    await tabAndTick(page, page.getByLabel('Sound at walk and trot'));
    await tabAndPress(page, page.locator('summary', { hasText: 'Measurements' }));
    expect(await unitOf(page.getByLabel('Thigh girth, left hind', { exact: true }))).toBe('in');
    await page.keyboard.press('Enter');
    await tabAndPress(page, button('Grade the limbs'));
    await tabAndChoose(page, group('Left hind at trot'), 'grade 1');
    await tabAndChoose(page, group('Left hind at trot'), 'grade 0');
    await tabAndTick(page, page.getByLabel('No warning signs'));
    await tabAndChoose(page, group('Walk base'), 'Passed');
    // Enter leaves a list as it leaves a field, and nothing in it is chosen by that.
    const activity = page.getByLabel('Daily activity');
    const before = await activity.inputValue();
    for (const label of ['Daily activity', 'Condition for running']) {
      await page.keyboard.press('Enter');
      expect(await inFocus(page.getByLabel(label))).toBe(true);
    }
    expect(await activity.inputValue()).toBe(before);
    await tabAndTick(page, page.getByLabel('Nothing known'));
    await page.getByText('Ready to start').first().waitFor();
    await tabAndPress(page, button('Add a food'));
    await page.keyboard.type('Dry food');
    await tabAndType(page, page.getByLabel('Energy', { exact: true }), '360');
    await tabAndType(page, page.getByLabel('Amount a day'), '200');
    await tabAndType(page, page.getByLabel('Notes on the visit'), 'Shy of the treadmill.');
    await tabAndChoose(page, group('Your decision'), 'Accept');
    await tabAndPress(page, button('Save visit'));
    await heading('Tib').waitFor();
  });

  it('reads the weights off the chart by the arrow keys', async () => {
    const drawing = page.locator('.drawing.drawn').first();
    await tabTo(page, drawing);
    await page.keyboard.press('End');
    expect(await drawing.getByRole('status').textContent()).toContain('44.0');
  });

  it('reads the saved visit, goes on to its form and back', async () => {
    await tabAndPress(page, page.getByRole('link', { name: /open this intake/ }));
    await page.getByRole('heading', { level: 1, name: /^Intake of Tib, \d/ }).waitFor();
    const row = (label: string) =>
      page.getByRole('term').filter({ hasText: label }).locator('xpath=following-sibling::dd');
    expect(await row('Body weight').innerText()).toMatch(/^44\.0\slb$/);
    expect(await row('Reason for the referral').innerText()).toBe('Wants to run 5 km.');
    expect(await page.locator('main').getByRole('textbox').count()).toBe(0);
    expect(await axeViolations(page)).toEqual([]);
    await tabAndPress(page, link('Amend'));
    await page.getByRole('heading', { level: 2, name: 'Amendment' }).waitFor();
    await tabAndPress(page, button('Cancel'));
    await heading('Tib').waitFor();
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

  it.each([
    ['the reason it comes for', 'wants to run'],
    ['its diagnosis', 'PSOAS'],
    ['a note of a visit', 'treadmill'],
    ['its vet', 'wren'],
  ])('finds it by %s', async (_what, words) => {
    await page.keyboard.press('/');
    await page.waitForFunction(() => document.activeElement?.id === 'find-dog');
    await page.keyboard.type(words);
    await page.getByText(`1 dog found for “${words}”, in`).waitFor();
    await page.keyboard.press('Enter');
    await heading('Tib').waitFor();
  });
});

// The whole of a follow-up, from the desk to the paper in the owner's hand.
describe('a follow-up by keyboard alone', () => {
  let desk: TestDesk;
  let page: Page;
  let tally: () => Promise<Tally>;
  let complaints: readonly string[];
  /** Things to make up one's mind about on the way. */
  let decisions = 0;

  beforeAll(async () => {
    desk = await openDesk();
    ({ page, complaints } = await desk.open());
    await welcomePage(page).openDemonstration();
    tally = await countInput(page);
  });
  afterAll(() => desk?.close());

  const heading = (name: string) => page.getByRole('heading', { level: 1, name, exact: true });
  const focused = () =>
    page.evaluate(() => document.activeElement?.id || document.activeElement?.textContent?.trim());
  const press = async (...keys: readonly string[]) => {
    for (const key of keys) await page.keyboard.press(key);
  };
  const decide = () => {
    decisions++;
  };

  it('opens the dog that has come, and its form', async () => {
    decide();
    await press('/');
    await page.waitForFunction(() => document.activeElement?.id === 'find-dog');
    await page.keyboard.type('juno');
    await page.getByText('1 dog found').waitFor();
    await press('Enter');
    await heading('Juno').waitFor();
    decide();
    await press('v');
    await heading('Follow-up of Juno').waitFor();
  });

  it('takes down weight and score, with Enter from field to field', async () => {
    await page.waitForFunction(() => document.activeElement?.id === 'field-visit-weightKg');
    // What it ate at the last visit stands there already.
    expect(await page.getByLabel('Amount a day').first().inputValue()).toMatch(/^\d+$/);
    decide();
    await page.keyboard.type('29.2');
    await press('Enter');
    decide();
    await press('5');
    await page.getByText('5 of 9').waitFor();
    // Muscle, target weight and the aim stay as they are.
    await press('Enter', 'Enter', 'Enter', 'Enter');
    expect(await focused()).toContain('All done as planned');
  });

  it('tells every session since the last visit by one key', async () => {
    decide();
    await press('a');
    await page.getByText(/\d sessions: done as planned/).waitFor();
    await press('Enter');
    decide();
    await press('Space', 'Enter');
    expect(await page.getByLabel('Sound at walk and trot').isChecked()).toBe(true);
    decide();
    await press('Space');
    expect(await page.getByLabel('No warning signs').isChecked()).toBe(true);
    await page.getByText('Ready to start').first().waitFor();
    expect(await axeViolations(page)).toEqual([]);
  });

  it('accepts food and plan, which stand side by side with their reasons', async () => {
    // From inside a field, which the key leaves alone.
    await press('Alt+0');
    expect(await focused()).toBe('part-proposals');
    const plan = page.getByRole('group', { name: 'Your decision on the plan' });
    const food = page.getByRole('group', { name: 'Your decision on the food' });
    const [left, right] = [await plan.boundingBox(), await food.boundingBox()];
    expect(left!.x + left!.width).toBeLessThan(right!.x);
    await page.getByText('All done, sound, and normal within 24 h').waitFor();
    await press('Tab');
    expect(await focused()).toBe('Accept plan and food as proposed');
    decide();
    await press('Enter');
    expect(await plan.getByRole('radio', { name: 'Accept' }).isChecked()).toBe(true);
    expect(await food.getByRole('radio', { name: 'Accept' }).isChecked()).toBe(true);
    expect(await axeViolations(page)).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await axeViolations(page)).toEqual([]);
  });

  it('saves, and prints the sheets without leaving the page', async () => {
    const paper = await holdPrinting(page);
    const answer = page.waitForResponse('**/call/handouts/bundle');
    // Nothing is left to decide: the focus is at the button that saves.
    expect(await focused()).toBe('Save visit');
    await press('Tab');
    expect(await focused()).toBe('Save and print the sheets');
    decide();
    await press('Enter');
    const { value } = (await (await answer).json()) as { value: RenderedHandout };
    const text = pdfText(Buffer.from(value.base64, 'base64'));
    expect(text).toContain('Running plan for Juno');
    expect(text).toContain('Tinned food');
    await heading('The visit of Juno is saved').waitFor();
    await page.getByText(/^The sheets, .*given to the print window/).waitFor();
    // Every page of the sheets, and of nothing else, goes to the paper; then they are gone.
    const { pages } = value;
    expect(await paper()).toEqual({ pages, pictures: pages, left: 0 });
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save the PDF' }).dispatchEvent('click');
    expect((await readFile(await (await download).path())).toString('latin1', 0, 5)).toBe('%PDF-');
    await page.getByText(/^The sheets, .*handed over/).waitFor();
    expect(await axeViolations(page)).toEqual([]);
  });

  it('takes less than a minute, and no pointer', async () => {
    const { keys, pointers } = await tally();
    const seconds = keystrokeEstimate(keys, decisions);
    console.log(
      `Follow-up: ${keys} keys, ${pointers} pointer presses, ${decisions} decisions: ${seconds.toFixed(1)} s`,
    );
    expect(pointers).toBe(0);
    expect(keys).toBeGreaterThan(0);
    expect(seconds).toBeLessThan(60);
  });

  it('has kept the visit, its sessions, its food and its plan', async () => {
    await press('Tab', 'Tab', 'Enter');
    await heading('Juno').waitFor();
    // The change is that of the weights as they are shown.
    const weighings = page.getByRole('table', { name: /^Weighings/ }).locator('tbody tr');
    expect((await weighings.first().innerText()).replaceAll(/\s+/g, ' ')).toContain('29.2 −0.2');
    await press('p');
    await page.getByText(/Version 2, from a review/).waitFor();
    await page.getByText(/Told so far: \d+ sessions/).waitFor();
    expect(complaints).toEqual([]);
  });

  it('sets the visit beside the one before, and leaves only what differs', async () => {
    await page.goBack();
    await heading('Juno').waitFor();
    const together = page.getByRole('link', { name: 'The last two visits side by side' });
    await tabAndPress(page, together);
    await heading('Two visits of Juno').waitFor();
    const rows = page.locator('.line');
    await rows.first().waitFor();
    const row = async (label: string) =>
      (await rows.filter({ hasText: label }).first().innerText()).replaceAll(/\s+/g, ' ');
    expect(await row('Body weight')).toMatch(/≠.*differs .*29\.2 kg/);
    expect(await row('Walk base')).not.toContain('differs');
    expect(await axeViolations(page)).toEqual([]);
    const all = await rows.count();
    await tabAndPress(page, page.getByRole('button', { name: 'Only what differs' }));
    expect(await rows.count()).toBeLessThan(all);
    expect(await rows.filter({ hasNotText: 'differs' }).count()).toBe(0);
  });

  it('sends a dog that came back lame to its vet', async () => {
    await press('/');
    await page.waitForFunction(() => document.activeElement?.id === 'find-dog');
    await page.keyboard.type('bramble');
    await page.getByText('1 dog found').waitFor();
    await press('Enter');
    await heading('Bramble').waitFor();
    await press('v');
    await page.waitForFunction(() => document.activeElement?.id === 'field-visit-weightKg');
    await page.keyboard.type('27.5');
    // From the heading of a part no key reaches a field that it is not in.
    await press('Alt+2');
    expect(await focused()).toBe('part-weight');
    await press('7', '5', 'a', 's', 'Space');
    expect(await page.getByLabel('Body weight').inputValue()).toBe('27.5');
    expect(await page.getByRole('radio', { name: 'not scored' }).isChecked()).toBe(true);
    const button = (name: string) => page.getByRole('button', { name }).first();
    await tabAndPress(page, button('Grade the limbs'));
    await tabAndChoose(page, page.getByRole('group', { name: 'Left hind at trot' }), 'grade 2');
    await tabAndPress(page, button('All others sound'));
    await tabAndTick(page, page.getByLabel('No warning signs'));
    await page.getByText('Vet first').first().waitFor();
    // One’s own ration begins with the proposed one.
    const food = page.getByRole('group', { name: 'Your decision on the food' });
    const proposed = food.locator('xpath=preceding::p[contains(@class, "verdict")][1]');
    const kcal = /: ([\d,]+)\skcal/.exec(await proposed.innerText())?.[1];
    await tabAndChoose(page, food, 'Edit');
    expect(await page.getByLabel('Daily energy').inputValue()).toBe(kcal?.replace(',', ''));
    await press('Control+Enter');
    await heading('Bramble').waitFor();
    expect(complaints).toEqual([]);
  });

  it.each(['Plan stopped or waiting', 'Gaining weight'])(
    'shows it on the desk: %s',
    async (name) => {
      await press('/');
      await page.waitForFunction(() => document.activeElement?.id === 'find-dog');
      const filter = page.getByRole('button', { name });
      await tabAndPress(page, filter);
      const dogs = page.getByRole('table', { name: /^\d+ dogs?$/ }).getByRole('rowheader');
      await expect.poll(() => dogs.allInnerTexts()).toEqual([expect.stringContaining('Bramble')]);
      await press('Enter');
      await expect.poll(() => dogs.count()).toBe(4);
    },
  );
});
