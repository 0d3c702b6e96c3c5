import { slipAt, type Weighing } from '../../../core/index.ts';
import { toWeighing } from '../../contract/visits/assessInput.ts';
import {
  SAME_WEIGHT_KG,
  weighingProblem,
  type WeighingKnown,
} from '../../contract/weighings/weighing.ts';
import type {
  CellProblem,
  ImportRow,
  RowState,
  WeightMapping,
} from '../../contract/exchange/weightImport.ts';
import { readDay, readWeight, type Read } from './cells.ts';
import type { TableRow } from './csvRead.ts';
import type { DogFinder, KnownDog } from './whichDog.ts';

/** A row of the table with the dog it was understood to be of. */
export interface UnderstoodRow extends ImportRow {
  readonly dogId: string | null;
}

/** What the rows of a table are held against. */
export interface RowSurroundings {
  readonly mapping: WeightMapping;
  readonly columns: readonly string[];
  readonly dogs: DogFinder;
  readonly today: string;
  /** Lines of the rows that are left out. */
  readonly leftOut: ReadonlySet<number>;
  /** Every weight in the record of a dog. */
  weightsOf(dogId: string): WeighingKnown['weights'];
}

/** Understands every row of a table; rows further up count as known to those below. */
export function understandRows(
  rows: readonly TableRow[],
  around: RowSurroundings,
): UnderstoodRow[] {
  const seen = new Map<string, { day: string; weightKg: number }[]>();
  return rows.map((row) => {
    const understood = understand(row, around);
    if (around.leftOut.has(row.line)) return { ...understood, state: 'left out' as const };
    const { dogId, day, weightKg, state } = understood;
    if (state !== 'new' || dogId === null || day === null || weightKg === null) return understood;
    const key = `${dogId} ${day}`;
    const before = seen.get(key) ?? [];
    if (before.some((entry) => Math.abs(entry.weightKg - weightKg) < SAME_WEIGHT_KG)) {
      return { ...understood, state: 'repeated' as const };
    }
    seen.set(key, [...before, { day, weightKg }]);
    return understood;
  });
}

function understand(row: TableRow, around: RowSurroundings): UnderstoodRow {
  const { mapping, columns } = around;
  const cell = (column: number | null): string =>
    column === null ? '' : (row.cells[column] ?? '');
  const name = (column: number): string => columns[column] ?? `Column ${column + 1}`;
  const dogCell = mapping.dog.by === 'column' ? cell(mapping.dog.column) : '';
  const dog = dogOf(around, row, dogCell);
  const day = readDay(cell(mapping.dayColumn), mapping.dayFormat);
  const weight = readWeight(cell(mapping.weightColumn), mapping);

  const problems: CellProblem[] = [];
  if (row.brokenQuotes) {
    problems.push({ column: null, message: 'The quotes of this row do not fit together.' });
  }
  const dogColumn = mapping.dog.by === 'column' ? name(mapping.dog.column) : null;
  if (dog.problem !== null) problems.push({ column: dogColumn, message: dog.problem });
  if (day.problem !== null)
    problems.push({ column: name(mapping.dayColumn), message: day.problem });
  if (weight.problem !== null) {
    problems.push({ column: name(mapping.weightColumn), message: weight.problem });
  }
  const stands = standing(around, dog.value, day.value, weight.value);
  if (stands.problem !== null) {
    const column = stands.field === 'day' ? mapping.dayColumn : mapping.weightColumn;
    problems.push({ column: name(column), message: stands.problem });
  }
  return {
    line: row.line,
    state: problems.length > 0 ? 'refused' : stands.state,
    dogId: dog.value?.id ?? null,
    dogName: dog.value?.name ?? null,
    day: day.value,
    weightKg: weight.value,
    asWritten: {
      dog: dogCell,
      day: cell(mapping.dayColumn),
      weight: cell(mapping.weightColumn),
    },
    problems,
    slip: null,
  };
}

function dogOf({ mapping, dogs }: RowSurroundings, row: TableRow, written: string): Read<KnownDog> {
  if (mapping.dog.by === 'choice') {
    const dog = dogs.byId(mapping.dog.dogId);
    if (dog !== null) return { value: dog, problem: null };
    return { value: null, problem: 'The chosen dog is not in the records.' };
  }
  const { ownerColumn } = mapping.dog;
  return dogs.byName(written, ownerColumn === null ? '' : (row.cells[ownerColumn] ?? ''));
}

interface Standing {
  readonly state: RowState;
  readonly problem: string | null;
  readonly field: 'day' | 'weightKg';
}

/** What a readable row is beside the record: new, known, or against its rules. */
function standing(
  { today, weightsOf }: RowSurroundings,
  dog: KnownDog | null,
  day: string | null,
  weightKg: number | null,
): Standing {
  const fine: Standing = { state: 'new', problem: null, field: 'day' };
  if (dog === null || day === null) return fine;
  // Day and birth can be held against each other before the weight is readable.
  const weights = weightKg === null ? [] : weightsOf(dog.id);
  const weighing = { day, weightKg: weightKg ?? 0 };
  const problem = weighingProblem(weighing, { today, birthDay: dog.birthDay, weights });
  if (problem === null) return fine;
  if (problem.code === 'duplicate') return { ...fine, state: 'known' };
  return { state: 'refused', problem: problem.message, field: problem.field };
}

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
  const added = rows.flatMap((row) => {
    const { state, dogId, day, weightKg } = row;
    if (state !== 'new' || dogId === null || day === null || weightKg === null) return [];
    return [{ row, dogId, weighing: toWeighing({ day, weightKg, weighingMethod, scaleStepKg }) }];
  });
  return Map.groupBy(added, ({ dogId }) => dogId);
}
