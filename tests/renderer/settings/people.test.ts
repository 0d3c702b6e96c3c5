import type { VueWrapper } from '@vue/test-utils';
import { afterEach, describe, expect, it } from 'vitest';
import PeoplePart from '../../../renderer/settings/PeoplePart.vue';
import { usePeople } from '../../../renderer/stores/people.ts';
import { openOwn, type TestDesk } from '../../service/support/desk.ts';
import { dogOf, soundVisit } from '../../service/support/records.ts';
import { comesTrue, deskClient, mountAtDesk, press, shows } from '../support/atDesk.ts';

let open: VueWrapper | null = null;
afterEach(() => {
  open?.unmount();
  open = null;
});

async function peoplePart(given?: TestDesk) {
  const desk = given ?? (await openOwn());
  const mounted = await mountAtDesk(PeoplePart, deskClient(desk));
  open = mounted.wrapper;
  await usePeople().load();
  const practitioners = async () => (await desk.ok('practitioners/list', {})).practitioners;
  return { desk, part: mounted.wrapper, notice: mounted.notice, practitioners };
}
const field = (part: VueWrapper, name: string) => part.get(`#field-practitioner-${name}`);
const problem = (part: VueWrapper, name: string) =>
  comesTrue(async () =>
    expect(part.find(`#field-practitioner-${name}-problem`).exists()).toBe(true),
  ).then(() => part.get(`#field-practitioner-${name}-problem`).text());

async function add(part: VueWrapper, name: string, initials: string): Promise<void> {
  await press(part, 'Add somebody');
  await field(part, 'name').setValue(name);
  await field(part, 'initials').setValue(initials);
  await part.get('form').trigger('submit');
}

describe('the people of a practice', () => {
  it('are added one by one, and the focus goes where work goes on', async () => {
    const { part, notice, practitioners } = await peoplePart();
    expect(part.find('table').exists()).toBe(false);
    await press(part, 'Add somebody');
    expect(document.activeElement).toBe(field(part, 'name').element);
    await field(part, 'name').setValue('  Ada Sample ');
    await field(part, 'initials').setValue('AS');
    await part.get('form').trigger('submit');
    await shows(part, 'Add somebody');
    expect(notice.text).toBe('Ada Sample is saved.');
    expect(document.activeElement?.textContent).toBe('Add somebody');
    expect(part.findAll('tbody tr').map((row) => row.text())).toEqual([
      expect.stringMatching(/Ada Sample.*AS.*yes/),
    ]);
    expect(await practitioners()).toMatchObject([
      { name: 'Ada Sample', initials: 'AS', active: true },
    ]);
  });

  it('need a name and initials of 1 to 4 letters, said beside the field', async () => {
    const { part, practitioners } = await peoplePart();
    await add(part, '', 'AS');
    expect(await problem(part, 'name')).toBe('Name of the practitioner is needed.');
    await field(part, 'name').setValue('Ada Sample');
    await field(part, 'initials').setValue('ABCDE');
    await part.get('form').trigger('submit');
    expect(await problem(part, 'initials')).toMatch('1 to 4 letters');
    expect(await practitioners()).toEqual([]);
  });

  it('have initials of their own, whatever the case', async () => {
    const { part, practitioners } = await peoplePart();
    await add(part, 'Ada Sample', 'AS');
    await shows(part, 'Add somebody');
    await add(part, 'Ann Sample', 'as');
    expect(await problem(part, 'initials')).toMatch('AS is Ada Sample');
    expect(await practitioners()).toHaveLength(1);
  });

  it('who left stay on the list, and no longer work here', async () => {
    const { part, practitioners } = await peoplePart();
    await add(part, 'Ada Sample', 'AS');
    await shows(part, 'Add somebody');
    await press(part, 'Edit Ada Sample');
    expect((field(part, 'initials').element as HTMLInputElement).value).toBe('AS');
    await field(part, 'active').setValue(false);
    await press(part, 'Save changes');
    await shows(part, 'no longer');
    expect(await practitioners()).toMatchObject([{ name: 'Ada Sample', active: false }]);
  });

  it('keep initials that stand on an entry; Cancel changes nothing', async () => {
    const { desk, part, practitioners } = await peoplePart();
    await add(part, 'Ada Sample', 'AS');
    await shows(part, 'Add somebody');
    const { id } = await dogOf(desk, 'Dana Owner', 'Rusk');
    const visit = soundVisit(id, '2026-03-02');
    await desk.ok('visits/save', { id: null, visit, plan: null, food: null });
    await press(part, 'Edit Ada Sample');
    await field(part, 'initials').setValue('XY');
    await part.get('form').trigger('submit');
    expect(await problem(part, 'initials')).toMatch('AS already stands on entries');
    await press(part, 'Cancel');
    expect(part.find('form').exists()).toBe(false);
    expect(await practitioners()).toMatchObject([{ initials: 'AS' }]);
    // What was refused is not there when somebody else is added.
    await press(part, 'Add somebody');
    expect((field(part, 'initials').element as HTMLInputElement).value).toBe('');
    expect(part.text()).not.toContain('already stands');
  });
});
