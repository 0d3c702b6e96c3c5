import { describe, expect, it } from 'vitest';
import DogFormPage from '../../../renderer/pages/DogFormPage.vue';
import PlanPage from '../../../renderer/pages/PlanPage.vue';
import { openOwn, type TestDesk } from '../../service/support/desk.ts';
import { dogOf, seenWithPlan } from '../../service/support/records.ts';
import { comesTrue, deskClient, mountAtDesk, press, shows } from '../support/atDesk.ts';

/** The form of a new dog, with its name begun. */
async function begunDog(desk: TestDesk) {
  const mounted = await mountAtDesk(DogFormPage, deskClient(desk), {}, { path: '/dogs/new' });
  await shows(mounted.wrapper, 'Owner and vet');
  return mounted;
}
const nameIn = (page: Awaited<ReturnType<typeof begunDog>>['wrapper']) =>
  (page.get('#field-dog-name').element as HTMLInputElement).value;
const DRAFT = 'dog:new';
const kept = async (desk: TestDesk) => (await desk.ok('drafts/get', { key: DRAFT }))?.json ?? '';

describe('input that was discarded', () => {
  it('is taken back into its form', async () => {
    const desk = await openOwn();
    const first = await begunDog(desk);
    await first.wrapper.get('#field-dog-name').setValue('Bess');
    first.wrapper.unmount();
    const { wrapper: page, notice } = await begunDog(desk);
    await shows(page, 'Do without it');
    await press(page, 'Do without it');
    expect(nameIn(page)).toBe('');
    expect(notice.text).toBe('What was typed and not saved is discarded.');
    await notice.action!.run();
    await comesTrue(async () => expect(nameIn(page)).toBe('Bess'));
    page.unmount();
    await comesTrue(async () => expect(await kept(desk)).toContain('Bess'));
  });

  it('by leaving the form is taken back onto the form’s page', async () => {
    const desk = await openOwn();
    const { wrapper: page, notice, router } = await begunDog(desk);
    await page.get('#field-dog-name').setValue('Bess');
    await press(page, 'Cancel');
    await comesTrue(async () => expect(router.currentRoute.value.path).toBe('/'));
    await comesTrue(async () => expect(notice.action).not.toBeNull());
    expect(await kept(desk)).toBe('');
    page.unmount();
    await notice.action!.run();
    expect(router.currentRoute.value.path).toBe('/dogs/new');
    const { wrapper: again } = await begunDog(desk);
    await comesTrue(async () => expect(nameIn(again)).toBe('Bess'));
  });

  it('is not spoken of where nothing was typed', async () => {
    const desk = await openOwn();
    const { wrapper: page, notice, router } = await begunDog(desk);
    await press(page, 'Cancel');
    await comesTrue(async () => expect(router.currentRoute.value.path).toBe('/'));
    expect(notice.text).toBe('');
  });

  it('of changes to a plan by hand is taken back too', async () => {
    const desk = await openOwn();
    const { id: dogId } = await dogOf(desk, 'Odette Fenn', 'Bramble');
    await seenWithPlan(desk, dogId, '2026-03-02');
    const { wrapper: page, notice } = await mountAtDesk(PlanPage, deskClient(desk), { dogId });
    await press(page, 'Edit by hand');
    await shows(page, 'Save as a new version');
    await page.get('#field-edit-note').setValue('Fewer hills.');
    await press(page, 'Leave without saving');
    await comesTrue(async () => expect(notice.action).not.toBeNull());
    expect(await desk.ok('drafts/get', { key: `plan:${dogId}` })).toBeNull();
    const turn = notice.turn;
    await notice.action!.run();
    const draft = await desk.ok('drafts/get', { key: `plan:${dogId}` });
    expect(draft?.json).toContain('Fewer hills.');
    // The page is read again, and opens what was begun.
    expect(notice.turn).toBe(turn + 1);
  });
});
