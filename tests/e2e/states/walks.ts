import type { BrowserContextOptions, Page } from 'playwright-core';
import { welcomePage } from '../pages/welcomePage.ts';
import { openDesk, type TestDesk } from '../support/desk.ts';
import { startPracticeWith } from '../support/ownPractice.ts';
import { binWalk } from './bin.ts';
import { deskWalk } from './desk.ts';
import { dogWalk } from './dog.ts';
import { firstWalk } from './first.ts';
import { planWalk } from './plan.ts';
import { recordsWalk } from './records.ts';
import { settingsWalk } from './settings.ts';
import { damageWalk, troubleWalk } from './trouble.ts';
import { savedVisitWalk, visitWalk } from './visit.ts';
import { type Shot, type Walk } from './walk.ts';

/**
 * Together they come by every page and state: the pictures are taken, and axe is run, on all. Each
 * fifth (tests/e2e/everyState.test.ts) takes about as long.
 */
export const WALKS: readonly Walk[] = [
  visitWalk,
  savedVisitWalk,
  recordsWalk,
  planWalk,
  dogWalk,
  damageWalk,
  settingsWalk,
  troubleWalk,
  deskWalk,
  firstWalk,
  binWalk,
];

/** Goes a walk on a machine of its own; `shotOf` makes what looks at the page. */
export async function goWalk(
  walk: Walk,
  options: BrowserContextOptions,
  shotOf: (page: Page) => Shot,
): Promise<void> {
  const desk: TestDesk = await openDesk();
  try {
    const { page } = await desk.open(options, walk.from === 'nothing');
    if (walk.from === 'demonstration') await welcomePage(page).openDemonstration();
    if (walk.from === 'own') await startPracticeWith(page, 'Rusk');
    await walk.go(page, shotOf(page), desk);
  } finally {
    await desk.close();
  }
}
