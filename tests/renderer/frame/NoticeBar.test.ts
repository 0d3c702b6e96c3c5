import { mount } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import NoticeBar from '../../../renderer/components/frame/NoticeBar.vue';
import { useNotice } from '../../../renderer/stores/notice.ts';
import { appPlugins } from '../support/plugins.ts';

// The clock is turned by hand: nothing here waits.
beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
  document.body.innerHTML = '';
});

function bar() {
  const wrapper = mount(NoticeBar, { global: { plugins: appPlugins() }, attachTo: document.body });
  return { wrapper, notice: useNotice() };
}
const pass = (seconds: number) => vi.advanceTimersByTimeAsync(seconds * 1000);

describe('a notice', () => {
  it('leaves by itself', async () => {
    const { wrapper, notice } = bar();
    notice.say('The visit of Rusk is saved.');
    await pass(10);
    expect(wrapper.text()).toContain('The visit of Rusk is saved.');
    await pass(10);
    expect(wrapper.text()).toBe('');
  });

  it('stays longer while something can be done about it, and as long as the focus is in it', async () => {
    const { wrapper, notice } = bar();
    notice.say('The visit is in the bin.', { label: 'Undo', run: () => undefined });
    await pass(30);
    wrapper.get('button').element.focus();
    await pass(600);
    expect(wrapper.text()).toContain('The visit is in the bin.');
    wrapper.get('button').element.blur();
    await pass(60);
    expect(wrapper.text()).toBe('');
  });

  it('stays its whole time when another one takes its place', async () => {
    const { wrapper, notice } = bar();
    notice.say('One.');
    await pass(10);
    notice.say('Two.');
    await pass(10);
    expect(wrapper.text()).toContain('Two.');
  });
});
