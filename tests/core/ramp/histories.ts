import fc from 'fast-check';
import { addDays } from '../../../core/day.ts';
import {
  buildRamp,
  NEXT_DAY_RESPONSES,
  STOP_SIGNS,
  type Ramp,
  type RampSession,
  type ReviewInput,
  type SessionResult,
} from '../../../core/training.ts';
import { openRequests } from './requests.ts';
import { evenly } from '../../support/laws.ts';

/** What comes of one session; missed sessions come in runs, so that there are breaks. */
const outcome = fc.record({
  outcome: fc.constantFrom('done' as const, 'done' as const, 'done' as const, 'shortened' as const),
  nextDay: fc.oneof(
    { weight: 12, arbitrary: fc.constant('normal' as const) },
    { weight: 1, arbitrary: fc.constantFrom(null, ...NEXT_DAY_RESPONSES) },
  ),
  signs: fc.oneof(
    { weight: 30, arbitrary: fc.constant([]) },
    {
      weight: 1,
      arbitrary: fc.constantFrom(...STOP_SIGNS).map((sign) => [sign]),
    },
  ),
  share: evenly(0.05, 1),
});

/** A plan, how far it was followed, with gaps, and the days until the review. */
export const histories: fc.Arbitrary<ReviewInput> = fc
  .record({
    request: openRequests,
    told: fc.array(outcome, { minLength: 1, maxLength: 40 }),
    gaps: fc.array(
      fc.record({ from: fc.integer({ min: 0, max: 30 }), count: fc.integer({ min: 1, max: 12 }) }),
      { maxLength: 2 },
    ),
    wait: fc.integer({ min: 1, max: 40 }),
    prompt: fc.boolean(),
  })
  .map(({ request, told, gaps, wait, prompt }) => {
    const ramp = buildRamp(request);
    const sessions = ramp.weeks.flatMap((week) => week.sessions).slice(0, told.length);
    const results = sessions.map((session, index): SessionResult => {
      const { share, ...rest } = told[index]!;
      if (gaps.some(({ from, count }) => index >= from && index < from + count)) {
        return { day: session.day, outcome: 'missed' };
      }
      const runMinutes =
        rest.outcome === 'shortened' ? { runMinutes: share * session.runMinutes } : {};
      return { day: session.day, ...rest, ...runMinutes };
    });
    const last = sessions.at(-1)?.day ?? request.startDay;
    return { ramp, results, day: addDays(last, prompt ? 1 : wait) };
  });

/** The sessions that were run, with the minutes really run. */
export function sessionsRun(
  input: ReviewInput,
): (RampSession & { readonly result: SessionResult })[] {
  const results = new Map((input.results ?? []).map((result) => [result.day, result]));
  return input.ramp.weeks.flatMap(({ sessions }) =>
    sessions.flatMap((session) => {
      const result = results.get(session.day);
      if (result === undefined || result.outcome === 'missed') return [];
      const runMinutes = result.runMinutes ?? session.runMinutes;
      return [{ ...session, runMinutes, runMin: Math.min(session.runMin, runMinutes), result }];
    }),
  );
}

/** Run-minutes of the weeks of the plan, as they were run. */
export function weeksRun(input: ReviewInput): number[] {
  const run = new Map(sessionsRun(input).map(({ day, runMinutes }) => [day, runMinutes]));
  return input.ramp.weeks
    .map(({ sessions }) => sessions.reduce((sum, { day }) => sum + (run.get(day) ?? 0), 0))
    .filter((minutes) => minutes > 0);
}

/** A plan with its first `count` sessions done, clean. */
export function followed(ramp: Ramp, count: number): SessionResult[] {
  return ramp.weeks
    .flatMap(({ sessions }) => sessions)
    .slice(0, count)
    .map(({ day }) => ({ day, outcome: 'done', nextDay: 'normal' }));
}
