import { mount } from '@vue/test-utils';
import { describe, expect, it } from 'vitest';
import { nextTick } from 'vue';
import {
  type Figure,
  gaitChanges,
  idealWeight,
  restingEnergyFigure,
  screenForRunning,
  type Reason,
} from '../../../core/index.ts';
import FigureLine from '../../../renderer/components/figures/FigureLine.vue';
import FormulaText from '../../../renderer/components/figures/FormulaText.vue';
import ReasonList from '../../../renderer/components/figures/ReasonList.vue';
import ScreeningNote from '../../../renderer/components/figures/ScreeningNote.vue';
import WhyNumber from '../../../renderer/components/figures/WhyNumber.vue';
import { appPlugins } from '../support/plugins.ts';

const plain = (text: string) => text.replaceAll(/[\u00a0\u202f]/g, ' ').replaceAll(/\s+/g, ' ');

describe('why this number', () => {
  async function open(figure: Figure): Promise<Element> {
    const wrapper = mount(WhyNumber, {
      props: { figure },
      global: { plugins: appPlugins() },
      attachTo: document.body,
    });
    await wrapper.get('button').trigger('click');
    await nextTick();
    return document.querySelector('.why-sheet')!;
  }
  const textOf = async (figure: Figure) => plain((await open(figure)).textContent);

  it('is a button that names the number and what it is', () => {
    const wrapper = mount(WhyNumber, {
      props: { figure: restingEnergyFigure(20) },
      global: { plugins: appPlugins() },
    });
    // RER of 20 kg: 662.0 kcal/day (Hand et al. 2010, Table 5-2; S).
    expect(plain(wrapper.get('button').attributes('aria-label') ?? '')).toBe(
      'Why 662 kcal/day? Resting energy requirement',
    );
  });

  it('opens on formula, inputs, evidence, how we came by it, and the source', async () => {
    const text = await textOf(restingEnergyFigure(20));
    expect(text).toContain('70 × kg to the power 0.75');
    expect(text).toContain('Body weight 20.0 kg');
    expect(text).toContain('C: textbook, guideline or sport rule; read in the source');
    expect(text).toContain('Small Animal Clinical Nutrition');
  });

  it('leads to no page of a rule where none decided it', async () => {
    expect(await textOf(restingEnergyFigure(20))).not.toContain('Rule');
  });

  it('leads to the pages of the rules that decided it', async () => {
    const sheet = await open(gaitChanges({ heightM: 0.5 }).canterSpeed.figure);
    const links = [...sheet.querySelectorAll('a')];
    expect(links.map((link) => link.getAttribute('href'))).toEqual([
      '/rules/froudeCanterLow',
      '/rules/froudeCanterHigh',
    ]);
    expect(links[0]!.textContent).toBe('Trot becomes canter: low end of the Froude number');
  });

  it('says so where a source is from memory', async () => {
    const text = await textOf({
      ...restingEnergyFigure(20),
      mark: 'M',
      sources: ['kleiber1961'],
    });
    expect(text).toContain('from memory, not re-read');
    expect(text).toContain('(from memory)');
  });
});

describe('a figure in a ledger line', () => {
  it('carries value, unit and range in the units of the practice', () => {
    const wrapper = mount(FigureLine, {
      // 40 kg at score 8: 30.77 kg, 27.59 to 32.5 (AAHA, Vet Times, Clinician's Brief; S).
      props: { figure: idealWeight({ weightKg: 40, bcs: 8 }).figure },
      global: { plugins: appPlugins({ weightUnit: 'lb' }) },
    });
    expect(plain(wrapper.text())).toContain('67.8 lb');
    expect(plain(wrapper.text())).toContain('60.8 to 71.7 lb');
  });
});

describe('a formula', () => {
  it('sets powers high and leaves the rest alone', () => {
    const wrapper = mount(FormulaText, { props: { text: '70 × kg^0.75 and 10.7 M^-0.316 v' } });
    expect(wrapper.findAll('sup').map((power) => power.text())).toEqual(['0.75', '-0.316']);
  });
});

describe('reasons', () => {
  const screening = screenForRunning({
    day: '2025-03-29',
    birthDay: '2024-09-01',
    weightKg: 20,
    bcs: 8,
    lameness: { trot: { leftFore: 1 } },
    overrides: [{ code: 'lameness-trot', reason: 'Old, mild, seen by the vet.' }],
  });

  const list = (reasons: readonly Reason[]) =>
    mount(ReasonList, { props: { reasons }, global: { plugins: appPlugins() } });

  it('say what would change them and how sure we are', () => {
    const wrapper = list(screening.reasons);
    expect(wrapper.text()).toContain('What would change it:');
    expect(wrapper.text()).toMatch(/Evidence [A-D],/);
    expect(wrapper.findAll('.reasons > li')).toHaveLength(screening.reasons.length);
  });

  it('lead to the pages of the rules behind them', () => {
    const high = screening.reasons.filter(({ code }) => code === 'bcs-high');
    const wrapper = list(high);
    expect(wrapper.get('summary').text()).toContain('the rule behind it');
    expect(wrapper.get('a').attributes('href')).toBe('/rules/bcsWalkOnlyFrom');
  });

  it('kept before they named rules, or by another version, are shown without', () => {
    const [reason] = screening.reasons.filter(({ code }) => code === 'bcs-high');
    const { rules: _, ...old } = reason!;
    expect(list([old]).find('a').exists()).toBe(false);
    expect(list([old]).get('summary').text()).not.toContain('rule');
    const foreign = { ...old, rules: ['noSuchRule'] } as unknown as Reason;
    expect(list([foreign]).find('a').exists()).toBe(false);
  });

  it('set aside are shown apart, with the written reason', () => {
    const wrapper = mount(ScreeningNote, {
      props: { screening },
      global: { plugins: appPlugins() },
    });
    expect(wrapper.text()).toContain('Walking only');
    expect(wrapper.text()).toContain('Set aside by you');
    expect(wrapper.text()).toContain('Because: Old, mild, seen by the vet.');
    expect(wrapper.text()).toContain('Old enough to run from');
  });
});
