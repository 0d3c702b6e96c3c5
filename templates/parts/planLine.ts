import type { IsoDay } from '../../core/day.ts';
import type { Ramp } from '../../core/training.ts';
import { fill, type Format } from '../format.ts';
import type { PracticeWords } from '../words/enPractice.ts';

/** The plan as a record of a visit tells of it. */
export interface RecordPlan {
  readonly version: number;
  readonly startDay: IsoDay;
  readonly ramp: Ramp;
  /** What has to be settled before it is in force; null where nothing has. */
  readonly waitsFor: 'vet' | 'walking' | 'walk base' | 'outings' | null;
}

/** A plan that waits is not told as if its owner had it. */
export function planLine(
  { version, startDay, ramp, waitsFor }: RecordPlan,
  words: PracticeWords['record'],
  format: Format,
): string {
  if (ramp.weeks.length > 0 && waitsFor !== null) {
    return fill(words.planWaits, { version, why: words.whyPlanWaits[waitsFor] });
  }
  return fill(ramp.weeks.length === 0 ? words.planStopped : words.planDecision, {
    version,
    weeks: ramp.weeks.length,
    day: format.day(startDay),
  });
}
