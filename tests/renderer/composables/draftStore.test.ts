import { expect, it } from 'vitest';
import type { Client } from '../../../renderer/api/client.ts';
import {
  changedOver,
  draftsKept,
  draftStore,
  wouldLoseDrafts,
} from '../../../renderer/composables/draftStore.ts';
import { openOwn } from '../../service/support/desk.ts';
import { deskClient } from '../support/atDesk.ts';

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

it('what was typed while a draft was looked for stands above it, the rest comes back', () => {
  const began = { notes: '', visit: { weightKg: null as number | null, diet: [] as string[] } };
  const kept = { notes: 'old', visit: { weightKg: 23.1, diet: ['kibble'] } };
  const now = { notes: 'new', visit: { weightKg: null, diet: [] } };
  expect(changedOver(kept, began, now)).toEqual({ ...kept, notes: 'new' });
  const diet = { notes: '', visit: { weightKg: null, diet: ['rice'] } };
  expect(changedOver(kept, began, diet).visit).toEqual({ weightKg: 23.1, diet: ['rice'] });
  expect(changedOver(kept, began, began)).toEqual(kept);
});

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

/** A way to a real service that takes no drafts until it is told to. */
async function deafToDrafts() {
  const desk = await openOwn();
  const direct = deskClient(desk);
  const service = { hears: false };
  const client: Client = {
    ...direct,
    async call(name, input) {
      if (name !== 'drafts/put' || service.hears) return direct.call(name, input);
      return { ok: false, error: { kind: 'unreachable', message: 'No answer.' } };
    },
  };
  return { store: draftStore(client, 'own', 'dog:new'), client, service };
}

it('holds in the window what the service did not take, and says that it would be lost', async () => {
  const { store, client, service } = await deafToDrafts();
  store.keepHere(DRAFT);
  expect(wouldLoseDrafts(client)).toBe(false);
  expect(await store.keepThere(DRAFT)).toBe(false);
  expect(wouldLoseDrafts(client)).toBe(true);
  expect(await store.find()).toEqual(DRAFT);
  service.hears = true;
  expect(await store.keepThere(DRAFT)).toBe(true);
  expect(wouldLoseDrafts(client)).toBe(false);
  expect(await store.find()).toEqual(DRAFT);
  await store.drop();
  expect(await store.find()).toBeNull();
});

it('does not wait for its turn when the window is left, and is still dropped after it', async () => {
  const { store, kept, arrive } = await slowForDrafts();
  const first = store.keepThere(DRAFT);
  const last = store.keepThere({ ...DRAFT, values: { name: 'Bramble' } }, true);
  const dropped = store.drop();
  arrive();
  await Promise.all([first, last, dropped]);
  expect(await kept()).toBeNull();
});
