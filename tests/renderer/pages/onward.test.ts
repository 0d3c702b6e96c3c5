import { flushPromises } from '@vue/test-utils';
import { describe, expect, it } from 'vitest';
import type { Client } from '../../../renderer/api/client.ts';
import DogFormPage from '../../../renderer/pages/DogFormPage.vue';
import { openOwn } from '../../service/support/desk.ts';
import { comesTrue, deskClient, mountAtDesk, shows } from '../support/atDesk.ts';

/** A gate that is shut until it is opened. */
function gate() {
  let open!: () => void;
  const opened = new Promise<void>((resolve) => {
    open = resolve;
  });
  return { open, opened };
}

/** The form of a new dog, filled in; its save waits at the gate. */
async function savingDog() {
  const desk = await openOwn();
  const saved = gate();
  const direct = deskClient(desk);
  const client: Client = {
    ...direct,
    async call(name, input) {
      if (name === 'dogs/saveWithOwner') await saved.opened;
      return direct.call(name, input);
    },
  };
  const { wrapper, router } = await mountAtDesk(DogFormPage, client, {}, { path: '/dogs/new' });
  await shows(wrapper, 'Owner and vet');
  await wrapper.get('#field-dog-name').setValue('Bess');
  await wrapper.get('#field-dog-birthDay').setValue('2022-04-01');
  await wrapper.get('#field-dog-sex').trigger('change');
  await wrapper.get('#field-client-name').setValue('Zoë Example');
  await wrapper.get('form').trigger('submit');
  await shows(wrapper, 'Saving…');
  const kept = () =>
    comesTrue(async () => expect((await desk.ok('dogs/find', { query: '' })).count).toBe(1));
  const stays = () => comesTrue(async () => expect(wrapper.text()).not.toContain('Saving…'));
  return { router, saved, kept, stays };
}
const at = (router: { currentRoute: { value: { path: string } } }) =>
  router.currentRoute.value.path;

describe('after Save on the form of a dog', () => {
  it('leads to the dog’s page', async () => {
    const { router, saved, kept } = await savingDog();
    saved.open();
    await kept();
    await comesTrue(async () => expect(at(router)).toMatch(/^\/dogs\/[0-9a-f-]{36}$/));
  });

  it('whoever went to another page meanwhile stays there; the dog is kept all the same', async () => {
    const { router, saved, kept, stays } = await savingDog();
    await router.push('/science');
    saved.open();
    await kept();
    await stays();
    await flushPromises();
    expect(at(router)).toBe('/science');
  });

  it('whoever is on the way to a page whose code is still loading gets there', async () => {
    const { router, saved, kept, stays } = await savingDog();
    const loaded = gate();
    router.beforeResolve(() => loaded.opened);
    const going = router.push('/science');
    saved.open();
    await kept();
    await stays();
    await flushPromises();
    loaded.open();
    await going;
    expect(at(router)).toBe('/science');
  });

  it('a way that was not taken after all does not count as leaving', async () => {
    const { router, saved, kept } = await savingDog();
    const unguard = router.beforeEach(() => false);
    await router.push('/science');
    unguard();
    saved.open();
    await kept();
    await comesTrue(async () => expect(at(router)).toMatch(/^\/dogs\/[0-9a-f-]{36}$/));
  });
});
