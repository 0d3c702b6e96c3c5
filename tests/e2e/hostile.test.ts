import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  blankClient,
  blankDog,
  blankPlanRequest,
  blankPractice,
  blankVisit,
} from '../../electron/contract/records/forms.ts';
import type { CallName, InputOf, ResultOf } from '../../electron/contract/contract.ts';
import { HOSTILE_NAMES, LONG_NOTES } from '../support/hostileTexts.ts';
import { lead } from './states/walk.ts';
import { someOf } from '../support/form.ts';
import { openDesk, type TestDesk } from './support/desk.ts';

const SOUND = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 };

interface HostileDog {
  readonly what: string;
  readonly name: string;
  readonly id: string;
  readonly clientId: string;
}

// Records full of what is no name, on the real pages in a real browser: it stays text, starts
// nothing, and leaves the page its width.
describe('names and notes that mean mischief', () => {
  let desk: TestDesk;
  let page: Page;
  let complaints: readonly string[];
  const dogs: HostileDog[] = [];
  let today: string;

  /** Asks the service as the page does, with the page's own key. */
  async function ask<N extends CallName>(name: N, input: InputOf<N>): Promise<ResultOf<N>> {
    const answer = await page.evaluate(
      async ({ path, body }) => {
        const key = sessionStorage.getItem('trotwell:key');
        const headers = { 'content-type': 'application/json', authorization: `Bearer ${key}` };
        const response = await fetch(path, { method: 'POST', headers, body });
        return response.json() as Promise<unknown>;
      },
      { path: `/call/${name}`, body: JSON.stringify(input) },
    );
    expect(answer).toMatchObject({ ok: true });
    return (answer as { value: ResultOf<N> }).value;
  }

  async function add(what: string, typed: string): Promise<void> {
    const dog = await ask('dogs/saveWithOwner', {
      client: { ...blankClient(), name: typed, vetName: typed, address: typed, notes: LONG_NOTES },
      dog: {
        ...blankDog('female'),
        name: typed,
        breed: typed,
        birthDay: '2021-05-01',
        notes: LONG_NOTES,
      },
    });
    await ask('visits/save', {
      id: null,
      visit: {
        ...blankVisit(dog.id, today),
        weightKg: 24,
        bcs: 5,
        lamenessWalk: SOUND,
        lamenessTrot: SOUND,
        walkBase: 'passed',
        gaitNote: typed,
        notes: LONG_NOTES,
        diet: [
          {
            name: typed,
            treat: false,
            kcalPer100g: 360,
            gramsPerDay: 300,
            gramsPerCup: null,
            fixedGrams: false,
            energyFrom: 'declared',
            label: null,
          },
        ],
      },
      plan: blankPlanRequest(today, 'unconditioned'),
      food: { decision: 'accepted', kcalPerDay: null, foodSwitch: null, note: typed },
    });
    dogs.push({ what, name: dog.name, id: dog.id, clientId: dog.clientId });
  }

  beforeAll(async () => {
    desk = await openDesk();
    ({ page, complaints } = await desk.open({ viewport: { width: 1024, height: 700 } }));
    ({ today } = await ask('app/open', { which: 'own' }));
    const typed = HOSTILE_NAMES.find(({ what }) => what === 'an image that runs a script')!.typed;
    await ask('practice/save', { ...blankPractice(), name: typed, practitioner: typed });
    for (const { what, typed: name } of HOSTILE_NAMES) await add(what, name);
    // The page has not heard of the practice that was opened behind its back.
    await page.goto('about:blank');
    await page.goto(`${new URL(desk.host.address).origin}/#/`);
    await page.locator('main table').first().waitFor();
  }, 120_000);
  afterAll(() => desk?.close());

  async function go(path: string, ready: string): Promise<void> {
    // By way of a page without a dog, so that nothing of the one before can be taken for this one.
    await lead(page, '/nowhere', 'There is no such page');
    await page.evaluate((hash) => (location.hash = hash), `#${path}`);
    await page.locator(`main ${ready}`).first().waitFor();
  }

  /** Nothing ran, nothing of the text became part of the page, and the page keeps its width. */
  async function assertHarmless(): Promise<void> {
    const seen = await page.evaluate(() => ({
      ran: 'hostile' in window,
      scripts: [...document.scripts].filter((script) => script.src === '').length,
      injected: document.querySelectorAll('img[src="x"], svg[onload], [onerror]').length,
      links: document.querySelectorAll('a[href^="javascript:"]').length,
      overflow: document.documentElement.scrollWidth - document.documentElement.clientWidth,
    }));
    expect(seen).toEqual({ ran: false, scripts: 0, injected: 0, links: 0, overflow: 0 });
  }

  const shown = (text: string): string => text.replace(/\s+/g, ' ').trim();

  it('stand in the list as they are', async () => {
    await go('/', 'table');
    const listed = await page.locator('main table a').allTextContents();
    for (const { name, what } of dogs) expect(listed.map(shown), what).toContain(shown(name));
    await assertHarmless();
  });

  it.each(someOf(HOSTILE_NAMES, 3))('head the page of the dog: $what', async ({ what }) => {
    const dog = dogs.find((one) => one.what === what)!;
    await go(`/dogs/${dog.id}`, 'h1');
    await page.waitForFunction(() => document.querySelector('main table') !== null);
    expect(shown(await page.locator('main h1').first().textContent().then(String))).toBe(
      shown(dog.name),
    );
    await assertHarmless();
  });

  it.each([
    'an image that runs a script',
    'the braces of a template',
    'a long name of wide letters',
  ])('are harmless on every other page: %s', async (what) => {
    const { id } = dogs.find((dog) => dog.what === what)!;
    for (const [path, ready] of [
      [`/dogs/${id}/edit`, 'form'],
      [`/dogs/${id}/visits/new`, '.follows'],
      [`/dogs/${id}/plan`, 'h1'],
      [`/dogs/${id}/heat`, 'table'],
      [`/dogs/${id}/handouts`, '.page-text span'],
      ['/settings', 'form'],
    ] as const) {
      await go(path, ready);
      await assertHarmless();
    }
  });

  it('are found by the search, as they were typed', async () => {
    await go('/', 'table');
    const typed = '<img src=x onerror="window.hostile=1">';
    await page.getByRole('searchbox').fill(typed);
    await page.getByRole('link', { name: typed, exact: true }).first().waitFor();
    await assertHarmless();
  });

  it('break no policy and raise no error', () => {
    expect(complaints).toEqual([]);
  });
});
