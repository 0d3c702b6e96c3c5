import { flushPromises, mount, type VueWrapper } from '@vue/test-utils';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { defineComponent } from 'vue';
import ViewMenu from '../../../renderer/components/frame/ViewMenu.vue';
import { usePageTitle } from '../../../renderer/composables/usePageTitle.ts';
import { appPlugins } from '../support/plugins.ts';

const root = document.documentElement;
const plugins = () => appPlugins();
/** Long enough for the first reading of what lays a sheet over the page. */
const FETCHED = { timeout: 30_000 };
/** Presses the button; the sheet it opens is fetched first. */
async function press(wrapper: VueWrapper): Promise<void> {
  await wrapper.get('button').trigger('click');
  await vi.waitUntil(() => document.querySelector('.view-sheet'), FETCHED);
}

async function openMenu() {
  const wrapper = mount(ViewMenu, { global: { plugins: plugins() }, attachTo: document.body });
  await press(wrapper);
  const choose = async (value: string) => {
    document.querySelector<HTMLInputElement>(`.view-sheet input[value="${value}"]`)!.click();
    await flushPromises();
  };
  return { wrapper, choose };
}

afterEach(() => {
  localStorage.clear();
  delete root.dataset['text'];
  delete root.dataset['theme'];
});

describe('the View menu', () => {
  it('sets the text larger on the root, and keeps it on this machine', async () => {
    const { wrapper, choose } = await openMenu();
    await choose('largest');
    expect(root.dataset['text']).toBe('largest');
    expect(localStorage.getItem('trotwell:text-size')).toBe('largest');
    wrapper.unmount();
    await openMenu();
    expect(root.dataset['text']).toBe('largest');
  });

  it('closes by Escape and hands the focus back to its button, the first time too', async () => {
    const { wrapper } = await openMenu();
    const button = wrapper.get('button');
    expect(button.attributes('aria-expanded')).toBe('true');
    document
      .querySelector('.view-sheet')!
      .dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape', bubbles: true }));
    await vi.waitUntil(() => document.activeElement === button.element, FETCHED);
    expect(button.attributes('aria-expanded')).toBe('false');
  });

  it('goes back to the size of the system', async () => {
    const { choose } = await openMenu();
    await choose('large');
    await choose('normal');
    expect(root.dataset['text']).toBeUndefined();
  });

  it('sets dark colours', async () => {
    const { choose } = await openMenu();
    await choose('dark');
    expect(root.dataset['theme']).toBe('dark');
    await choose('system');
    expect(root.dataset['theme']).toBeUndefined();
  });

  it('takes dogs’ names out of the title, and keeps that on this machine', async () => {
    const Page = defineComponent({
      components: { ViewMenu },
      setup: () =>
        usePageTitle(
          () => 'Plan',
          () => 'Running plan of Bramble',
        ),
      template: '<ViewMenu />',
    });
    const open = async () => {
      const wrapper = mount(Page, { global: { plugins: plugins() }, attachTo: document.body });
      await press(wrapper);
      return wrapper;
    };
    const first = await open();
    expect(document.title).toBe('Running plan of Bramble · Trotwell');
    document.querySelector<HTMLInputElement>('.view-sheet input[type="checkbox"]')!.click();
    await flushPromises();
    expect(document.title).toBe('Plan · Trotwell');
    first.unmount();
    await open();
    expect(document.title).toBe('Plan · Trotwell');
  });

  it('falls back to normal where something unknown was kept', async () => {
    localStorage.setItem('trotwell:text-size', 'gigantic');
    await openMenu();
    expect(root.dataset['text']).toBeUndefined();
  });
});
