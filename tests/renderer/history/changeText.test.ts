import { describe, expect, it } from 'vitest';
import type { FieldChange } from '../../../electron/contract/history/change.ts';
import { changeText } from '../../../renderer/history/changeText.ts';
import { DEFAULT_CHOICES, shownWith } from '../../../renderer/units/shown.ts';

const metric = shownWith(DEFAULT_CHOICES);
const pounds = shownWith({ ...DEFAULT_CHOICES, weightUnit: 'lb', dayFormat: 'DD.MM.YYYY' });
const of = (change: Partial<FieldChange>, shown = metric) => {
  const whole: FieldChange = {
    path: 'x',
    label: 'X',
    measure: 'text',
    before: null,
    after: null,
    ...change,
  };
  const { was, is } = changeText(whole, shown);
  return [was, is].map((text) => text.replaceAll(/[\u00a0\u202f]/g, ' '));
};

describe('a change in words', () => {
  it('is in the units and day format of the practice', () => {
    // 1 lb = 0.45359237 kg exactly (international pound).
    expect(of({ measure: 'kg', before: 10, after: 20 }, pounds)).toEqual(['22.0 lb', '44.1 lb']);
    expect(of({ measure: 'day', before: null, after: '2026-03-02' }, pounds)).toEqual([
      'nothing entered',
      '02.03.2026',
    ]);
  });
  it('has as many digits as tell the two sides apart', () => {
    expect(of({ measure: 'g a day', before: 240, after: 240.25 })).toEqual([
      '240.0 g a day',
      '240.3 g a day',
    ]);
  });
  it('reads as on the form', () => {
    expect(
      of({ measure: 'word', path: 'walkBase', before: 'not tested', after: 'passed' }),
    ).toEqual(['Not tested', 'Passed']);
    expect(of({ measure: 'lameness grade', before: null, after: 2 })).toEqual([
      'not looked at',
      '2 of 5',
    ]);
    expect(of({ measure: 'yes or no', before: null, after: true })).toEqual(['no', 'yes']);
    expect(of({ measure: 'order', before: 'a\u001fb', after: 'b\u001fa' })).toEqual([
      'a, b',
      'b, a',
    ]);
  });
});
