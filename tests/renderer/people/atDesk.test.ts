import { flushPromises, type VueWrapper } from '@vue/test-utils';
import { afterEach, describe, expect, it } from 'vitest';
import type { Client } from '../../../renderer/api/client.ts';
import AtDesk from '../../../renderer/people/AtDesk.vue';
import { usePractice } from '../../../renderer/stores/practice.ts';
import { openOwn, type TestDesk } from '../../service/support/desk.ts';
import { comesTrue, deskClient, mountAtDesk, shows } from '../support/atDesk.ts';

const PASSPHRASE = 'eleven geese on a gate';

const ADA = { name: 'Ada Sample', initials: 'AS', active: true };
const BEN = { name: 'Ben Sample', initials: 'BS', active: true };

let open: VueWrapper | null = null;
afterEach(() => {
  open?.unmount();
  open = null;
});

async function practiceOf(...people: (typeof ADA)[]): Promise<TestDesk> {
  const desk = await openOwn();
  for (const practitioner of people) {
    await desk.ok('practitioners/save', { id: null, practitioner });
  }
  return desk;
}
async function atDesk(client: Client): Promise<VueWrapper> {
  ({ wrapper: open } = await mountAtDesk(AtDesk, client));
  return open;
}
const choices = (wrapper: VueWrapper) => wrapper.findAll('option').map((each) => each.text());

describe('who is at the desk', () => {
  it('is not asked where one works alone', async () => {
    const wrapper = await atDesk(deskClient(await practiceOf(ADA, { ...BEN, active: false })));
    await flushPromises();
    expect(wrapper.find('select').exists()).toBe(false);
  });

  it('is chosen among who works here, and can be nobody', async () => {
    const desk = await practiceOf(ADA, BEN, {
      ...ADA,
      name: 'Cay Gone',
      initials: 'CG',
      active: false,
    });
    const wrapper = await atDesk(deskClient(desk));
    await shows(wrapper, 'At the desk');
    expect(choices(wrapper)).toEqual(['nobody chosen', 'Ada Sample (AS)', 'Ben Sample (BS)']);
    const { practitioners } = await desk.ok('practitioners/list', {});
    const ben = practitioners.find(({ initials }) => initials === 'BS')!;
    await wrapper.get('select').setValue(ben.id);
    await comesTrue(async () =>
      expect((await desk.ok('practitioners/list', {})).atDesk).toBe(ben.id),
    );
    await wrapper.get('select').setValue('');
    await comesTrue(async () =>
      expect((await desk.ok('practitioners/list', {})).atDesk).toBeNull(),
    );
  });

  it('is not named while the records are locked, and is there again once they are open', async () => {
    const desk = await practiceOf(ADA, BEN);
    await desk.ok('lock/set', { passphrase: PASSPHRASE, present: null, idleMinutes: 5 });
    await desk.ok('lock/now', {});
    const practice = async () => {
      usePractice().take(await desk.ok('app/status', {}));
      await flushPromises();
    };
    const wrapper = await atDesk(deskClient(desk));
    await practice();
    expect(wrapper.find('select').exists()).toBe(false);
    await desk.ok('lock/open', { passphrase: PASSPHRASE });
    await practice();
    await shows(wrapper, 'At the desk');
    expect(choices(wrapper)).toContain('Ada Sample (AS)');
    await desk.ok('lock/now', {});
    await practice();
    expect(wrapper.text()).toBe('');
  });
});
