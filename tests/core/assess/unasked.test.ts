import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { askedSessions, unaskedDays, type PresentPlan } from '../../../core/index.ts';
import { holds } from '../../support/laws.ts';
import {
  DAY,
  on,
  plan,
  resultsOf,
  seen,
  sessions,
  standing,
  tellings,
  told,
  walks,
} from './dogOnPlan.ts';
import { grownDog } from './visits.ts';

const SOUND = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 };
const LAME = { lamenessTrot: { ...SOUND, leftHind: 2 } };
const days = sessions.map(({ day }) => day);
const unasked = (visits: ReturnType<typeof seen>[], plans: PresentPlan[] = [plan()]) =>
  unaskedDays({ record: { dog: grownDog, visits, day: on(60) }, plans });

describe('the days on which a plan waited', () => {
  const lame = seen(2, days[3]!, LAME);
  const sound = seen(3, days[6]!);

  it('are those after the visit that held it back, up to the day of the one that lifted it', () => {
    expect(unasked([seen(1, DAY)])).toEqual([]);
    expect(unasked([seen(1, DAY), lame])).toEqual(days.slice(4));
    expect(unasked([seen(1, DAY), lame, sound])).toEqual(days.slice(4, 7));
  });

  it('leave out a day whose session was planned at the visit of that day', () => {
    const again = plan({ version: 2, madeOn: days[6]!, ramp: plan().ramp });
    const from = { ...again, ramp: { ...again.ramp, weeks: again.ramp.weeks.slice(2) } };
    expect(from.ramp.weeks[0]!.startDay).toBe(days[6]);
    expect(unasked([seen(1, DAY), lame, sound], [plan(), from])).toEqual(days.slice(4, 6));
    expect(unasked([seen(1, DAY), { ...sound, ...LAME }], [plan(), from])).toEqual(days.slice(6));
  });

  it('are all days of a plan of runs while only walking is allowed, and none of one of walks', () => {
    const visits = [seen(1, DAY, { walkBase: 'failed' })];
    expect(unasked(visits)).toEqual(days);
    expect(unasked(visits, [plan({ ramp: walks })])).toEqual([]);
    expect(unasked([seen(1, DAY), seen(2, on(1), { signsAsked: false })])).toEqual([]);
  });

  it('begin with the first visit: before it nobody judged', () => {
    expect(unasked([seen(1, days[2]!, LAME)])).toEqual(days.slice(3));
    expect(unasked([])).toEqual([]);
    expect(unasked([seen(1, DAY, LAME)], [])).toEqual([]);
  });

  it('count as no outing unless one was run', () => {
    const visits = [seen(1, DAY), lame, sound];
    const results = [told(days[4]!), told(days[5]!, { outcome: 'missed' })];
    const state = standing(days[7]!, { visits, results });
    expect(state.unasked).toEqual(days.slice(4, 7));
    expect(state.soFar).toMatchObject({ planned: 5, done: 1, missed: 0, untold: 4 });
  });
});

describe('the sessions that were asked for', () => {
  it('are all that did not wait, and those run all the same, in order', () => {
    holds(
      fc.property(tellings, fc.subarray(days), (list, waited) => {
        const results = resultsOf(list);
        const asked = askedSessions(sessions, waited, results).map(({ day }) => day);
        const ran = (day: string) =>
          results.some((each) => each.day === day && /^(done|shortened)$/.test(each.outcome));
        for (const day of days) expect(asked.includes(day)).toBe(!waited.includes(day) || ran(day));
        expect(asked).toEqual([...new Set(asked)].sort());
      }),
      { seed: 1, numRuns: 50 },
    );
  });
});
