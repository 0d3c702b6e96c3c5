import { describe, expect, it } from 'vitest';
import { practiceYear, type CountedDog, type ProgrammeCourse } from '../../../core/index.ts';

const SPAN = { fromDay: '2025-01-01', toDay: '2025-12-31' };
const dog = (dogId: string, changes: Partial<CountedDog>): CountedDog => ({
  dogId,
  programmes: [],
  loss: null,
  lostSince: null,
  ...changes,
});
const course = (startedOn: string, end: ProgrammeCourse['end']): ProgrammeCourse => ({
  startedOn,
  plannedDays: 70,
  end,
});
const because = (code: string, params = {}) => ({ code, params, text: '' }) as never;

const rusk = dog('rusk', {
  programmes: [course('2025-02-03', { kind: 'reached', day: '2025-05-05' })],
});
const anka = dog('anka', {
  programmes: [
    course('2025-02-10', {
      kind: 'stopped',
      day: '2025-03-01',
      reasons: [
        because('review-stop-sign', { sign: 'lameness' }),
        because('review-missed'),
        because('review-stop-sign', { sign: 'lameness' }),
      ],
    }),
    course('2025-06-01', { kind: 'under way' }),
  ],
});
const milo = dog('milo', {
  programmes: [course('2025-04-01', { kind: 'under way' })],
  lostSince: '2025-05-20',
});
const early = dog('early', {
  programmes: [course('2024-11-01', { kind: 'reached', day: '2025-01-10' })],
});

describe('the practice’s year', () => {
  const year = practiceYear([rusk, anka, milo, early], SPAN);
  const month = (day: string) => year.months.find((entry) => entry.day === day)!;

  it('counts each event in its month, as the dogs it happened to', () => {
    expect(year.months).toHaveLength(12);
    expect(month('2025-02-01').started).toEqual(['rusk', 'anka']);
    expect(month('2025-03-01').stopped).toEqual(['anka']);
    expect(month('2025-05-01').reached).toEqual(['rusk']);
    expect(month('2025-05-01').lost).toEqual(['milo']);
    // Begun the year before, and met in this one.
    expect(month('2025-01-01').reached).toEqual(['early']);
  });

  it('shares out what began in the year among what ended, and leaves open what goes on', () => {
    expect([year.begun, year.ended]).toEqual([4, 3]);
    const of = (outcome: string) => year.outcomes.find((entry) => entry.outcome === outcome)!;
    expect(of('reached').dogIds).toEqual(['rusk']);
    expect(of('reached').share!.mid).toBeCloseTo(100 / 3);
    expect(of('lost').dogIds).toEqual(['milo']);
    expect(of('under way')).toMatchObject({ dogIds: ['anka'], share: null });
  });

  it('names why dogs were stopped, each dog once a cause', () => {
    expect(year.stops).toEqual([{ cause: 'On an outing: lameness', dogIds: ['anka'] }]);
  });

  it('sets the time to the goal beside the plan', () => {
    expect(year.times).toEqual([
      { dogId: 'rusk', plannedDays: 70, takenDays: 91 },
      { dogId: 'early', plannedDays: 70, takenDays: 70 },
    ]);
  });

  it('takes losses with weighings in the year, the slowest first', () => {
    const loss = (percentPerWeek: number, toDay: string, against: 'inside' | 'slower') => ({
      loss: {
        fromDay: '2024-12-01',
        toDay,
        percentPerWeek,
        low: percentPerWeek - 0.2,
        high: percentPerWeek + 0.2,
        against,
        flagged: false,
      },
    });
    const dogs = [
      dog('fast', loss(1, '2025-02-01', 'inside')),
      dog('slow', loss(0.2, '2025-02-01', 'slower')),
      dog('before', loss(1, '2024-12-30', 'inside')),
    ];
    const { losses, insideCorridor } = practiceYear(dogs, SPAN);
    expect(losses.map(({ dogId }) => dogId)).toEqual(['slow', 'fast']);
    expect(insideCorridor!.mid).toBe(50);
  });

  it('is empty for a practice without dogs', () => {
    const none = practiceYear([], SPAN);
    expect(none.outcomes.every(({ dogIds, share }) => dogIds.length === 0 && share === null)).toBe(
      true,
    );
    expect(none.insideCorridor).toBeNull();
  });
});
