import { describe, expect, it } from 'vitest';
import { readDay } from '../../../renderer/units/readDay.ts';
import { dayText } from '../../../renderer/units/shown.ts';

describe('a typed day', () => {
  it.each([
    ['DD.MM.YYYY', '3.4.2022', '2022-04-03'],
    ['DD.MM.YYYY', '03 04 2022', '2022-04-03'],
    ['DD/MM/YYYY', '03/04/2022', '2022-04-03'],
    ['MM/DD/YYYY', '03/04/2022', '2022-03-04'],
    ['MM/DD/YYYY', '06152021', '2021-06-15'],
    ['DD.MM.YYYY', '15062021', '2021-06-15'],
    ['YYYY-MM-DD', '20210615', '2021-06-15'],
    ['YYYY-MM-DD', ' 2021-6-5 ', '2021-06-05'],
    // ISO 8601 has one reading everywhere.
    ['MM/DD/YYYY', '2022-03-04', '2022-03-04'],
  ] as const)('in %s, “%s” is %s', (format, typed, iso) => {
    expect(readDay(typed, format)).toBe(iso);
  });

  it.each([
    ['DD.MM.YYYY', '31.02.2022'],
    ['MM/DD/YYYY', '15/06/2021'],
    ['YYYY-MM-DD', '03/04/2022'],
    ['DD.MM.YYYY', '3.4.22'],
    ['DD.MM.YYYY', 'soon'],
    ['DD.MM.YYYY', '01.01.1979'],
  ] as const)('in %s, “%s” is none', (format, typed) => {
    expect(readDay(typed, format)).toBeNull();
  });

  it('is read back from what is shown, in every format', () => {
    for (const format of ['YYYY-MM-DD', 'DD.MM.YYYY', 'DD/MM/YYYY', 'MM/DD/YYYY'] as const) {
      expect(readDay(dayText('2024-02-29', format), format)).toBe('2024-02-29');
    }
  });
});
