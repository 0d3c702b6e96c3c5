import type { VueWrapper } from '@vue/test-utils';
import { afterEach, describe, expect, it } from 'vitest';
import PlanPage from '../../../renderer/pages/PlanPage.vue';
import UnfinishedPart from '../../../renderer/desk/UnfinishedPart.vue';
import { openOwn, type TestDesk } from '../../service/support/desk.ts';
import { dogOf, seenWithPlan } from '../../service/support/records.ts';
import { comesTrue, deskClient, mountAtDesk, press, shows } from '../support/atDesk.ts';

/** The day the mounted program takes for today. */
const TODAY = '2025-03-29';
const START = '2025-03-17';

let open: VueWrapper | null = null;
function leave(): void {
  open?.unmount();
  open = null;
}
afterEach(leave);

async function dogWithPlan() {
  const desk = await openOwn(undefined, TODAY);
  const { id: dogId } = await dogOf(desk, 'Ada Sample', 'Bess');
  await seenWithPlan(desk, dogId, START);
  return { desk, dogId };
}

/** Opens the plan's page anew, as after the window was closed. */
async function planPage(desk: TestDesk, dogId: string): Promise<VueWrapper> {
  leave();
  ({ wrapper: open } = await mountAtDesk(PlanPage, deskClient(desk), { dogId }));
  await shows(open, 'Running plan of Bess');
  return open;
}

/** Waits until the service has a draft of that kind, and none of another. */
const kept = (desk: TestDesk, ...what: string[]) =>
  comesTrue(async () => {
    const drafts = await desk.ok('drafts/list', {});
    expect(drafts.map((line) => line.what).sort()).toEqual(what);
  });

/** Takes the last outing out of the plan by hand, and says why. */
async function removeLast(page: VueWrapper): Promise<void> {
  await press(page, 'Edit by hand');
  const removes = page.findAll('button').filter((each) => each.text() === 'Remove');
  await removes.at(-1)!.trigger('click');
  await shows(page, '1 change.');
  await page.get('#field-edit-note').setValue('Away that day.');
}
const note = (page: VueWrapper): string =>
  (page.get('#field-edit-note').element as HTMLInputElement).value;

describe('changes to a plan by hand', () => {
  it('come back with the page, say so, and can be done without', async () => {
    const { desk, dogId } = await dogWithPlan();
    await removeLast(await planPage(desk, dogId));
    await kept(desk, 'plan');

    const back = await planPage(desk, dogId);
    await shows(back, /Unsaved input of .* is back/);
    await shows(back, '1 change.');
    expect(note(back)).toBe('Away that day.');
    await press(back, 'Do without it');
    await shows(back, 'Nothing is changed yet.');
    expect(note(back)).toBe('');
    await kept(desk);
  });

  it('are no draft any more once they are saved, or left', async () => {
    const { desk, dogId } = await dogWithPlan();
    const page = await planPage(desk, dogId);
    await removeLast(page);
    await kept(desk, 'plan');
    await press(page, 'Save as a new version');
    await shows(page, 'Version 2');
    await kept(desk);
    await removeLast(page);
    await kept(desk, 'plan');
    await press(page, 'Leave without saving');
    await kept(desk);
    expect((await planPage(desk, dogId)).text()).not.toContain('Edit the weeks');
  });

  it('begun on an earlier version are left out, and that is said; the note stays', async () => {
    const { desk, dogId } = await dogWithPlan();
    await removeLast(await planPage(desk, dogId));
    await kept(desk, 'plan');
    leave();
    const { plans } = await desk.ok('dogs/file', { dogId });
    const day = plans[0]!.ramp.weeks.at(-1)!.sessions.at(-1)!.day;
    const edits = [{ kind: 'remove' as const, day }];
    await desk.ok('plans/edit', { dogId, edits, kept: [], note: '' });

    const back = await planPage(desk, dogId);
    await shows(back, '1 change begun on an earlier version no longer fit');
    await shows(back, 'Nothing is changed yet.');
    expect(note(back)).toBe('Away that day.');
  });

  it('taken back one by one leave no draft', async () => {
    const { desk, dogId } = await dogWithPlan();
    const page = await planPage(desk, dogId);
    await removeLast(page);
    await kept(desk, 'plan');
    await press(page, 'Undo the last change');
    await page.get('#field-edit-note').setValue('');
    await kept(desk);
  });
});

describe('what is told of a run', () => {
  const words = (page: VueWrapper) => page.get<HTMLTextAreaElement>('[id$="-note"]');

  it('comes back before it is kept, and is no draft afterwards', async () => {
    const { desk, dogId } = await dogWithPlan();
    const page = await planPage(desk, dogId);
    await press(page, 'Something wrong, or more to tell X');
    await words(page).setValue('Pulled hard, then lay down.');
    await kept(desk, 'session');

    const back = await planPage(desk, dogId);
    await shows(back, /Unsaved input of .* is back/);
    expect(words(back).element.value).toBe('Pulled hard, then lay down.');
    await press(back, 'Keep');
    await kept(desk);
    const { sessions } = await desk.ok('dogs/file', { dogId });
    expect(sessions).toMatchObject([{ note: 'Pulled hard, then lay down.' }]);
    expect((await planPage(desk, dogId)).text()).not.toContain('is back');
  });

  it('is no draft while nothing is typed', async () => {
    const { desk, dogId } = await dogWithPlan();
    const page = await planPage(desk, dogId);
    await press(page, 'Something wrong, or more to tell X');
    await words(page).setValue('a');
    await kept(desk, 'session');
    await words(page).setValue('');
    await kept(desk);
  });
});

describe('the unfinished part of the desk', () => {
  it('names both and leads to the plan', async () => {
    const { desk, dogId } = await dogWithPlan();
    for (const key of [`plan:${dogId}`, `session:${dogId}:2025-03-19`]) {
      await desk.ok('drafts/put', { key, json: '{}' });
    }
    const lines = await desk.ok('drafts/list', {});
    ({ wrapper: open } = await mountAtDesk(UnfinishedPart, deskClient(desk), { lines }));
    const links = open.findAll('a').map((link) => [link.text(), link.attributes('href')]);
    expect(links.sort()).toEqual([
      ['Changes to the plan of Bess', `/dogs/${dogId}/plan`],
      ['What was told of Bess’s run on 2025-03-19', `/dogs/${dogId}/plan`],
    ]);
  });
});
