import { dayNumber } from '../../../core/day.ts';
import { localDay } from '../day.ts';
import type { BackupLine } from '../../contract/calls/backup.ts';

/** How many backups stay. */
export interface Keeping {
  /** The newest of each of so many days. */
  readonly daily: number;
  /** The newest of each of so many weeks. */
  readonly weekly: number;
}

/** Of each kind made before something was changed, so many stay (D). */
const BEFORE_CHANGES = 5;
/** 1970-01-01, from which days are counted, was a Thursday; weeks begin on Monday. */
const THURSDAY = 3;

/**
 * The backups that may go, out of a list with the newest first. The newest of a kind always stays.
 */
export function dispensable(all: readonly BackupLine[], keeping: Keeping): readonly BackupLine[] {
  const automatic = all.filter(({ reason }) => reason === 'automatic');
  const stay = new Set<BackupLine>([
    ...newestOfEach(automatic, keeping.daily, dayOf),
    ...newestOfEach(automatic, keeping.weekly, (backup) =>
      Math.floor((dayOf(backup) + THURSDAY) / 7),
    ),
    ...automatic.slice(0, 1),
    ...all.filter(({ reason }) => reason === 'before-schema').slice(0, BEFORE_CHANGES),
    ...all.filter(({ reason }) => reason === 'before-restore').slice(0, BEFORE_CHANGES),
  ]);
  return all.filter((backup) => !stay.has(backup));
}

const dayOf = ({ madeAt }: BackupLine): number => dayNumber(localDay(new Date(madeAt)));

function newestOfEach(
  newestFirst: readonly BackupLine[],
  most: number,
  periodOf: (backup: BackupLine) => number,
): readonly BackupLine[] {
  const byPeriod = new Map<number, BackupLine>();
  for (const backup of newestFirst) {
    const period = periodOf(backup);
    if (!byPeriod.has(period)) byPeriod.set(period, backup);
  }
  return [...byPeriod.values()].slice(0, most);
}
