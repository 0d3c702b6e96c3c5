import {
  dayBreaches,
  easyAfterLong,
  firstRunBreaches,
  loadBreaches,
  pathBreaches,
  riseNotes,
  sessionBreaches,
  type Found,
} from './breaches.ts';
import type { Breach, KeptBreach } from './editTypes.ts';
import type { Ramp } from './types.ts';
import { walkRamp, type Walk } from './walk.ts';

/**
 * Checks a plan, edited by hand or not, against the rules it was made with. Every breach names its
 * rule, where it bites, how sure we are, and the practitioner's written reason where one is given.
 * A plan as `buildRamp` makes it has none.
 *
 * @param kept breaches the practitioner keeps, each with a written reason
 * @example checkRamp(sample.ramp) // => []
 */
export function checkRamp(ramp: Ramp, kept: readonly KeptBreach[] = []): Breach[] {
  const walk = walkRamp(ramp);
  const found: Found[] = [
    ...loadBreaches(ramp, walk),
    ...dayBreaches(ramp, walk),
    ...(walk.setting.programme === 'walking' ? [] : runBreaches(ramp, walk)),
  ];
  return found
    .map((breach) => ({ ...breach, keptBecause: keptReason(breach, kept) }))
    .sort((a, b) => a.weekIndex - b.weekIndex);
}

function runBreaches(ramp: Ramp, walk: Walk): Found[] {
  return [
    ...sessionBreaches(ramp, walk),
    ...pathBreaches(ramp, walk),
    ...firstRunBreaches(walk),
    ...easyAfterLong(ramp, walk),
    ...riseNotes(ramp, walk),
  ];
}

function keptReason(breach: Found, kept: readonly KeptBreach[]): string | null {
  const match = kept.find(
    ({ code, weekIndex, day, reason }) =>
      code === breach.code &&
      weekIndex === breach.weekIndex &&
      (day === undefined || day === null || day === breach.day) &&
      reason.trim() !== '',
  );
  return match?.reason ?? null;
}
