import { afterAll, describe, expect, test } from 'vitest';
import { LANGUAGES } from '../../electron/contract/records.ts';
import { someOf } from '../support/form.ts';
import { openStories, play } from './play.ts';
import { readDesk } from './readers/desk.ts';
import { readPrintout } from './readers/printout.ts';
import { readOwnersSheets, readProfessionalSheets } from './readers/sheets.ts';
import { STORIES } from './stories.ts';
import { expectOneStory, toldBy } from './told.ts';

const { desk, close } = openStories();
afterAll(close);

describe('the desk, the printout and every sheet in every language say where the dog stands', () => {
  // In the short form each story is printed in one of the languages, in each run in another.
  const stories = STORIES.map((story, index) => ({ ...story, index }));
  test.for(stories)('$name', async ({ index, ...story }) => {
    const played = await play(desk, story);
    expect(played.file.state).not.toBeNull();
    const said = new Map(await readProfessionalSheets(played));
    for (const [place, told] of await readDesk(played)) said.set(place, told);
    said.set('the demonstration’s printout', readPrintout(played));
    for (const language of someOf(LANGUAGES, LANGUAGES.length, index)) {
      for (const [place, told] of await readOwnersSheets(played, language)) said.set(place, told);
    }
    expectOneStory(said, toldBy(played.file.state!, played.practice));
  });
});
