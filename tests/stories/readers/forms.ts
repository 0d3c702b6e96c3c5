import type { Locator, Page } from 'playwright-core';
import type { Played } from '../play.ts';
import type { Told } from '../told.ts';

// Reads the form of a visit as it opens, in a real browser: what follows from it, and what it holds.

const OUTCOMES = {
  'Ready to start': 'ready to start',
  'Walking only': 'walking only',
  'Vet first': 'vet first',
} as const;

const plain = (text: string): string => text.replaceAll(/\s+/g, ' ');

/** What the panel beside the form says of running; undefined where it says nothing. */
const outcomeIn = (panel: string): string | undefined =>
  Object.entries(OUTCOMES).find(([words]) => panel.includes(words))?.[1];

/** The follow-up form before anything is filled in: nothing may follow from what was not looked at. */
async function readNewForm(page: Page, { file }: Played): Promise<Told> {
  const state = file.state!;
  const panel = plain(await page.getByRole('complementary', { name: 'What follows' }).innerText());
  const decisions = plain(await page.locator('section:has(#part-proposals)').innerText());
  const weight = /With the last weight, (\d+\.\d (?:kg|lb))\./.exec(panel)?.[1];
  const isHeld = /Stop: the vet first|walk base has to be passed/.test(decisions);
  const onPlan = state.programme.kind !== 'none';
  return {
    weight,
    // Without a plan the gait has to be seen anew before any start, and the form says so.
    ...(onPlan ? { outcome: outcomeIn(panel) } : {}),
    ...(onPlan && isHeld ? { programme: 'held' } : {}),
  };
}

/** The last visit as it is read on its own day: its verdict is that of the record. */
async function readKeptVisit(page: Page): Promise<Told> {
  const verdict = page.locator('[data-outcome]').first();
  return { outcome: (await verdict.getAttribute('data-outcome')) ?? undefined };
}

/** The last visit, opened again on its own day: what followed from it still does. */
async function readKeptForm(page: Page): Promise<Told> {
  const panel = plain(await page.getByRole('complementary', { name: 'What follows' }).innerText());
  return { outcome: outcomeIn(panel) };
}

/** Both forms of a dog, and its last visit as it is read; `addressOf` opens a page of the program. */
export async function readForms(
  page: Page,
  played: Played,
  addressOf: (route: string) => string,
): Promise<Map<string, Told>> {
  const { dog, visits, state } = played.file;
  const last = visits.at(-1)!;
  const said = new Map<string, Told>();
  const open = async (visit: string, ready: Locator): Promise<void> => {
    await page.goto('about:blank');
    await page.goto(addressOf(`/dogs/${dog.id}/visits/${visit}`));
    await ready.waitFor();
  };
  const panel = page.getByRole('complementary', { name: 'What follows' });
  await open('new', panel);
  said.set('the follow-up form', await readNewForm(page, played));
  // What came after the visit is none of its form's.
  if (last.day !== state!.day) return said;
  await open(last.id, page.getByRole('heading', { name: 'Verdict and decisions' }));
  said.set('the last visit as it is read', await readKeptVisit(page));
  await open(`${last.id}/amend`, panel);
  said.set('the form of the last visit', await readKeptForm(page));
  return said;
}
