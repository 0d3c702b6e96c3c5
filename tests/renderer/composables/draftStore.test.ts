import { beforeEach, expect, it } from 'vitest';
import type { Client } from '../../../renderer/api/client.ts';
import { draftsKept, draftStore } from '../../../renderer/composables/draftStore.ts';
import { openOwn } from '../../service/desk.ts';
import { deskClient } from '../support/atDesk.ts';

beforeEach(() => sessionStorage.clear());

/** A way to a real service on which drafts come late, as over a second connection. */
async function slowForDrafts() {
  const desk = await openOwn();
  const held = Promise.withResolvers<void>();
  const direct = deskClient(desk);
  const client: Client = {
    ...direct,
    async call(name, input) {
      if (name === 'drafts/put') await held.promise;
      return direct.call(name, input);
    },
  };
  const kept = async () => (await desk.ok('drafts/get', { key: 'dog:new' }))?.json ?? null;
  return { store: draftStore(client, 'own', 'dog:new'), client, kept, arrive: held.resolve };
}
const DRAFT = { values: { name: 'Bess' }, typed: {}, savedAt: '2026-03-02T09:00:00.000Z' };

it('drops a draft that is still on its way', async () => {
  const { store, kept, arrive } = await slowForDrafts();
  const sent = store.keepThere(DRAFT);
  const dropped = store.drop();
  arrive();
  await Promise.all([sent, dropped]);
  expect(await kept()).toBeNull();
});

it('tells when all drafts have arrived', async () => {
  const { store, client, kept, arrive } = await slowForDrafts();
  void store.keepThere(DRAFT);
  arrive();
  await draftsKept(client);
  expect(await kept()).toContain('Bess');
});
