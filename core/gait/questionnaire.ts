import { leastDifference, type QuestionnaireTotal } from '../readiness/record.ts';

export type TotalVerdict = 'better' | 'worse' | 'no important change' | 'not judged';

export interface TotalChange {
  /** Points more than at `since`; less is better for the dog. */
  readonly change: number;
  readonly since: QuestionnaireTotal;
  /** Points; null where none is published for a questionnaire of this name. */
  readonly leastImportant: number | null;
  readonly verdict: TotalVerdict;
}

const named = (name: string): string => name.trim().toUpperCase();

/**
 * A total against the last earlier one of the same name; null without one.
 * @example judgeTotal(
 *   { name: 'LOAD', day: '2026-04-01', total: 12 },
 *   [{ name: 'LOAD', day: '2026-03-01', total: 16 }],
 * ) // => { change: -4, leastImportant: 4, verdict: 'better', … }
 */
export function judgeTotal(
  total: QuestionnaireTotal,
  others: readonly QuestionnaireTotal[],
): TotalChange | null {
  const since = others
    .filter(({ name, day }) => named(name) === named(total.name) && day < total.day)
    .reduce<QuestionnaireTotal | null>(
      (last, other) => (last === null || other.day >= last.day ? other : last),
      null,
    );
  if (since === null) return null;
  const change = total.total - since.total;
  const leastImportant = leastDifference(total.name);
  return { change, since, leastImportant, verdict: verdictOf(change, leastImportant) };
}

function verdictOf(change: number, leastImportant: number | null): TotalVerdict {
  if (leastImportant === null) return 'not judged';
  if (change <= -leastImportant) return 'better';
  return change >= leastImportant ? 'worse' : 'no important change';
}
