import { expect, it } from 'vitest';
import { labelInput } from '../../electron/contract/food/records.ts';

it('names the share of a food label that is missing', () => {
  const read = labelInput().safeParse({
    proteinPct: 26,
    fatPct: 15,
    fibrePct: 3,
    moisturePct: 9,
    ashPct: null,
  });
  expect(read.error?.issues.map(({ message }) => message)).toEqual([
    'Ash on the label must be from 0 to 100 %.',
  ]);
});
