import { mount } from '@vue/test-utils';
import { describe, expect, it } from 'vitest';
import { DUE_AHEAD_DAYS, type DueLine } from '../../../electron/contract/dogs/due.ts';
import { dueDeed, dueWhen } from '../../../renderer/desk/due.ts';
import DueTable from '../../../renderer/desk/DueTable.vue';
import { appPlugins } from '../support/plugins.ts';

const TODAY = '2025-03-29';

const line = (reason: DueLine['reason'], day: string, dogId = 'a'): DueLine => ({
  dogId,
  name: 'Rusk',
  clientName: 'Dana Owner',
  reason,
  day,
});

const table = (lines: readonly DueLine[]) =>
  mount(DueTable, {
    props: { lines, today: TODAY },
    global: { plugins: appPlugins({ dayFormat: 'DD.MM.YYYY' }) },
  });

describe('the due list on the desk', () => {
  it('says what to do and how near it is', () => {
    expect(dueDeed(line('weigh', TODAY))).toBe('Weigh Rusk');
    expect(dueWhen(line('weigh', TODAY), TODAY)).toBe('weigh-in today');
    expect(dueWhen(line('weigh', '2025-03-28'), TODAY)).toBe('weigh-in was due 1 day ago');
    expect(dueWhen(line('plan ends', '2025-04-02'), TODAY)).toBe('last session in 4 days');
    expect(dueWhen(line('consent ends', '2025-03-19'), TODAY)).toBe(
      'the vet’s consent ended 10 days ago',
    );
  });
  it('leads to the dog, with the day as the practice writes it', () => {
    const wrapper = table([line('plan ends', '2025-04-02')]);
    const link = wrapper.get('tbody a');
    expect(link.text()).toBe('Review the plan of Rusk');
    expect(link.attributes('href')).toBe('/dogs/a');
    expect(wrapper.text()).toContain('02.04.2025');
  });
  it('says what was looked for when nobody is due', () => {
    const text = table([]).text();
    expect(text).toContain('Nobody is due');
    expect(text).toContain(`within ${DUE_AHEAD_DAYS['consent ends']} days`);
  });
  it('shows the first few, and all on request', async () => {
    const wrapper = table(
      ['a', 'b', 'c', 'd', 'e', 'f', 'g'].map((id) => line('weigh', TODAY, id)),
    );
    expect(wrapper.findAll('tbody tr')).toHaveLength(5);
    await wrapper.get('button').trigger('click');
    expect(wrapper.findAll('tbody tr')).toHaveLength(7);
    expect(wrapper.get('button').attributes('aria-expanded')).toBe('true');
  });
});
