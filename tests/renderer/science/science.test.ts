import { mount } from '@vue/test-utils';
import { describe, expect, it } from 'vitest';
import { SOURCES, withRules, type Source } from '../../../core/index.ts';
import { EVIDENCE, MARKS } from '../../../renderer/components/figures/evidence.ts';
import SciencePage from '../../../renderer/pages/SciencePage.vue';
import { ruleValue } from '../../../renderer/rules/ruleText.ts';
import { DEFAULT_CHOICES } from '../../../renderer/units/shown.ts';
import { registerLines } from '../../../renderer/science/register.ts';
import { usePractice } from '../../../renderer/stores/practice.ts';
import { appPlugins } from '../support/plugins.ts';

const register: readonly Source[] = Object.values(SOURCES);

function page() {
  return mount(SciencePage, { global: { plugins: appPlugins() } });
}

describe('about the science', () => {
  it('prints every source of the register with its caveat', () => {
    const text = page().text();
    for (const { reference, caveat = '' } of register) {
      expect(text).toContain(reference.replaceAll('^', ' to the power '));
      expect(text).toContain(caveat);
    }
  });
  it('lists each source once and puts the caveat beside its own', () => {
    const { published, unpublished } = registerLines(withRules({}));
    const ids = [...published, ...unpublished].map(({ id }) => id);
    expect(ids.toSorted()).toEqual(Object.keys(SOURCES).toSorted());
    const withCaveat = page()
      .findAll('li')
      .filter((line) => line.text().includes('Take note:'));
    expect(withCaveat).toHaveLength(register.filter(({ caveat }) => caveat !== undefined).length);
  });
  it('prints every rule as published, and every level and mark in words', () => {
    const text = page().text();
    for (const { name, value, unit } of withRules({})) {
      expect(text).toContain(name);
      expect(text).toContain(ruleValue({ unit }, value, DEFAULT_CHOICES));
    }
    for (const words of [...Object.values(EVIDENCE), ...Object.values(MARKS)]) {
      expect(text).toContain(words);
    }
    expect(text).not.toContain('changed by this practice');
  });
  it('follows a rule that the practice changed, and names the practice as its source', async () => {
    const wrapper = page();
    const store = usePractice();
    store.status = {
      ...store.status!,
      rules: [
        {
          ruleId: 'heatShiftC',
          value: 4,
          reason: 'A warm valley.',
          updatedAt: '2025-03-01T09:00:00.000Z',
        },
      ],
    };
    await wrapper.vm.$nextTick();
    const row = wrapper.findAll('tr').find((line) => line.text().includes('changed by this'))!;
    expect(row.text()).toContain(ruleValue({ unit: '°C', shift: true }, 4, DEFAULT_CHOICES));
    expect(row.text()).toContain(
      `as published ${ruleValue({ unit: '°C', shift: true }, 3, DEFAULT_CHOICES)}`,
    );
    expect(row.text()).toContain(SOURCES.practiceSetting.short);
  });
  it('defers to the vet and to local law', () => {
    const text = page().text();
    expect(text).toContain('goes to a vet');
    expect(text).toContain('law of your country');
  });
});
