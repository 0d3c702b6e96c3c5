import type { Locator, Page } from 'playwright-core';

const MOST_STOPS = 250;

/** Presses Tab until `target` (or the checked radio of its group) has the focus. */
export async function tabTo(page: Page, target: Locator): Promise<void> {
  await target.waitFor({ state: 'attached' });
  for (let stop = 0; stop < MOST_STOPS; stop++) {
    if (await target.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Not reached by ${MOST_STOPS} presses of Tab: ${target}`);
}

/** Reaches a field by Tab and types into it. */
export async function tabAndType(page: Page, target: Locator, text: string): Promise<void> {
  await tabTo(page, target);
  await page.keyboard.type(text);
}

/** Reaches a button or link by Tab and presses Enter. */
export async function tabAndPress(page: Page, target: Locator): Promise<void> {
  await tabTo(page, target);
  await page.keyboard.press('Enter');
}

/** Reaches a box by Tab and ticks it. */
export async function tabAndTick(page: Page, target: Locator): Promise<void> {
  await tabTo(page, target);
  await page.keyboard.press('Space');
}

/** Reaches a radio group by Tab and moves to `option` by the arrow keys. */
export async function tabAndChoose(page: Page, group: Locator, option: string): Promise<void> {
  const radios = group.getByRole('radio');
  const count = await radios.count();
  const checked = group.getByRole('radio', { checked: true });
  await tabTo(page, (await checked.count()) > 0 ? checked : radios.first());
  for (let step = 0; step <= count; step++) {
    const name = group.getByRole('radio', { name: option });
    if (await name.first().isChecked()) return;
    await page.keyboard.press('ArrowRight');
  }
  throw new Error(`Not reached by the arrow keys: ${option}`);
}
