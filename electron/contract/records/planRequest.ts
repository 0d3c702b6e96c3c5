import { z } from 'zod';
import { START_LEVELS } from '../../../core/ramp/types.ts';
import { choice, day, quantity, later, whole } from '../fields.ts';

const goalInput = later(() =>
  z.union([
    z.object({ continuousMinutes: quantity('continuousMinutes') }),
    z.object({ distanceKm: quantity('distanceKm'), paceMinPerKm: quantity('paceMinPerKm') }),
  ]),
);

const LATER_STAGES = ['pull', 'hills', 'speed'] as const;

/** What the practitioner asks of the plan; the service has `core` build the ramp from it. */
export const planRequest = later(() =>
  z.object({
    /** Running if left out. */
    programme: choice('Programme', ['walking', 'running']).optional(),
    startDay: day('First day of the plan'),
    start: choice('Starting level', START_LEVELS),
    sessionsPerWeek: whole('sessionsPerWeek'),
    goal: goalInput(),
    eventDay: day('Day of the event').nullable(),
    capPercent: quantity('capPercent').nullable(),
    /** Days of the week the owner can run, Monday = 0; null for any. */
    weekdays: z
      .array(z.literal([0, 1, 2, 3, 4, 5, 6]))
      .max(7)
      .nullable(),
    /** Days without running: holidays, away. */
    daysOut: z.array(day('Day without running')).max(400),
    /** Climb of each outing, m. */
    climbM: quantity('climbM').nullable(),
    /** The owner's pace, where the goal is in minutes. */
    paceMinPerKm: quantity('paceMinPerKm').nullable(),
    /** Minutes the owner runs without a break today; null or left out where not told. */
    ownerMinutes: quantity('ownerMinutes').nullish(),
    /** Minutes the dog walks briskly today, for a walking programme. */
    walkMinutesNow: quantity('walkMinutesNow').nullish(),
    /** What is added after the goal, one change at a time. */
    laterStages: z.array(choice('Later stage', LATER_STAGES)).max(3),
  }),
);
export type PlanRequest = z.output<ReturnType<typeof planRequest>>;
