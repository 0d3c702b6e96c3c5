import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { someOf } from '../support/form.ts';
import type { Shot } from './states/walk.ts';
import { goWalk, WALKS } from './states/walks.ts';
import { axeViolations, violationsInDark } from './support/axe.ts';
import { cutOff } from './support/looks.ts';

/** What fits here fits a larger window. */
const SMALL = { width: 1024, height: 700 };

/** Judges each state in light, and its colours in dark as well: nothing else differs. */
function judge(found: string[]): (page: Page) => Shot {
  return (first) =>
    async (name, { same = false, page = first } = {}) => {
      if (same) return;
      const light = [...(await axeViolations(page)), ...(await cutOff(page))];
      const dark = await violationsInDark(page);
      found.push(...dark.map((line) => `${name}, dark: ${line}`));
      found.push(...light.map((line) => `${name}: ${line}`));
    };
}

it.each(someOf(WALKS, 5))(
  'every state of “$name” is without axe violations, light and dark, and fits the window',
  async (walk) => {
    const found: string[] = [];
    await goWalk(walk, { viewport: SMALL, reducedMotion: 'reduce' }, judge(found));
    expect(found).toEqual([]);
  },
);
