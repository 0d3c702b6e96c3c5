import { DOMWrapper } from '@vue/test-utils';
import { describe, expect, it, vi } from 'vitest';
import { blankClient, blankDog } from '../../../electron/contract/records/forms.ts';
import type { WeighingInput } from '../../../electron/contract/weighings/weighing.ts';
import DogPage from '../../../renderer/pages/DogPage.vue';
import { openOwn } from '../../service/support/desk.ts';
import { comesTrue, deskClient, mountAtDesk, press, shows } from '../support/atDesk.ts';

const weighing = (changes: Partial<WeighingInput> = {}): WeighingInput => ({
  day: '2026-02-09',
  weightKg: 23.8,
  weighingMethod: 'same scale',
  scaleStepKg: 0.1,
  note: '',
  ...changes,
});

/** The dog's page, with the dialog open that amends its one weighing. */
async function amending() {
  const desk = await openOwn();
  const { id: dogId } = await desk.ok('dogs/saveWithOwner', {
    client: { ...blankClient(), name: 'Zoë Example' },
    dog: { ...blankDog('female'), name: 'Bess', birthDay: '2022-04-01' },
  });
  const saved = await desk.ok('weighings/save', { dogId, weighing: weighing() });
  const { wrapper: page } = await mountAtDesk(DogPage, deskClient(desk), { dogId });
  await shows(page, 'weighed once');
  const opener = page.findAll('button').find((each) => each.text() === 'Amend')!;
  await opener.trigger('click');
  // The dialog is moved to the end of the body.
  const dialog = new DOMWrapper(
    await vi.waitFor(() => {
      const found = document.body.querySelectorAll('[role="dialog"]');
      expect(found.length).toBeGreaterThan(0);
      return [...found].at(-1)!;
    }),
  );
  const says = (words: string) => comesTrue(async () => expect(dialog.text()).toContain(words));
  return {
    desk,
    page,
    dialog,
    says,
    saved,
    stored: async () => (await desk.ok('dogs/file', { dogId })).weighings,
    async save() {
      await dialog.get('form').trigger('submit');
    },
    async button(text: string) {
      await says(text);
      await dialog
        .findAll('button')
        .find((each) => each.text() === text)!
        .trigger('click');
    },
  };
}

/** The dialog with an amendment typed, after somebody else amended the same weighing. */
async function overtaken() {
  const open = await amending();
  await open.desk.ok('weighings/amend', {
    id: open.saved.id,
    basedOn: 1,
    reason: 'Other desk.',
    weighing: weighing({ weightKg: 24.4 }),
  });
  await open.dialog.get('#field-amend-weighing-weightKg').setValue('25');
  await open.dialog.get('#field-amend-reason').setValue('Misread.');
  return open;
}

describe('a saved weighing', () => {
  it('is amended with a reason, and the page shows it', async () => {
    const { page, dialog, says, stored, save } = await amending();
    await says('unchanged since');
    await dialog.get('#field-amend-weighing-weightKg').setValue('28.3');
    await save();
    await says('Reason for the amendment is needed');
    expect(await stored()).toMatchObject([{ weightKg: 23.8 }]);
    await dialog.get('#field-amend-reason').setValue('Misread.');
    await save();
    await shows(page, /once 28\.3/);
    expect(await stored()).toMatchObject([{ weightKg: 28.3, revision: 2 }]);
    await press(page, 'Amend the weighing of 2026-02-09');
    await comesTrue(async () => {
      const history = document.body.querySelector('[aria-label="History of the weighing"]');
      expect(history?.textContent).toMatch(/Amended on.*Reason: Misread.*Body weight.*23.8.*28.3/s);
    });
  });

  it('names unreadable and impossible values beside their fields', async () => {
    const { dialog, says, stored, save } = await amending();
    await dialog.get('#field-amend-weighing-weightKg').setValue('heavy');
    await dialog.get('#field-amend-reason').setValue('Misread.');
    await save();
    await says('Body weight: write a number');
    await dialog.get('#field-amend-weighing-weightKg').setValue('24');
    await dialog.get('#field-amend-weighing-scaleStepKg').setValue('');
    await save();
    await says('Step of the scale must be from 0.001 to 5 kg.');
    expect(await stored()).toMatchObject([{ weightKg: 23.8, revision: 1 }]);
  });

  it('changed by somebody else meanwhile: both are shown, and one decides', async () => {
    const { page, says, stored, save, button } = await overtaken();
    await save();
    await says('Not saved. Everything you typed is still here.');
    await button('Show what is stored now');
    await says('24.4');
    expect(await stored()).toMatchObject([{ weightKg: 24.4, revision: 2 }]);
    await button('Save mine over it');
    await shows(page, /once 25\.0/);
    expect(await stored()).toMatchObject([{ weightKg: 25, revision: 3 }]);
  });

  it('changed by somebody else meanwhile: theirs can be taken', async () => {
    const { page, says, stored, save, button } = await overtaken();
    await save();
    await says('Not saved.');
    await button('Show what is stored now');
    await button('Take what is stored, without mine');
    await shows(page, /once 24\.4/);
    expect(await stored()).toMatchObject([{ weightKg: 24.4, revision: 2 }]);
  });

  it('removed by somebody else meanwhile: says so, and keeps nothing', async () => {
    const { desk, dialog, says, saved, stored, save } = await amending();
    await desk.ok('weighings/drop', { id: saved.id });
    await dialog.get('#field-amend-weighing-weightKg').setValue('25');
    await dialog.get('#field-amend-reason').setValue('Misread.');
    await save();
    await says('The weighing is not in the records.');
    expect(await stored()).toEqual([]);
  });
});
