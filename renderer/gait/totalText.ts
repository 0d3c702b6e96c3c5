import type { TotalChange } from '../../core/index.ts';
import type { Shown } from '../units/shown.ts';

/** A change of a questionnaire's total, with what counts as a difference. */
export function totalChangeText(
  { change, since, leastImportant, verdict }: TotalChange,
  shown: Pick<Shown, 'day'>,
): string {
  const points = Math.abs(change);
  const moved = change === 0 ? 'As' : `${points} ${change < 0 ? 'less' : 'more'} than`;
  const head = `${moved} on ${shown.day(since.day)}`;
  if (leastImportant === null) return `${head}; no least important difference is known here.`;
  return `${head}: ${verdict}; ${leastImportant} points or more count.`;
}
