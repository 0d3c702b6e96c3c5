import { expect, test } from 'vitest';
import { chipDigits, chipProblem } from '../../core/index.ts';

test.each(['', '  ', '276098106234567', '276 0981 0623 4567', '900-108.001234567'])(
  'takes "%s"',
  (text) => {
    expect(chipProblem(text)).toBeNull();
  },
);

test.each([
  ['27609810623456', '15 digits'],
  ['2760981062345678', '15 digits'],
  ['27609810623456A', '15 digits'],
  ['000098106234567', 'country'],
  // 999 marks transponders on test (ISO 11784, from memory).
  ['999098106234567', 'country'],
])('refuses "%s"', (text, what) => {
  expect(chipProblem(text)).toContain(what);
});

// The national code is a field of 38 bits (ISO 11784, from memory): 2 to the 38th less one.
test('the last twelve digits fit into 38 bits', () => {
  const most = 2n ** 38n - 1n;
  expect(chipProblem(`276${most}`)).toBeNull();
  expect(chipProblem(`276${most + 1n}`)).toContain('read it again');
});

test('drops what people write between the digits', () => {
  expect(chipDigits(' 276 0981-0623.4567')).toBe('276098106234567');
});
