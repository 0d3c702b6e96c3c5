import { BACKUP_LIMITS, IDLE_LIMIT } from '../../../electron/contract/keeping/limits.ts';
import { LIMITS, type Limit, type LimitName } from '../../../electron/contract/limits.ts';
import type { Dimension } from '../../../renderer/units/dimensions.ts';
import { written } from './fieldsOfPages.ts';

/** One quantity field of the program, as its page mounts it. */
export interface FieldRow {
  /** File under renderer/, and the limit as written there. */
  readonly file: string;
  readonly written: string;
  readonly limit: LimitName | Limit;
  readonly dimension: Dimension;
  /** Where the page has its own label for it. */
  readonly label?: string;
}

/** Fields that name a limit, read from the pages; a label that is bound there is not known here. */
const NAMED: readonly FieldRow[] = written('QuantityField').flatMap(({ file, attributes }) => {
  const { limit, dimension, label } = attributes;
  if (limit === undefined || !Object.hasOwn(LIMITS, limit)) return [];
  const row = {
    file,
    written: limit,
    limit: limit as LimitName,
    dimension: dimension as Dimension,
  };
  return [label === undefined || label.includes('.') ? row : { ...row, label }];
});

const own = (file: string, written: string, dimension: Dimension, limit: Limit): FieldRow => ({
  file,
  written,
  limit,
  dimension,
});

const limitOf = (label: string, unit: string, min: number, max: number): Limit => ({
  label,
  unit,
  min,
  max,
});

/** `limitOf(…)` of the gait table, once for each kind of measurement. */
const MEASURED = 'limitOf(row.line, cell.side)';

/** Every quantity field there is: one that names no limit and is missing here fails the test. */
export const FIELD_ROWS: readonly FieldRow[] = [
  ...NAMED,
  own(
    'keeping/BackupCountPart.vue',
    'BACKUP_LIMITS.dailyBackups',
    'count',
    BACKUP_LIMITS.dailyBackups,
  ),
  own(
    'keeping/BackupCountPart.vue',
    'BACKUP_LIMITS.weeklyBackups',
    'count',
    BACKUP_LIMITS.weeklyBackups,
  ),
  own('keeping/LockPart.vue', 'IDLE_LIMIT', 'count', IDLE_LIMIT),
  own(
    'plans/EditMinutes.vue',
    'LIMIT',
    'minutes',
    limitOf('Run-minutes of the week', 'min', 1, 960),
  ),
  own('plans/EditSession.vue', 'REPEATS', 'count', {
    ...limitOf('Repeats', 'times', 1, 40),
    whole: true,
  }),
  own('plans/EditSession.vue', 'RUN', 'minutes', limitOf('Run', 'min', 0.5, 240)),
  own('plans/EditSession.vue', 'WALK', 'minutes', limitOf('Walk', 'min', 0, 30)),
  own(
    'heat/HeatNow.vue',
    'TEMP',
    'temperature',
    limitOf('Air temperature in the shade', '°C', -40, 60),
  ),
  own('visits/TreatPieces.vue', 'PIECES', 'count', {
    ...limitOf('Pieces', 'a day', 1, 100),
    whole: true,
  }),
  own('visits/TreatPieces.vue', 'GRAMS', 'grams', limitOf('Weight of a piece', 'g', 0.1, 500)),
  own('visits/TreatPieces.vue', 'KCAL', 'energy', limitOf('Energy of a piece', 'kcal', 0.1, 2000)),
  own('heat/HeatNow.vue', 'HUMIDITY', 'percent', limitOf('Humidity', '%', 0, 100)),
  own('gait/MeasureTable.vue', MEASURED, 'degrees', limitOf('Hip flexion, left', '°', 0, 270)),
  own('gait/MeasureTable.vue', MEASURED, 'girth', limitOf('Thigh girth, left', 'cm', 5, 100)),
  own('gait/MeasureTable.vue', MEASURED, 'weight', limitOf('Standing weight, left', 'kg', 0, 150)),
  own('rules/RuleLine.vue', 'limit', 'percent', limitOf('Value in this practice', '%', 5, 30)),
  own(
    'rules/RuleLine.vue',
    'limit',
    'temperature',
    limitOf('Value in this practice', '°C', -5, 23),
  ),
  own(
    'rules/RuleLine.vue',
    'limit',
    'temperatureShift',
    limitOf('Value in this practice', '°C', 1, 6),
  ),
  own('rules/RuleLine.vue', 'limit', 'weight', limitOf('Value in this practice', 'kg', 25, 70)),
  own('rules/RuleLine.vue', 'limit', 'count', {
    ...limitOf('Value in this practice', 'weeks', 3, 6),
    whole: true,
  }),
];

/** Limits no quantity field asks for by name, each with the reason. */
export const NOT_TYPED: Readonly<Partial<Record<LimitName, string>>> = {
  bcs: 'chosen on a scale',
  lameness: 'chosen on a scale',
  palpation: 'chosen on a scale',
  sessionsPerWeek: 'chosen from a list',
  jointAngle: 'typed in the table of measurements, under the name of its line',
  girthCm: 'typed in the table of measurements, under the name of its line',
  standingKg: 'typed in the table of measurements, under the name of its line',
  footfallSeconds: 'tapped, or written as a list of times',
  revision: 'counted by the record',
  batchDogs: 'counted by the sheets to print',
  listOffset: 'counted by the list',
  calendarYear: 'chosen from a list',
};
