import { describe, expect, it } from 'vitest';
import type { PresentState } from '../../../core/index.ts';
import { dueText, weightSentence } from '../../../renderer/dogs/stateSentences.ts';
import { DEFAULT_CHOICES, shownWith } from '../../../renderer/units/shown.ts';

const plain = (text: string) => text.replaceAll(/\s/g, ' ');
const shown = shownWith(DEFAULT_CHOICES);
const of = (weight: PresentState['weight'], targetKg: number | null) =>
  ({ weight, targetKg }) as PresentState<unknown, unknown>;

describe('what the page of a dog says first', () => {
  it('tells the weight against its target by the numbers that are shown', () => {
    // 25.949 is shown as 25.9 and 22.05 as 22.1: apart they are 3.9, shown apart 3.8.
    const heavy = of({ kg: 25.949, day: '2026-01-05', against: 'above', gapKg: 3.899 }, 22.0501);
    expect(plain(weightSentence(heavy, 7, shown))).toBe(
      '25.9 kg, 3.8 kg above the target of 22.1 kg; condition 7 of 9.',
    );
    const there = of({ kg: 22, day: '2026-01-05', against: 'at target', gapKg: 0.1 }, 22.1);
    expect(plain(weightSentence(there, 5, shown))).toBe(
      '22.0 kg, at the target of 22.1 kg; condition 5 of 9.',
    );
    const free = of({ kg: 22, day: '2026-01-05', against: 'no target', gapKg: 0 }, null);
    expect(plain(weightSentence(free, null, shown))).toBe('22.0 kg.');
  });

  it('says of a day that it is today, or over', () => {
    expect(dueText('2026-01-05', '2026-01-05', shown)).toBe('today');
    expect(dueText('2026-01-05', '2026-01-06', shown)).toBe('Mon 2026-01-05, overdue');
    expect(dueText('2026-01-05', '2026-01-04', shown)).toBe('Mon 2026-01-05');
  });
});
