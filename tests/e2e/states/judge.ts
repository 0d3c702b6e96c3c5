import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { axeViolations, violationsInDark } from '../support/axe.ts';
import { cutOff } from '../support/looks.ts';
import type { Shot, Walk } from './walk.ts';
import { goWalk } from './walks.ts';

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

/** Holds every state of these walks to axe, light and dark, and to the window. */
export function judgeStates(walks: readonly Walk[]): void {
  it.each(walks)(
    'every state of “$name” is without axe violations, light and dark',
    async (walk) => {
      const found: string[] = [];
      await goWalk(walk, { viewport: SMALL, reducedMotion: 'reduce' }, judge(found));
      expect(found).toEqual([]);
    },
  );
}
