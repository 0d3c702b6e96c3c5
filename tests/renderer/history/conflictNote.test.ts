import { flushPromises, mount, type VueWrapper } from '@vue/test-utils';
import { afterEach, describe, expect, it } from 'vitest';
import type { FieldChange } from '../../../electron/contract/history/change.ts';
import ConflictNote from '../../../renderer/history/ConflictNote.vue';
import { appPlugins } from '../support/plugins.ts';

const ERROR = { kind: 'conflict', message: 'Somebody saved this visit meanwhile.' } as const;
const WEIGHT: FieldChange = {
  path: 'weightKg',
  label: 'Body weight',
  measure: 'kg',
  before: 24,
  after: 23.5,
};

let open: VueWrapper | null = null;
afterEach(() => {
  open?.unmount();
  open = null;
});

async function note(differences: readonly FieldChange[] | null, busy = false): Promise<VueWrapper> {
  open = mount(ConflictNote, {
    props: { error: ERROR, differences, busy },
    global: { plugins: appPlugins({ weightUnit: 'lb' }) },
    attachTo: document.body,
  });
  await flushPromises();
  return open;
}
const buttons = (wrapper: VueWrapper) => wrapper.findAll('button').map((each) => each.text());
const press = (wrapper: VueWrapper, text: string) =>
  wrapper
    .findAll('button')
    .find((each) => each.text() === text)!
    .trigger('click');

describe('a record that was saved by somebody else', () => {
  it('is announced, takes the focus, and says that nothing typed is lost', async () => {
    const wrapper = await note(null);
    const alert = wrapper.get('[role="alert"]');
    expect(alert.text()).toContain('Not saved. Everything you typed is still here.');
    expect(alert.text()).toContain(ERROR.message);
    expect(document.activeElement).toBe(alert.element);
  });

  it('is not thrown away before it was looked at', async () => {
    const wrapper = await note(null);
    expect(buttons(wrapper)).toEqual(['Show what is stored now', 'Save mine over it']);
    await press(wrapper, 'Show what is stored now');
    await press(wrapper, 'Save mine over it');
    expect(Object.keys(wrapper.emitted())).toEqual(expect.arrayContaining(['show', 'over']));
    expect(wrapper.emitted('take')).toBeUndefined();
  });

  it('is set beside what was typed, in the units of the practice', async () => {
    const wrapper = await note([WEIGHT]);
    expect(wrapper.findAll('th[scope="col"]').map((each) => each.text())).toEqual([
      'Field',
      'Stored now',
      'Yours',
    ]);
    // 1 lb is 0.45359237 kg by definition (international yard and pound agreement, 1959; M).
    const cells = wrapper.findAll('tbody td').map((each) => each.text().replaceAll('\u00a0', ' '));
    expect(cells).toEqual(['52.9 lb', '51.8 lb']);
    expect(buttons(wrapper)).toEqual(['Take what is stored, without mine', 'Save mine over it']);
    await press(wrapper, 'Take what is stored, without mine');
    expect(wrapper.emitted('take')).toHaveLength(1);
  });

  it('says so where both are the same after all', async () => {
    expect((await note([])).text()).toContain('What is stored now is the same as what you typed.');
  });

  it('shows its buttons as waiting while a save goes on', async () => {
    const wrapper = await note(null, true);
    for (const button of wrapper.findAll('button')) {
      expect(button.attributes('aria-disabled')).toBe('true');
    }
  });

  it('takes the focus again at a second conflict', async () => {
    const wrapper = await note([WEIGHT]);
    (document.activeElement as HTMLElement).blur();
    await wrapper.setProps({ error: { ...ERROR } });
    await flushPromises();
    expect(document.activeElement).toBe(wrapper.get('[role="alert"]').element);
  });
});
