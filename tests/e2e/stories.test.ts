import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createDoor } from '../../electron/loopback/door.ts';
import { startHost } from '../../electron/loopback/host.ts';
import { openStories, play } from '../stories/play.ts';
import { readForms } from '../stories/readers/forms.ts';
import { STORIES } from '../stories/stories.ts';
import { expectOneStory, toldBy } from '../stories/told.ts';
import { someOf } from '../support/form.ts';
import { sharedBrowser } from './support/browser.ts';

// The forms of a visit in Chromium, served by the service that the stories were played through. The
// same forms are read after every story, without a browser, in tests/renderer/stories.test.ts.

const RENDERER = join(import.meta.dirname, '../../out/renderer');

describe('the form of a visit says where the dog stands', () => {
  const { desk, close } = openStories();
  let page: Page;

  beforeAll(async () => {
    page = await (await sharedBrowser()).newPage({ viewport: { width: 1280, height: 800 } });
  });
  afterAll(async () => {
    await page.close();
    await close();
  });

  test.for(someOf(STORIES, 8))('$name', async (story) => {
    const played = await play(desk, story);
    const host = await startHost({
      service: played.desk.service,
      door: createDoor(),
      rendererFolder: RENDERER,
    });
    try {
      const said = await readForms(page, played, (route) => host.newAddress(route));
      expect(said.size).toBeGreaterThan(0);
      expectOneStory(said, toldBy(played.file.state!, played.practice));
    } finally {
      await page.goto('about:blank');
      await host.close();
    }
  });
});
