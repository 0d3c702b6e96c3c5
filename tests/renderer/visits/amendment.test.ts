import type { VueWrapper } from '@vue/test-utils';
import { afterEach, describe, expect, it } from 'vitest';
import { visitFactsOf } from '../../../electron/contract/records/facts.ts';
import VisitPage from '../../../renderer/pages/VisitPage.vue';
import { openOwn } from '../../service/support/desk.ts';
import { dogOf, seenWithPlan } from '../../service/support/records.ts';
import { comesTrue, deskClient, mountAtDesk, press, shows } from '../support/atDesk.ts';

let open: VueWrapper | null = null;
afterEach(() => {
  open?.unmount();
  open = null;
});

/** A saved visit with a plan and a food decision, open to be amended. */
async function amending() {
  const desk = await openOwn();
  const { id: dogId } = await dogOf(desk, 'Dana Owner', 'Rusk');
  const { visit } = await seenWithPlan(desk, dogId, '2026-03-02');
  const { wrapper } = await mountAtDesk(VisitPage, deskClient(desk), {
    dogId,
    visitId: visit.id,
    amends: true,
  });
  open = wrapper;
  await shows(wrapper, 'Amendment');
  return {
    desk,
    wrapper,
    part: () => wrapper.get('section.amend'),
    weigh: (kg: string) => wrapper.get('#field-visit-weightKg').setValue(kg),
    reason: (text: string) => wrapper.get('#field-reason').setValue(text),
    save: () => wrapper.get('form').trigger('submit'),
    stored: async () => (await desk.ok('dogs/file', { dogId })).visits[0]!,
    /** Somebody else, at another window. */
    async other(weightKg: number) {
      const now = (await desk.ok('dogs/file', { dogId })).visits[0]!;
      await desk.ok('visits/save', {
        id: now.id,
        basedOn: now.revision,
        reason: 'Read the scale again',
        visit: { ...visitFactsOf(now), weightKg },
        plan: null,
        food: null,
      });
    },
  };
}

describe('an amendment of a visit', () => {
  it('shows what it changes, and that what was decided stays', async () => {
    const { part, weigh } = await amending();
    expect(part().text()).toContain('Nothing is changed yet.');
    expect(part().text()).toMatch(/plan version 1 was made from the facts as they are stored now/);
    expect(part().text()).toMatch(/food decision of \d+\skcal\/day was made from the facts/);
    await weigh('23.4');
    await comesTrue(async () => expect(part().find('tbody tr').exists()).toBe(true));
    const cells = part()
      .findAll('tbody tr')
      .map((row) => row.text());
    expect(cells).toHaveLength(1);
    expect(cells[0]).toMatch(/Body weight.*24.*23\.4/);
  });

  it('needs a reason, named beside its field, and is kept with it', async () => {
    const { wrapper, part, weigh, reason, save, stored, desk } = await amending();
    await weigh('23.4');
    await save();
    await comesTrue(async () => expect(part().find('.problem').exists()).toBe(true));
    expect(part().get('.problem').text()).toMatch(/reason/i);
    expect((await stored()).weightKg).toBe(24);
    await reason('Wrote the wrong dog’s weight');
    await save();
    await comesTrue(async () => expect((await stored()).weightKg).toBe(23.4));
    const { id } = await stored();
    const history = await desk.ok('history/list', { kind: 'visit', recordId: id });
    expect(JSON.stringify(history)).toContain('Wrote the wrong dog’s weight');
    expect(wrapper.text()).not.toContain('Not saved');
  });
});

describe('a visit amended by two at once', () => {
  async function conflict() {
    const at = await amending();
    await at.weigh('23.4');
    await at.reason('Wrote the wrong weight');
    await at.other(23.9);
    await at.save();
    await shows(at.wrapper, 'Not saved. Everything you typed is still here.');
    expect((await at.stored()).weightKg).toBe(23.9);
    return at;
  }

  it('keeps what was typed, and shows both when asked', async () => {
    const { wrapper } = await conflict();
    const weight = wrapper.get<HTMLInputElement>('#field-visit-weightKg').element;
    expect(weight.value).toBe('23.4');
    await press(wrapper, 'Show what is stored now');
    await shows(wrapper, 'Stored now');
    expect(wrapper.get('.note.error tbody tr').text()).toMatch(/Body weight.*23\.9.*23\.4/);
  });

  it('is saved over when that is asked for', async () => {
    const { wrapper, stored } = await conflict();
    await press(wrapper, 'Save mine over it');
    await comesTrue(async () => expect((await stored()).weightKg).toBe(23.4));
  });

  it('is left as it is stored when that is asked for', async () => {
    const { wrapper, stored } = await conflict();
    await press(wrapper, 'Show what is stored now');
    await press(wrapper, 'Take what is stored, without mine');
    await comesTrue(async () => expect(wrapper.text()).not.toContain('Not saved'));
    await shows(wrapper, 'Nothing is changed yet.');
    const weight = wrapper.get<HTMLInputElement>('#field-visit-weightKg').element;
    expect(weight.value).toBe('23.9');
    expect((await stored()).weightKg).toBe(23.9);
  });
});
