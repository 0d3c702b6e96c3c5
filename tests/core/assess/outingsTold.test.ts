import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ToldResult } from '../../../core/index.ts';
import { holds } from '../../support/laws.ts';
import { DAY, on, resultsOf, seen, sessions, standing, tellings, told } from './dogOnPlan.ts';

const sumOf = ({ done, shortened, missed, held, untold }: Record<string, number | null>) =>
  done! + shortened! + missed! + held! + untold!;

describe('what was told of the outings', () => {
  it('counts each outing that is over once, under what was told of it', () => {
    holds(
      fc.property(tellings, fc.integer({ min: 0, max: 70 }), (list, after) => {
        const results = resultsOf(list);
        const { soFar } = standing(on(after), { results });
        const over = sessions.filter(({ day }) => day < on(after));
        const ofToday = results.find(({ day }) => day === on(after));
        expect(soFar!.planned).toBe(over.length + (ofToday === undefined ? 0 : 1));
        expect(sumOf({ ...soFar! })).toBe(soFar!.planned);
        const counted = results.filter(({ day }) => day <= on(after));
        for (const outcome of ['done', 'shortened', 'missed', 'held'] as const) {
          expect(soFar![outcome]).toBe(counted.filter((each) => each.outcome === outcome).length);
        }
        const ran = counted.filter(({ outcome }) => outcome === 'done' || outcome === 'shortened');
        expect(soFar!.longestRunMinutes === null).toBe(ran.length === 0);
        for (const { longestRunMinutes } of ran) {
          expect(soFar!.longestRunMinutes).toBeGreaterThanOrEqual(longestRunMinutes ?? 0);
        }
      }),
      { seed: 1, numRuns: 40 },
    );
  });

  it('is, of a visit, what came since the visit before, its own day left open', () => {
    const visits = [seen(1, DAY), seen(2, sessions[3]!.day), seen(3, sessions[6]!.day)];
    const results = [told(sessions[3]!.day), told(sessions[4]!.day, { outcome: 'missed' })];
    const { outings, soFar } = standing(sessions[6]!.day, { visits, results });
    expect(outings).toMatchObject({ planned: 3, done: 1, missed: 1, untold: 1 });
    expect(soFar).toMatchObject({ planned: 6, done: 1, missed: 1, untold: 4 });
    // Days later, what was told and what was not count alike.
    const since = standing(sessions[9]!.day, {
      visits,
      results: [...results, told(sessions[7]!.day)],
    });
    expect(since.outings).toMatchObject({ planned: 6, done: 2, missed: 1, untold: 3 });
  });

  it('counts the longest run as recorded, else as planned, and no more than was run', () => {
    const last = sessions.at(-1)!;
    const longest = (changes: Partial<ToldResult>) =>
      standing(on(70), { results: [told(last.day, changes)] }).soFar!.longestRunMinutes;
    expect(longest({})).toBe(last.runMin);
    expect(longest({ longestRunMinutes: last.runMin + 3 })).toBe(last.runMin + 3);
    expect(longest({ outcome: 'shortened', runMinutes: 4 })).toBe(4);
    expect(longest({ outcome: 'shortened' })).toBe(last.runMin / 2);
    expect(longest({ outcome: 'missed' })).toBeNull();
  });
});
