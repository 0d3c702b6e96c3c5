import { compareSides, measurementLabel } from '../../core/index.ts';
import type { Visit } from '../../electron/contract/contract.ts';
import type { Measurement, RuleChange } from '../../electron/contract/records.ts';
import { judge } from './judge.ts';
import { measureKey } from './measureEntry.ts';

/** One measured thing over the visits, oldest first. */
export interface GaitTrend {
  readonly key: string;
  readonly label: string;
  readonly unit: string;
  /** Published mean, where there is one; 0 for a symmetry index. */
  readonly reference: number | null;
  /** Changes up to this are within error; null where none is stated. */
  readonly error: number | null;
  readonly points: readonly { readonly day: string; readonly value: number }[];
  /** What the last value shows, e.g. "within error, against the time before". */
  readonly verdict: string;
}

/** The course of every measurement that was taken, in the order in which they first appear. */
export function measurementTrends(
  visits: readonly Visit[],
  rules: readonly RuleChange[],
): readonly GaitTrend[] {
  const found = new Map<string, { day: string; entry: Measurement }[]>();
  for (const visit of visits) {
    for (const entry of visit.measurements) {
      const key = measureKey(entry);
      found.set(key, [...(found.get(key) ?? []), { day: visit.day, entry }]);
    }
  }
  return [...found].map(([key, entries]) => {
    const now = entries.at(-1)!.entry;
    const before = entries.at(-2);
    const [judged] = judge(
      [now],
      before === undefined ? [] : [before.entry],
      rules,
      null,
    ).byKey.values();
    return {
      key,
      label: measurementLabel(now),
      unit: judged!.figure.unit,
      reference: judged!.reference,
      error: judged!.error,
      points: entries.map(({ day, entry }) => ({ day, value: entry.value })),
      verdict:
        before === undefined ? judged!.verdict : `${judged!.verdict}, against the time before`,
    };
  });
}

/** The course of the symmetry index, left against right, of everything taken on both sides. */
export function symmetryTrends(visits: readonly Visit[]): readonly GaitTrend[] {
  const found = new Map<string, { day: string; value: number; withinError: boolean }[]>();
  for (const visit of visits) {
    for (const side of compareSides(visit.measurements)) {
      const entry = { day: visit.day, value: side.symmetryIndex, withinError: side.withinError };
      found.set(side.label, [...(found.get(side.label) ?? []), entry]);
    }
  }
  return [...found].map(([label, points]) => ({
    key: `symmetry-${label}`,
    label: `${label}, left against right`,
    unit: '%',
    reference: 0,
    error: null,
    points,
    verdict: points.at(-1)!.withinError ? 'sides alike within error' : 'sides differ beyond error',
  }));
}
