import type { IsoDay } from '../day.ts';
import type { Provenance } from '../figure.ts';
import { from } from '../origin.ts';
import type { Ramp } from './types.ts';

/** Continuous trot from which endurance is trained: minutes, and times a week. */
export const ENDURANCE_STIMULUS = { minutes: 20, timesPerWeek: 3 } as const;

export const ENDURANCE_PROVENANCE: Provenance = from('C', 'S', 'zinkVanDyke');

/**
 * The first day of the week from which the plan trains endurance: 20 min without a break, three
 * times a week. Null where it does not come that far.
 * @example enduranceFrom(sample.ramp) // => null
 * Source: Zink & Van Dyke (S).
 */
export function enduranceFrom(ramp: Ramp): IsoDay | null {
  const { minutes, timesPerWeek } = ENDURANCE_STIMULUS;
  const week = ramp.weeks.find(({ sessions }) => {
    const long = sessions.filter(
      ({ kind, runMinutes }) => kind === 'continuous' && runMinutes >= minutes,
    );
    return long.length >= timesPerWeek;
  });
  return week?.startDay ?? null;
}
