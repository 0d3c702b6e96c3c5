import type { ChartTable } from '../chart/table.ts';
import type { LamenessChange } from '../../core/index.ts';
import { courseName, type LamenessCourse } from './lamenessCourse.ts';

/** "Left hind at trot better": what was not looked at shows in its own column. */
const turnsOf = (changes: readonly LamenessChange[]): string =>
  changes
    .filter(({ verdict }) => verdict === 'better' || verdict === 'worse')
    .map((change) => `${courseName(change)} ${change.verdict}`)
    .join('; ');

/** The grades of every visit, a column for each limb and gait, and what changed. */
export function lamenessTable(course: LamenessCourse): ChartTable {
  return {
    columns: [
      { head: 'Day', unit: '', kind: 'day' },
      ...course.limbs.map((limb) => ({
        head: courseName(limb),
        unit: 'of 5',
        kind: 'number' as const,
        digits: 0,
      })),
      { head: 'Change', unit: '', kind: 'text' },
    ],
    rows: course.days.map((day, index) => [
      day,
      ...course.limbs.map(({ grades }) => grades[index] ?? null),
      turnsOf(course.changes[index] ?? []),
    ]),
  };
}
