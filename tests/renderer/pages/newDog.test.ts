import { describe, expect, it } from 'vitest';
import DogFormPage from '../../../renderer/pages/DogFormPage.vue';
import { openOwn } from '../../service/support/desk.ts';
import { comesTrue, deskClient, mountAtDesk, shows } from '../support/atDesk.ts';

describe('the sex of a new dog', () => {
  it('is chosen by hand: without it nothing is kept, and the field is named', async () => {
    const desk = await openOwn();
    const at = { path: '/dogs/new' };
    const { wrapper } = await mountAtDesk(DogFormPage, deskClient(desk), {}, at);
    await shows(wrapper, 'Owner and vet');
    const kept = async () => {
      const { dogs } = await desk.ok('dogs/find', { query: '' });
      const files = dogs.map(({ id }) => desk.ok('dogs/file', { dogId: id }));
      return (await Promise.all(files)).map(({ dog }) => dog.sex);
    };
    await wrapper.get('#field-dog-name').setValue('Momo');
    await wrapper.get('#field-dog-birthDay').setValue('2022-04-01');
    await wrapper.get('#field-client-name').setValue('Zoë Example');
    await wrapper.get('form').trigger('submit');
    await shows(wrapper, 'Sex is needed: choose female or male.');
    expect(wrapper.get('[role=alert] button').text()).toContain('Sex is needed');
    expect(await kept()).toEqual([]);

    await wrapper.findAll('input[name=field-dog-sex]')[1]!.trigger('change');
    expect(wrapper.text()).not.toContain('Sex is needed');
    await wrapper.get('form').trigger('submit');
    await comesTrue(async () => expect(await kept()).toEqual(['male']));
  });
});
