import { describe, expect, it } from 'vitest';
import { blankClient, blankDog } from '../../../electron/contract/records/forms.ts';
import ImportPage from '../../../renderer/pages/ImportPage.vue';
import { useShortcuts } from '../../../renderer/shortcuts/registry.ts';
import { openOwn, type TestDesk } from '../../service/support/desk.ts';
import { comesTrue, deskClient, mountAtDesk, pick, press, shows } from '../support/atDesk.ts';

const addDog = (desk: TestDesk, name: string, owner: string) =>
  desk.ok('dogs/saveWithOwner', {
    client: { ...blankClient(), name: owner },
    dog: { ...blankDog('female'), name, birthDay: '2022-04-01' },
  });

/** The key as the window hears it. */
const KEY_X = new KeyboardEvent('keydown', { key: 'x' });

const NAMELESS = 'day;kg\n2026-02-01;24\n2026-02-08;23.8\n';
const NAMED = 'dog;day;kg\nBess;2026-02-01;24\nTwin;2026-02-08;23.8\n';

/** The import page with a table at hand. */
async function importPage(desk: TestDesk, content: string, path = '/') {
  const client = deskClient(desk, () => ({ name: 'weights.csv', content }));
  const { wrapper } = await mountAtDesk(ImportPage, client, {}, { path });
  return wrapper;
}
const CHOOSE = 'Choose a table (CSV)';

describe('weights of one dog from a table', () => {
  it('of the dog whose page one comes from: chosen at once', async () => {
    const desk = await openOwn();
    const { id: dogId } = await addDog(desk, 'Bess', 'Zoë');
    const page = await importPage(desk, NAMED, `/import?dog=${dogId}`);
    await shows(page, 'Back to Bess');
    await press(page, CHOOSE);
    await shows(page, '2 new, 0 known');
    expect(page.text()).not.toContain('Column of the dog');
    await press(page, 'Keep 2 weighings');
    await shows(page, '2 weighings were added');
    const { weighings } = await desk.ok('dogs/file', { dogId });
    expect(weighings.map(({ weightKg }) => weightKg)).toEqual([24, 23.8]);
  });

  it('a table without names asks for the dog, which is found by typing', async () => {
    const desk = await openOwn();
    const { id: dogId } = await addDog(desk, 'Bess', 'Zoë');
    await addDog(desk, 'Rex', 'Ana');
    const page = await importPage(desk, NAMELESS);
    await press(page, CHOOSE);
    await shows(page, 'Choose the dog, and the columns of the day and the weight');
    await shows(page, 'with Ana');
    await page.get('#find-dog').setValue('bes');
    await comesTrue(async () => expect(page.text()).not.toContain('with Ana'));
    await pick(page, 'Bess');
    await press(page, 'Keep 2 weighings');
    await shows(page, '2 weighings were added');
    expect((await desk.ok('dogs/file', { dogId })).weighings).toHaveLength(2);
  });

  it('a table with names is read by them, until one dog is chosen for all rows', async () => {
    const desk = await openOwn();
    await addDog(desk, 'Bess', 'Zoë');
    const page = await importPage(desk, NAMED);
    await press(page, CHOOSE);
    await shows(page, '1 new, 0 known, 1 refused');
    await pick(page, 'All rows are of one dog');
    await pick(page, 'Bess');
    await shows(page, '2 new, 0 known');
    await pick(page, 'Of dogs the table names');
    await shows(page, '1 new, 0 known, 1 refused');
  });
});

describe('rows of a table that are not to be kept', () => {
  const BAD = 'day;kg\n2026-02-30;24\n2026-02-01;24\nsoon;24\n2026-02-08;23.8\n';

  async function badTable(content = BAD) {
    const desk = await openOwn();
    const { id: dogId } = await addDog(desk, 'Bess', 'Zoë');
    const page = await importPage(desk, content, `/import?dog=${dogId}`);
    await press(page, CHOOSE);
    const kept = async () => (await desk.ok('dogs/file', { dogId })).weighings;
    return { page, kept };
  }
  const focus = () => document.activeElement;

  it('are left out by one key each; what is left is kept', async () => {
    const { page, kept } = await badTable();
    await shows(page, '2 new, 0 known, 2 refused.');
    const { run } = useShortcuts().find(KEY_X, false)!;
    await run();
    await shows(page, '2 new, 0 known, 1 refused. Left out: 1.');
    await comesTrue(async () =>
      expect(focus()?.getAttribute('aria-label')).toBe('Leave out line 4'),
    );
    await run();
    await shows(page, '2 new, 0 known, 0 refused. Left out: 2.');
    await comesTrue(async () => expect(focus()?.textContent).toContain('Keep 2 weighings'));
    expect(useShortcuts().find(KEY_X, false)).toBeUndefined();
    await press(page, 'Keep 2 weighings');
    await shows(page, '2 weighings were added. Left out: 2.');
    expect((await kept()).map(({ day }) => day)).toEqual(['2026-02-01', '2026-02-08']);
  });

  it('are taken in again, and stand in the way again', async () => {
    const { page } = await badTable();
    await press(page, 'Leave out line 4');
    await shows(page, '1 refused. Left out: 1.');
    await press(page, 'Take in again, line 4');
    await shows(page, '2 new, 0 known, 2 refused.');
    await comesTrue(async () =>
      expect(focus()?.getAttribute('aria-label')).toBe('Leave out line 4'),
    );
  });

  it('may be slips, which are kept unless they are left out', async () => {
    const slip = 'day;kg\n2026-01-05;24\n2026-01-12;24\n2026-01-19;2.4\n2026-01-26;24\n';
    const { page } = await badTable(slip);
    await shows(page, 'Weights to look at: 1.');
    expect(page.get('tbody tr').text()).toMatch(
      /4.*far from the other weighings: check for a slip/,
    );
    await shows(page, 'Keep 4 weighings');
    await press(page, 'Leave out line 4');
    await shows(page, 'Keep 3 weighings');
    expect(page.text()).not.toContain('Weights to look at');
  });

  it('are all there again in another table', async () => {
    const { page } = await badTable();
    await press(page, 'Leave out line 2');
    await shows(page, '1 refused. Left out: 1.');
    await press(page, CHOOSE);
    await shows(page, '2 new, 0 known, 2 refused.');
  });
});

describe('the step of the scale', () => {
  it('is kept with every weighing, in the unit it is typed in', async () => {
    const desk = await openOwn();
    const { id: dogId } = await addDog(desk, 'Bess', 'Zoë');
    const page = await importPage(desk, NAMELESS, `/import?dog=${dogId}`);
    await press(page, CHOOSE);
    await shows(page, 'Step of the scale');
    await page.get('#field-entry-scaleStepKg').setValue('50 g');
    await press(page, 'Keep 2 weighings');
    await shows(page, '2 weighings were added');
    const { weighings } = await desk.ok('dogs/file', { dogId });
    expect(weighings.map(({ scaleStepKg }) => scaleStepKg)).toEqual([0.05, 0.05]);
  });

  it('out of its range: says the range beside the field, and offers nothing to keep', async () => {
    const desk = await openOwn();
    const { id: dogId } = await addDog(desk, 'Bess', 'Zoë');
    const page = await importPage(desk, NAMELESS, `/import?dog=${dogId}`);
    await press(page, CHOOSE);
    await shows(page, '2 new, 0 known');
    const field = page.get('#field-entry-scaleStepKg');
    await field.setValue('9 kg');
    await field.trigger('blur');
    await shows(page, 'Enter the step of the scale');
    expect(page.get('#field-entry-scaleStepKg-problem').text()).toMatch(/from 0\.001 to 5.kg/);
    expect(page.text()).not.toContain('Keep 2 weighings');
  });
});

describe('an import', () => {
  it('can be taken back after the page was left, until another one is run', async () => {
    const desk = await openOwn();
    const { id: dogId } = await addDog(desk, 'Bess', 'Zoë');
    const count = async () => (await desk.ok('dogs/file', { dogId })).weighings.length;
    const client = deskClient(desk, () => ({ name: 'weights.csv', content: NAMELESS }));
    const { wrapper: page, pinia } = await mountAtDesk(
      ImportPage,
      client,
      {},
      { path: `/import?dog=${dogId}` },
    );
    await press(page, CHOOSE);
    await press(page, 'Keep 2 weighings');
    await shows(page, 'Take the import back');
    page.unmount();
    const { wrapper: later } = await mountAtDesk(ImportPage, client, {}, { pinia });
    await shows(later, 'The latest import, of 2 weighings');
    await press(later, 'Take the import back');
    await shows(later, '2 weighings were removed');
    expect(await count()).toBe(0);
    expect(later.text()).not.toContain('The latest import');
  });
});
