import fc from 'fast-check';
import { addDays } from '../../../core/day.ts';
import { buildRamp, type RampRequest } from '../../../core/training.ts';

/** A Monday. */
export const DAY = '2026-03-02';
/** A plan to work out by hand: on Mondays, Wednesdays and Fridays, up to half an hour. */
export const request: RampRequest = {
  startDay: DAY,
  start: 'conditioned',
  sessionsPerWeek: 3,
  goal: { continuousMinutes: 30 },
};
export const build = (changes: Partial<RampRequest> = {}) => buildRamp({ ...request, ...changes });

const FIRST_DAY = '2026-01-01';

/** Days of the week that always hold two running days which do not follow one another. */
const weekdays = fc
  .subarray([0, 1, 2, 3, 4, 5, 6] as const, { minLength: 3 })
  .map((days) => [...days]);

export const goals = fc.oneof(
  fc.record({ continuousMinutes: fc.constantFrom(5, 20, 30, 45, 90) }),
  fc.record({
    distanceKm: fc.constantFrom(4, 10),
    paceMinPerKm: fc.constantFrom(5.5, 8),
  }),
);

/** The three starts, all that a request may hold, no event. */
export const openRequests: fc.Arbitrary<RampRequest> = fc
  .record({
    shift: fc.integer({ min: 0, max: 400 }),
    start: fc.constantFrom(
      'conditioned' as const,
      'unconditioned' as const,
      'post-injury' as const,
    ),
    sessionsPerWeek: fc.integer({ min: 2, max: 4 }),
    goal: goals,
    capPercent: fc.constantFrom(undefined, 5, 12.5, 30),
    weekdays: fc.option(weekdays, { nil: undefined }),
    notBefore: fc.option(fc.integer({ min: -20, max: 120 }), { nil: undefined }),
    out: fc.array(
      fc.record({ from: fc.integer({ min: 0, max: 150 }), days: fc.integer({ min: 1, max: 12 }) }),
      {
        maxLength: 3,
      },
    ),
  })
  .map(({ shift, notBefore, out, capPercent, weekdays: open, ...rest }) => {
    const startDay = addDays(FIRST_DAY, shift);
    const daysOut = out.flatMap(({ from, days }) =>
      Array.from({ length: days }, (_, index) => addDays(startDay, from + index)),
    );
    return {
      ...rest,
      startDay,
      daysOut,
      ...(capPercent === undefined ? {} : { capPercent }),
      ...(open === undefined ? {} : { weekdays: open }),
      ...(notBefore === undefined ? {} : { notBeforeDay: addDays(startDay, notBefore) }),
    };
  });

/** As `openRequests`, with an event 1 to 40 weeks after the first day of running. */
export const eventRequests: fc.Arbitrary<RampRequest> = fc
  .tuple(openRequests, fc.integer({ min: 7, max: 280 }))
  .map(([request, days]) => {
    const { notBeforeDay, startDay } = request;
    const first = notBeforeDay !== undefined && notBeforeDay > startDay ? notBeforeDay : startDay;
    return { ...request, eventDay: addDays(first, days) };
  });
