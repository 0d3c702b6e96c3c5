import type { VueWrapper } from '@vue/test-utils';
import { afterAll, describe, expect, it } from 'vitest';
import DogPage from '../../renderer/pages/DogPage.vue';
import PlanPage from '../../renderer/pages/PlanPage.vue';
import { openStories, play, type Played } from '../stories/play.ts';
import { isoDay } from '../stories/readers/sheets.ts';
import { STORIES } from '../stories/stories.ts';
import { expectOneStory, toldBy, type Told } from '../stories/told.ts';
import { deskClient, mountAtDesk, shows } from './support/atDesk.ts';

// The pages of a dog, mounted on the service that the stories were played through.

const { desk, close } = openStories();
afterAll(close);

const OUTCOMES = {
  'is ready to run': 'ready to start',
  'should only walk for now': 'walking only',
  'should see the vet before running': 'vet first',
} as const;

const outcomeIn = (text: string): string | undefined =>
  Object.entries(OUTCOMES).find(([words]) => text.includes(words))?.[1];

/** What is said of the programme in words, on either page. */
function programmeIn(text: string): Told['programme'] {
  if (/The plan waits|Running is stopped/.test(text)) return 'held';
  if (text.includes('The plan has come to its end')) return 'finished';
  if (/of the walking programme|The walking programme begins/.test(text)) return 'walking';
  return /Week \d+ of \d+ of the plan|The plan begins on/.test(text) ? 'running' : 'none';
}

const plain = (text: string): string => text.replaceAll(/\s+/g, ' ');

/** What stands under a name; empty where the page has nothing of it. */
function partOf(wrapper: VueWrapper, id: string): string {
  const part = wrapper.find(`[aria-labelledby="story-${id}"]`);
  return part.exists() ? plain(part.get('.body').text()) : '';
}

function programmeOf(text: string): Told {
  const week = /Week (\d+) of (\d+) of the (?:plan|walking programme)/.exec(text);
  return {
    programme: programmeIn(text),
    ...(week === null ? {} : { week: Number(week[1]), lastWeek: Number(week[2]) }),
  };
}

async function readDogPage({ desk: at, file, practice }: Played): Promise<Told> {
  const { wrapper } = await mountAtDesk(
    DogPage,
    deskClient(at),
    { dogId: file.dog.id },
    { settings: practice },
  );
  await shows(wrapper, /should|is ready to run/);
  const plan = partOf(wrapper, 'plan');
  const food = partOf(wrapper, 'food');
  const weight = partOf(wrapper, 'weight');
  const outcome = outcomeIn(partOf(wrapper, 'stands'));
  wrapper.unmount();
  const day = (text: string | undefined) =>
    text === undefined ? undefined : isoDay(text, practice.dayFormat);
  const goal = /(?:first on|limits is) (?:\p{L}+ )?(\d[\d./-]+\d)\./u.exec(plan);
  const next = /Next outing (?:today|\p{L}+ (\d[\d./-]+\d)):/u.exec(plan);
  const kcal = /([\d,]+) (kcal|kJ)\/day/.exec(food);
  const again = /Weigh again: (?:(today)|\p{L}+ (\d[\d./-]+\d))/u.exec(weight);
  const target = /the target of (\d+\.\d (?:kg|lb))/.exec(weight);
  return {
    outcome,
    ...programmeOf(plan),
    ...(next === null ? {} : { nextOuting: day(next[1]) ?? file.state!.day }),
    kcal: food === '' ? null : kcal?.slice(1).join(' '),
    weight: /^(\d+\.\d (?:kg|lb))/.exec(weight)?.[1],
    target: target?.[1] ?? null,
    condition: Number(/condition (\d) of 9/.exec(weight)?.[1] ?? NaN) || null,
    nextWeighIn: again?.[1] === undefined ? day(again?.[2]) : file.state!.day,
    ...(goal === null ? {} : { goalDay: day(goal[1]) }),
  };
}

async function readPlanPage({ desk: at, file, practice }: Played): Promise<Told> {
  const { wrapper } = await mountAtDesk(
    PlanPage,
    deskClient(at),
    { dogId: file.dog.id },
    { settings: practice },
  );
  await shows(wrapper, 'Load and stages');
  const lead = plain(wrapper.get('.lead').text());
  const stages = plain(wrapper.get('.stages').text());
  const goal = /(?:first on|limits is) (?:\p{L}+ )?(\d[\d./-]+\d)\b/u.exec(`${lead} ${stages}`);
  const week = wrapper.find('#plan-weeks ~ * tr.current .nowrap');
  const { programme } = file.state!;
  const held = programme.kind === 'waiting' && ['vet', 'walking'].includes(programme.for);
  // Only a stop is taken over while the screening holds the plan.
  if (held && !wrapper.text().includes('Stop: the vet first')) {
    expect(wrapper.text()).not.toContain('Take it over');
  }
  wrapper.unmount();
  return {
    programme: programmeIn(lead),
    week: week.exists() ? Number(week.text()) : null,
    ...(goal === null ? {} : { goalDay: isoDay(goal[1]!, practice.dayFormat) }),
  };
}

describe('the pages of a dog say where it stands', () => {
  it.each(STORIES)('$name', async (story) => {
    const played = await play(desk, story);
    const { state, plans } = played.file;
    expect(state).not.toBeNull();
    const said = new Map([['the dog page', await readDogPage(played)]]);
    if (plans.length > 0) said.set('the plan page', await readPlanPage(played));
    expectOneStory(said, toldBy(state!, played.practice));
  });
});
