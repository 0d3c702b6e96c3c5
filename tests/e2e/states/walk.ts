import type { Locator, Page } from 'playwright-core';
import type { TestDesk } from '../support/desk.ts';

/** How a state is to be looked at. */
export interface Look {
  /** The whole page, beyond the edge of the window. */
  readonly whole?: boolean;
  /** What is to be in sight. */
  readonly at?: Locator;
  /** A window of its own. */
  readonly page?: Page;
  /** The state before, only another part of it in sight: nothing to judge anew. */
  readonly same?: boolean;
}

/** Looks at the page as it stands: takes pictures of it, or judges it. Each name comes once. */
export type Shot = (name: string, look?: Look) => Promise<void>;

/** A way through the program, with a stop at every state on it. */
export interface Walk {
  readonly name: string;
  /** A fresh machine, the demonstration, or an own practice with the dog Rusk. */
  readonly from: 'nothing' | 'demonstration' | 'own';
  go(page: Page, shot: Shot, desk: TestDesk): Promise<void>;
}

export const heading = (page: Page, name: string | RegExp): Promise<void> =>
  page.getByRole('heading', { level: 1, name, exact: true }).waitFor();

/** Leads to a page by its address, as a link of the program does. */
export async function lead(page: Page, path: string, title: string | RegExp): Promise<void> {
  await page.evaluate((hash) => (location.hash = hash), `#${path}`);
  await heading(page, title);
}

/** A dog of the demonstration, its chart drawn. */
export async function openDog(page: Page, dog: string): Promise<void> {
  await lead(page, '/', 'Desk');
  await page.getByRole('link', { name: dog, exact: true }).first().click();
  await heading(page, dog);
  await page.locator('main h2').first().waitFor();
}

export async function openBramble(page: Page): Promise<void> {
  await openDog(page, 'Bramble');
  await page.locator('.drawing.drawn').first().waitFor();
}
