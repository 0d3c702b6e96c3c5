import type { VueWrapper } from '@vue/test-utils';
import { afterEach, describe, expect, it } from 'vitest';
import { defineComponent, h, nextTick } from 'vue';
import { blankVisit } from '../../../electron/contract/records/forms.ts';
import { useForm, type Form } from '../../../renderer/composables/useForm.ts';
import { usePractice } from '../../../renderer/stores/practice.ts';
import NotesSection from '../../../renderer/visits/NotesSection.vue';
import { openOwn } from '../../service/support/desk.ts';
import { deskClient, mountAtDesk } from '../support/atDesk.ts';

const PHRASES = ['Lead walks only.', 'No stairs, no jumping.'];
let section: VueWrapper;
afterEach(() => section.unmount());

async function notesWith(notes: string, phrases: readonly string[] = PHRASES) {
  const desk = await openOwn();
  for (const text of phrases) await desk.ok('shelf/keepPhrase', { id: null, text });
  let form: Form<ReturnType<typeof visit>> | undefined;
  const visit = () => ({ ...blankVisit(crypto.randomUUID(), '2026-03-02'), notes });
  const Frame = defineComponent(() => {
    form = useForm(visit());
    return () => h(NotesSection, { modelValue: form!.values as never });
  });
  ({ wrapper: section } = await mountAtDesk(Frame, deskClient(desk)));
  usePractice().take(await desk.ok('app/status', {}));
  await nextTick();
  const area = section.get('textarea').element as HTMLTextAreaElement;
  return { area, form: form! };
}

/** Opens the list by the keyboard, goes to the line of that number and takes it. */
async function choose(line: number): Promise<void> {
  const button = section.get<HTMLButtonElement>('button[aria-haspopup="menu"]');
  button.element.focus();
  const key = (on: Element, name: string) =>
    on.dispatchEvent(new KeyboardEvent('keydown', { key: name, bubbles: true, cancelable: true }));
  key(button.element, 'Enter');
  await expect.poll(() => document.querySelectorAll('[role="menuitem"]').length).toBe(2);
  await expect.poll(() => document.activeElement?.getAttribute('role')).toBe('menuitem');
  for (let at = 1; at < line; at += 1) {
    key(document.activeElement!, 'ArrowDown');
    await nextTick();
  }
  key(document.activeElement!, 'Enter');
  await expect.poll(() => document.querySelectorAll('[role="menuitem"]').length).toBe(0);
}

describe('a phrase of the practice', () => {
  it('is put in where the caret stands, by the keyboard, and the work goes on after it', async () => {
    const { area, form } = await notesWith('Sound today. Owner content.');
    area.setSelectionRange(12, 12);
    await choose(2);
    const text = 'Sound today. No stairs, no jumping. Owner content.';
    expect(form.values.notes).toBe(text);
    await expect.poll(() => document.activeElement).toBe(area);
    expect(area.selectionStart).toBe(text.indexOf(' Owner'));
  });

  it('replaces nothing, not even what is marked', async () => {
    const { area, form } = await notesWith('Sound today.');
    area.setSelectionRange(0, 12);
    await choose(1);
    expect(form.values.notes).toBe('Sound today. Lead walks only.');
  });

  it('begins an empty note without a space', async () => {
    const { form } = await notesWith('');
    await choose(1);
    expect(form.values.notes).toBe('Lead walks only.');
  });

  it('has no button while the practice keeps none', async () => {
    await notesWith('', []);
    expect(section.find('button').exists()).toBe(false);
  });
});
