import { mount } from '@vue/test-utils';
import { describe, expect, it } from 'vitest';
import { assess } from '../../../core/index.ts';
import { blankVisit } from '../../../electron/contract/records/forms.ts';
import { heatDogOf } from '../../../electron/contract/dogs/heatDog.ts';
import { assessInput } from '../../../electron/contract/visits/assessInput.ts';
import HeatStory from '../../../renderer/heat/HeatStory.vue';
import { dogFile, stored } from '../support/dogFile.ts';
import { appPlugins } from '../support/plugins.ts';

/** A short-nosed, heavy, dark-coated dog, with or without the vet's written clearance. */
function shortNosed(airwayClearance: boolean) {
  const facts = { ...blankVisit('d', '2025-03-01'), weightKg: 30, bcs: 8, airwayClearance };
  const bare = dogFile([{ ...facts, ...stored, author: '' }]);
  const dog = { ...bare.dog, shortNosed: true, coat: 'dark', birthDay: '2017-09-01' } as const;
  const file = { ...bare, dog };
  return { file, assessment: assess(assessInput(file, [], '2025-03-29', null))! };
}

const shown = (cleared: boolean) => {
  const wrapper = mount(HeatStory, {
    props: shortNosed(cleared),
    global: { plugins: appPlugins() },
  });
  return {
    ladder: wrapper
      .findAll('.ladder > div, .ladder tbody tr')
      .map((line) => line.text().replaceAll(/\s+/g, ' ').trim()),
    reasons: wrapper.findAll('.reasons > li').map((line) => line.text()),
  };
};

describe('the heat page of a dog that may not run', () => {
  it('says so at any temperature, with the one reason that counts', () => {
    const { ladder, reasons } = shown(false);
    expect(ladder).toHaveLength(1);
    expect(ladder[0]).toMatch(/^No run ?at any temperature$/);
    expect(reasons).toHaveLength(1);
    expect(reasons[0]).toContain('written clearance');
  });

  it('lists limits and what moves them once the vet has cleared it', () => {
    const { ladder, reasons } = shown(true);
    expect(ladder).toHaveLength(5);
    // 6 °C lower: 4, 9, 12 and 14 °C, and less in wet air (C/D).
    expect(ladder[0]).toMatch(/^Usual care ?to 4\s*°C/);
    expect(reasons.join()).toMatch(/fat insulates.*Coat dark/);
  });
});

describe('a senior in the heat', () => {
  it('is one by the rule of the practice', () => {
    // A short nose: 9.8 years expected, so that 91 months are 77 %, over 75 and under 90.
    const { file, assessment } = shortNosed(true);
    expect(heatDogOf(file, assessment, {}).senior).toBe(true);
    expect(heatDogOf(file, assessment, { seniorFromPercent: 90 }).senior).toBe(false);
  });
});
