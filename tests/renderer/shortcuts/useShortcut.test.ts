import { flushPromises, mount } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { defineComponent, h, ref } from 'vue';
import MastheadTools from '../../../renderer/components/frame/MastheadTools.vue';
import { useDogShortcuts } from '../../../renderer/shortcuts/useDogShortcuts.ts';
import { useShortcut } from '../../../renderer/shortcuts/useShortcut.ts';
import { appPlugins } from '../support/plugins.ts';

const done: string[] = [];
const open = ref(true);
const works = ref(true);

const Part = defineComponent(() => {
  useShortcut({
    keys: ['x'],
    words: 'Do the thing',
    scope: 'dog',
    when: () => works.value,
    run: () => done.push('x'),
  });
  return () => h('input', { id: 'field' });
});
const Frame = defineComponent(() => () => [h(MastheadTools), open.value ? h(Part) : null]);

function key(name: string, at: EventTarget = document.body): KeyboardEvent {
  const event = new KeyboardEvent('keydown', { key: name, bubbles: true, cancelable: true });
  at.dispatchEvent(event);
  return event;
}
const sheet = () => document.querySelector('[role="dialog"]');
/** Long enough for the first reading of what lays a sheet over the page. */
const FETCHED = { timeout: 30_000 };
/** The sheet is fetched when it is first asked for. */
async function openSheet(): Promise<void> {
  key('?');
  await vi.waitUntil(sheet, FETCHED);
}
/** The lines of the sheet: "Do the thing: X". */
const lines = () =>
  [...(sheet()?.querySelectorAll('dl > div') ?? [])].map((line) =>
    [...line.children].map((part) => part.textContent?.replaceAll(/\s+/g, ' ').trim()).join(': '),
  );

let unmount: (() => void) | undefined;
beforeEach(() => {
  localStorage.clear();
  done.length = 0;
  open.value = true;
  works.value = true;
  const wrapper = mount(Frame, { global: { plugins: appPlugins() }, attachTo: document.body });
  unmount = () => wrapper.unmount();
});
afterEach(() => {
  unmount?.();
  document.body.innerHTML = '';
});

describe('a shortcut', () => {
  it('does its deed and keeps the key from the browser', () => {
    expect(key('x').defaultPrevented).toBe(true);
    expect(done).toEqual(['x']);
  });

  it('leaves every other key alone', () => {
    expect(key('q').defaultPrevented).toBe(false);
    expect(done).toEqual([]);
  });

  it('never fires while a field is typed into', () => {
    expect(key('x', document.getElementById('field')!).defaultPrevented).toBe(false);
    expect(done).toEqual([]);
  });

  it('leaves a key alone that a control has taken', () => {
    const button = document.createElement('button');
    button.addEventListener('keydown', (event) => event.preventDefault());
    document.body.append(button);
    key('x', button);
    expect(done).toEqual([]);
  });

  it('goes with its part of the page', async () => {
    open.value = false;
    await flushPromises();
    key('x');
    expect(done).toEqual([]);
  });
});

describe('the sheet of shortcuts', () => {
  it('opens by "?", has a name, and lists what works here', async () => {
    await openSheet();
    const title = sheet()?.getAttribute('aria-labelledby') ?? '';
    expect(document.getElementById(title)?.textContent).toBe('Shortcuts');
    expect(lines()).toEqual([
      'Show this sheet: ?',
      'Find or add a dog: / or Ctrl + K',
      'Do the thing: X',
    ]);
  });

  it('leaves out what does not work at the moment', async () => {
    works.value = false;
    await openSheet();
    expect(lines()).not.toContain('Do the thing: X');
    expect(sheet()?.textContent).not.toContain('On this dog');
  });

  it('turns single keys off for good, and keeps those held with Ctrl', async () => {
    await openSheet();
    document.querySelector<HTMLInputElement>('[role="dialog"] input[type="checkbox"]')!.click();
    await flushPromises();
    expect(lines()).toEqual(['Find or add a dog: Ctrl + K']);
    expect(localStorage.getItem('trotwell:single-keys')).toBe('off');
    key('x');
    expect(done).toEqual([]);
  });
});

describe('the shortcuts of a dog’s page', () => {
  it.each([
    [{ seen: false, assessed: false, planned: false }, ['v', 'e']],
    [{ seen: true, assessed: false, planned: false }, ['v', 'o', 'e']],
    [{ seen: true, assessed: true, planned: true }, ['v', 'p', 'h', 'o', 'e']],
  ])('stand for the links the page has: %o', async (state, expected) => {
    const plugins = appPlugins();
    const Dog = defineComponent(() => {
      useDogShortcuts(() => ({ dogId: 'd1', ...state }));
      return () => h(MastheadTools);
    });
    unmount?.();
    const wrapper = mount(Dog, { global: { plugins }, attachTo: document.body });
    unmount = () => wrapper.unmount();
    const took = ['v', 'p', 'h', 'o', 'e'].filter((name) => key(name).defaultPrevented);
    await flushPromises();
    expect(took).toEqual(expected);
  });
});
