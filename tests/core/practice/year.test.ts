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
  const yearOf = () => practiceYear([rusk, anka, milo, early], SPAN);

  it('counts each event in its month, as the dogs it happened to', () => {
    const { months } = yearOf();
    const month = (day: string) => months.find((entry) => entry.day === day)!;
    expect(months).toHaveLength(12);
    expect(month('2025-02-01').started).toEqual(['rusk', 'anka']);
    expect(month('2025-03-01').stopped).toEqual(['anka']);
    expect(month('2025-05-01').reached).toEqual(['rusk']);
    expect(month('2025-05-01').lost).toEqual(['milo']);
    // Begun the year before, and met in this one.
    expect(month('2025-01-01').reached).toEqual(['early']);
  });

  it('shares out what began in the year among what ended, and leaves open what goes on', () => {
    const year = yearOf();
    expect([year.begun, year.ended]).toEqual([4, 3]);
    const of = (outcome: string) => year.outcomes.find((entry) => entry.outcome === outcome)!;
    expect(of('reached').dogIds).toEqual(['rusk']);
    expect(of('reached').share!.mid).toBeCloseTo(100 / 3);
    expect(of('lost').dogIds).toEqual(['milo']);
    expect(of('under way')).toMatchObject({ dogIds: ['anka'], share: null });
  });

  it('names why dogs were stopped, each dog once a cause', () => {
    expect(yearOf().stops).toEqual([{ cause: 'On an outing: lameness', dogIds: ['anka'] }]);
  });

  it('sets the time to the goal beside the plan', () => {
    expect(yearOf().times).toEqual([
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

  it('counts from its first day to its last, in broken months too', () => {
    const begin = (dogId: string, day: string) =>
      dog(dogId, { programmes: [course(day, { kind: 'under way' })], lostSince: day });
    const days = ['2025-03-14', '2025-03-15', '2025-04-30', '2025-05-10', '2025-05-11'];
    const dogs = days.map((day) => begin(day, day));
    const { months, begun } = practiceYear(dogs, { fromDay: '2025-03-15', toDay: '2025-05-10' });
    expect(begun).toBe(3);
    expect(months.map(({ day, started, lost }) => [day, started, lost])).toEqual([
      ['2025-03-01', [days[1]], [days[1]]],
      ['2025-04-01', [days[2]], [days[2]]],
      ['2025-05-01', [days[3]], [days[3]]],
    ]);
    const short = practiceYear(dogs, { fromDay: '2025-03-31', toDay: '2025-05-01' });
    expect(short.months.map(({ day }) => day.slice(5, 7))).toEqual(['03', '04', '05']);
  });

  it('counts losses that reach into it from either side', () => {
    const loss = (fromDay: string, toDay: string) =>
      dog(toDay, {
        loss: {
          fromDay,
          toDay,
          percentPerWeek: 1,
          low: 0,
          high: 2,
          against: 'faster',
          flagged: false,
        },
      });
    const of = (...spans: readonly (readonly [string, string])[]) =>
      practiceYear(
        spans.map(([from, to]) => loss(from, to)),
        SPAN,
      ).losses.length;
    expect(of(['2024-12-01', '2025-01-01'], ['2025-12-31', '2026-02-01'])).toBe(2);
    expect(of(['2024-12-01', '2024-12-31'], ['2026-01-01', '2026-02-01'])).toBe(0);
    const year = practiceYear([loss('2025-01-05', '2025-03-01'), dog('none', {})], SPAN);
    expect(year.losses.map(({ dogId }) => dogId)).toEqual(['2025-03-01']);
    expect(year.insideCorridor!.mid).toBe(0);
  });

  it('calls lost the last programme alone, and only one that was not at its end', () => {
    const outcome = (...ends: readonly ProgrammeCourse['end'][]) =>
      practiceYear(
        [
          dog('a', {
            programmes: ends.map((end, index) => course(`2025-0${index + 1}-03`, end)),
            lostSince: '2025-09-01',
          }),
        ],
        SPAN,
      )
        .outcomes.filter(({ dogIds }) => dogIds.length > 0)
        .map((entry) => entry.outcome);
    expect(outcome({ kind: 'waiting' })).toEqual(['lost']);
    expect(outcome({ kind: 'not told', day: '2025-03-01' })).toEqual(['lost']);
    expect(outcome({ kind: 'reached', day: '2025-03-01' })).toEqual(['reached']);
    expect(outcome({ kind: 'stopped', day: '2025-03-01', reasons: [] })).toEqual(['stopped']);
    const twice = outcome({ kind: 'not told', day: '2025-01-30' }, { kind: 'under way' });
    expect(twice).toEqual(['lost', 'not told']);
  });

  it('names the commonest causes first, all of a stop, and says where none was written down', () => {
    const stopped = (dogId: string, ...reasons: readonly ReturnType<typeof because>[]) =>
      dog(dogId, {
        programmes: [course('2025-01-03', { kind: 'stopped', day: '2025-02-01', reasons })],
      });
    const { stops } = practiceYear(
      [
        stopped('a', because('review-lameness-walk'), because('review-sign')),
        stopped('b', because('review-lameness-trot'), because('review-sign')),
        stopped('c', because('review-missed')),
      ],
      SPAN,
    );
    expect(stops).toEqual([
      { cause: 'A warning sign at a visit', dogIds: ['a', 'b'] },
      { cause: 'Lame at trot at a visit', dogIds: ['b'] },
      { cause: 'Lame at walk at a visit', dogIds: ['a'] },
      { cause: 'Not written down', dogIds: ['c'] },
    ]);
  });

  it('is empty for a practice without dogs', () => {
    const none = practiceYear([], SPAN);
    expect(none.outcomes.every(({ dogIds, share }) => dogIds.length === 0 && share === null)).toBe(
      true,
    );
    expect(none.insideCorridor).toBeNull();
  });
});
