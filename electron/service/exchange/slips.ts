import { slipAt, type Weighing } from '../../../core/index.ts';
import { toWeighing } from '../../contract/visits/assessInput.ts';
import type { WeightMapping } from '../../contract/exchange/weightImport.ts';
import type { UnderstoodRow } from './weightRows.ts';

/** Marks new rows whose weight does not fit the dog's others, of the record and of the table. */
export function markSlips(
  rows: readonly UnderstoodRow[],
  known: ReadonlyMap<string, readonly Weighing[]>,
  mapping: WeightMapping,
): UnderstoodRow[] {
  const slips = new Map<UnderstoodRow, string>();
  for (const [dogId, added] of newByDog(rows, mapping)) {
    const before = (known.get(dogId) ?? []).map((weighing) => ({ weighing, row: null }));
    const all = [...before, ...added].sort((a, b) => a.weighing.day.localeCompare(b.weighing.day));
    const weighings = all.map(({ weighing }) => weighing);
    for (const [index, { row }] of all.entries()) {
      const why = row === null ? null : slipAt(weighings, index);
      if (row !== null && why !== null) slips.set(row, why);
    }
  }
  return rows.map((row) => ({ ...row, slip: slips.get(row) ?? null }));
}

interface Added {
  readonly weighing: Weighing;
  readonly row: UnderstoodRow;
}

function newByDog(
  rows: readonly UnderstoodRow[],
  { weighingMethod, scaleStepKg }: WeightMapping,
): Map<string, Added[]> {
  const found = new Map<string, Added[]>();
  for (const row of rows) {
    const { state, dogId, day, weightKg } = row;
    if (state !== 'new' || dogId === null || day === null || weightKg === null) continue;
    const list = found.get(dogId) ?? [];
    list.push({ row, weighing: toWeighing({ day, weightKg, weighingMethod, scaleStepKg }) });
    found.set(dogId, list);
  }
  return found;
}
