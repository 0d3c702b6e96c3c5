import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { CHROMIUM_ARGS, findWholeChromium } from '../support/chromium.ts';
import { deskPage } from './pages/deskPage.ts';
import { dogFormPage } from './pages/dogFormPage.ts';
import { settingsPage } from './pages/settingsPage.ts';
import { welcomePage } from './pages/welcomePage.ts';
import { startHost, type Host } from './support/host.ts';

// What a browser keeps by itself (history, sessions, storage, caches, what was typed into fields) is
// beyond the reach of an erasure, so nothing of an owner may come to lie there in the first place.

/** Words that stand nowhere else in a browser. */
const OWNER = 'Quillonbeck Vantreuse';
const DOG = 'Zwirbelkugel';
const NOTE = 'Gleitfuss';

let folder: string;
let host: Host;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'trotwell-nothing-'));
  host = await startHost(join(folder, 'records'));
});
afterAll(async () => {
  await host?.stop();
  rmSync(folder, { recursive: true, force: true });
});

/** The files of a folder that hold one of the words, in either way a browser writes text. */
function filesWith(place: string, words: readonly string[]): string[] {
  const wanted = words.flatMap((word) => [Buffer.from(word), Buffer.from(word, 'utf16le')]);
  return readdirSync(place, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => join(parentPath, name))
    .filter((file) => {
      const bytes = readFileSync(file);
      return wanted.some((word) => bytes.includes(word));
    })
    .map((file) => file.slice(place.length + 1));
}

/** The addresses that the browser shows as its history. */
function shownHistory(profile: string): string[] {
  const database = new Database(join(profile, 'Default', 'History'), { readonly: true });
  const rows = database.prepare('SELECT url FROM urls WHERE hidden = 0').all() as { url: string }[];
  database.close();
  return rows.map(({ url }) => url);
}

/** Runs in the page: counts what its policy had to forbid. */
function countBreaches(): void {
  const page = globalThis as unknown as { breaches: string[] };
  page.breaches = [];
  addEventListener('securitypolicyviolation', ({ blockedURI }) => page.breaches.push(blockedURI));
}

async function newDog(page: Page): Promise<void> {
  await deskPage(page).add(DOG);
  await dogFormPage(page).fill({
    ...{ birthDay: '2022-03-04', sex: 'Female', adultWeight: '24' },
    ...{ owner: OWNER, vet: 'Dr C. Vet' },
  });
}

async function eraseOwner(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'More' }).click();
  await page.getByRole('menuitem', { name: /^Erase/ }).click();
  await page.getByLabel('The owner asked for it').check();
  await page.getByLabel('I have found out').check();
  await page.getByLabel('Name of the owner').fill(OWNER);
  await page.getByRole('button', { name: 'Erase for good' }).click();
  await page.getByRole('heading', { level: 1, name: 'The owner is erased' }).waitFor();
}

it('leaves no byte of an erased owner in the browser’s own files', async () => {
  const profile = join(folder, 'profile');
  const context = await chromium.launchPersistentContext(profile, {
    executablePath: findWholeChromium()!,
    args: CHROMIUM_ARGS,
    viewport: { width: 1280, height: 800 },
  });
  await context.addInitScript(countBreaches);
  const page = context.pages()[0] ?? (await context.newPage());
  const address = await host.newAddress();
  await page.goto(address);
  await welcomePage(page).startEmpty();
  await settingsPage(page).fill({
    'Name of the practice': 'Invented Practice',
    'Name of the practitioner': 'Kim Practitioner',
  });
  await settingsPage(page).save();
  await page.getByRole('button', { name: 'View' }).click();
  await page.getByLabel('Dogs’ names in the window’s title').uncheck();
  await page.keyboard.press('Escape');

  await newDog(page);
  // A draft outlives the page, and the page reads it back.
  await page.reload();
  await page.getByText(/Unsaved input of .* is back/).waitFor();
  expect(await page.getByLabel('Name of the owner').inputValue()).toBe(OWNER);
  await dogFormPage(page).save(DOG);
  await page.getByRole('link', { name: 'Start the intake' }).click();
  await page.getByLabel('Diagnosis').fill(NOTE);
  await page.getByRole('link', { name: 'Desk' }).click();
  await deskPage(page).open(DOG);
  expect(await page.title()).toBe('Dog · Trotwell');
  const breaches = await page.evaluate('breaches');
  await eraseOwner(page);
  await page.getByRole('link', { name: 'To the desk' }).click();
  await page.getByRole('heading', { level: 1, name: 'Desk' }).waitFor();
  // The browser writes some of its files late, and all of them at its end.
  await context.close();

  expect(filesWith(profile, [...OWNER.split(' '), DOG, NOTE])).toEqual([]);
  expect(filesWith(profile, ['trotwell'])).not.toEqual([]);
  expect(breaches).toEqual([]);
  const history = shownHistory(profile);
  expect(history).not.toEqual([]);
  expect(history.filter((url) => url.includes('start='))).toEqual([]);
}, 120_000);
