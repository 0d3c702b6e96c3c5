import { describe, expect, it } from 'vitest';
import { weightMarks } from '../../../renderer/dogs/weightMarks.ts';
import { DEFAULT_CHOICES, shownWith } from '../../../renderer/units/shown.ts';

const shown = shownWith(DEFAULT_CHOICES);
const stage = (id: string, fromDay: string) => ({ id, fromDay, untilDay: null, text: '' });
const file = {
  foodDecisions: [
    { decidedOn: '2025-01-06', kcalPerDay: 850 },
    { decidedOn: '2025-02-03', kcalPerDay: 850.2 },
    { decidedOn: '2025-03-03', kcalPerDay: 780 },
  ],
  plans: [
    {
      madeOn: '2025-01-06',
      version: 1,
      current: false,
      ramp: { stages: [stage('hills', '2025-02-01')] },
    },
    {
      madeOn: '2025-02-03',
      version: 2,
      current: true,
      ramp: { stages: [stage('time', '2025-02-03'), stage('hills', '2025-04-07')] },
    },
  ],
  visits: [
    { day: '2025-01-06', bcs: 7 },
    { day: '2025-02-03', bcs: null },
    { day: '2025-03-03', bcs: 7 },
    { day: '2025-04-01', bcs: 6 },
  ],
} as unknown as Parameters<typeof weightMarks>[0];
const texts = (from: string) =>
  weightMarks(file, from, shown).map(
    ({ day, words }) => `${day} ${words.replaceAll('\u00a0', ' ')}`,
  );

describe('the marks of the weight chart', () => {
  it('are what changed, in order of days, and not what stayed', () => {
    expect(texts('2025-01-01')).toEqual([
      '2025-01-06 850 kcal/day',
      '2025-01-06 plan 1',
      '2025-01-06 score 7 of 9',
      '2025-02-03 plan 2',
      '2025-03-03 780 kcal/day',
      '2025-04-01 score 6 of 9',
      '2025-04-07 Hills',
    ]);
  });
  it('begin with the first weighing', () => {
    expect(texts('2025-03-03')).toHaveLength(3);
  });
});
