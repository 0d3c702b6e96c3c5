import { mount } from '@vue/test-utils';
import { afterEach, describe, expect, it } from 'vitest';
import { ref } from 'vue';
import { defaultRules } from '../../../core/index.ts';
import type { Answer } from '../../../electron/contract/errors.ts';
import type { Practice } from '../../../electron/contract/records.ts';
import type { Client } from '../../../renderer/api/client.ts';
import RuleLine from '../../../renderer/rules/RuleLine.vue';
import { ruleDimension, ruleNumber, ruleValue } from '../../../renderer/rules/ruleText.ts';
import { unitsOf } from '../../../renderer/units/dimensions.ts';
import { readQuantity } from '../../../renderer/units/parseQuantity.ts';
import { DEFAULT_CHOICES, type ShownChoices } from '../../../renderer/units/shown.ts';
import { appPlugins } from '../support/plugins.ts';

const AMERICAN: ShownChoices = {
  weightUnit: 'lb',
  energyUnit: 'kcal',
  distanceUnit: 'mi',
  temperatureUnit: 'F',
  dayFormat: 'MM/DD/YYYY',
};
const rule = (id: string) => defaultRules().find((one) => one.id === id)!;

afterEach(() => {
  document.body.innerHTML = '';
});

describe('the value of a rule', () => {
  // °F = °C × 9/5 + 32; 1 lb = 0.45359237 kg (exact by definition, 1959; S).
  it.each([
    ['heatHalfToC', '18\u202f°C', '64.4\u202f°F'],
    ['heatShiftC', '3\u202f°C', '5.4\u202f°F'],
    ['heatHeavyOverKg', '50\u00a0kg', '110.2\u00a0lb'],
    ['largeFromKg', '20\u00a0kg', '44.1\u00a0lb'],
    ['girthErrorCm', '1\u00a0cm', '0.4\u00a0in'],
    ['hindDifferencePercent', '8.7\u00a0% of body weight', '8.7\u00a0% of body weight'],
    ['froudeTrot', '0.5', '0.5'],
    ['recoveryPercent', '70\u00a0% of the highest week', '70\u00a0% of the highest week'],
    ['capConditioned', '20\u202f%', '20\u202f%'],
    ['smallStepMinutes', '2\u00a0min a week', '2\u00a0min a week'],
  ])('%s stands in the units of either practice', (id, metric, american) => {
    expect(ruleValue(rule(id), rule(id).value, DEFAULT_CHOICES)).toBe(metric);
    expect(ruleValue(rule(id), rule(id).value, AMERICAN)).toBe(american);
  });

  it.each(defaultRules())('$id is taken as it is shown, in either practice', (one) => {
    for (const choices of [DEFAULT_CHOICES, AMERICAN]) {
      const dimension = ruleDimension(one);
      const { value, min, max } = one;
      const units = unitsOf(dimension, choices);
      const asked = { label: one.name, dimension, units, counted: one.unit, min, max };
      const typed = readQuantity(ruleNumber(one, value, choices), asked);
      expect(typed).toMatchObject({ kind: 'value' });
      if (typed.kind === 'value') expect(Math.abs(typed.value - value)).toBeLessThan(0.06);
    }
  });
});

/** A service that keeps what it is asked to do, and does it not. */
function asking() {
  const asked: unknown[] = [];
  const refusal: Answer<never> = { ok: false, error: { kind: 'unreachable', message: 'Away.' } };
  const client: Client = {
    refused: ref(null),
    lockedAnswers: ref(0),
    call: async (_name, input) => {
      asked.push(input);
      return refusal;
    },
    files: {
      chooseFile: async () => refusal,
      chooseFiles: async () => refusal,
      sendFile: async () => refusal,
      saveProduced: async () => 'not saved',
    },
  };
  return { asked, client };
}

async function change(id: string, typed: string, settings: Partial<Practice>) {
  const { asked, client } = asking();
  const wrapper = mount(RuleLine, {
    props: { rule: rule(id), change: null },
    global: { plugins: appPlugins(settings, client) },
    attachTo: document.body,
  });
  await wrapper.get('button').trigger('click');
  const field = wrapper.get<HTMLInputElement>(`#field-${id}-value`);
  const before = field.element.value;
  const unit = wrapper.get('.with-unit .unit').text();
  await field.setValue(typed);
  await wrapper.get(`#field-${id}-reason`).setValue('A cool valley.');
  await wrapper.get('form').trigger('submit');
  return { asked, before, unit, text: wrapper.text(), wrapper };
}

describe('a rule is changed in the units of the practice and kept in SI', () => {
  const fahrenheit = { temperatureUnit: 'F' } as const;
  const pounds = { weightUnit: 'lb' } as const;

  it('in °F', async () => {
    const { asked, before, unit } = await change('heatHalfToC', '68', fahrenheit);
    expect([before, unit]).toEqual(['64.4', '°F']);
    expect(asked).toEqual([{ ruleId: 'heatHalfToC', value: 20, reason: 'A cool valley.' }]);
  });

  it('in °F for a difference, which has no zero to move', async () => {
    const { asked, before } = await change('heatShiftC', '9', fahrenheit);
    expect(before).toBe('5.4');
    expect(asked).toMatchObject([{ ruleId: 'heatShiftC', value: 5 }]);
  });

  it('in °C, also where it is typed in °F', async () => {
    expect((await change('heatHalfToC', '20', {})).asked).toMatchObject([{ value: 20 }]);
    expect((await change('heatHalfToC', '68 °F', {})).asked).toMatchObject([{ value: 20 }]);
  });

  it('in pounds', async () => {
    const { asked, before, unit } = await change('heatHeavyOverKg', '100', pounds);
    expect([before, unit]).toEqual(['110.23', 'lb']);
    expect(asked).toMatchObject([{ value: 45.359237 }]);
  });

  it('as it stands, where nothing was typed over it', async () => {
    const { asked } = await change('heatHeavyOverKg', '110.23', pounds);
    expect((asked[0] as { value: number }).value).toBeCloseTo(50, 2);
  });

  it('and refused by name, unit and range of the practice', async () => {
    const { asked, text, wrapper } = await change('heatHalfToC', '90', fahrenheit);
    expect(asked).toEqual([]);
    expect(wrapper.get('[role=alert]').text().replaceAll('\u00a0', ' ')).toContain(
      'Value in this practice must be from 23 to 73.4 °F.',
    );
    expect(text.replaceAll('\u202f', ' ')).toContain('23 to 73.4 °F');
  });
});
