import { BACKUP_LIMITS, IDLE_LIMIT } from '../../../electron/contract/keeping/limits.ts';
import type { Limit, LimitName } from '../../../electron/contract/limits.ts';
import type { Dimension } from '../../../renderer/units/dimensions.ts';

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

const named = (file: string, limit: LimitName, dimension: Dimension, label?: string): FieldRow => ({
  file,
  written: limit,
  limit,
  dimension,
  ...(label === undefined ? {} : { label }),
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

/** Every quantity field there is. A field missing here fails the test that reads the pages. */
export const FIELD_ROWS: readonly FieldRow[] = [
  named('dogs/form/DogFields.vue', 'neuteredAtMonths', 'months'),
  named('dogs/form/DogFields.vue', 'adultWeightKg', 'weight'),
  named('dogs/form/DogFields.vue', 'withersCm', 'length'),
  named('visits/WeightSection.vue', 'weightKg', 'weight'),
  named('visits/WeightSection.vue', 'scaleStepKg', 'scaleStep'),
  named('visits/WeightSection.vue', 'targetWeightKg', 'weight'),
  named('visits/DietTable.vue', 'kcalPer100g', 'energyPer100g', 'Energy'),
  named('visits/DietTable.vue', 'gramsPerDay', 'grams', 'Amount a day'),
  named('settings/FoodsPart.vue', 'kcalPer100g', 'energyPer100g'),
  named('visits/FoodLabel.vue', 'nutrientPct', 'percent', 'Protein'),
  named('visits/FoodLabel.vue', 'gramsPerCup', 'grams'),
  named('visits/FoodSection.vue', 'mealsPerDay', 'count'),
  named('visits/FoodProposalPart.vue', 'kcalPerDay', 'energyPerDay'),
  named('visits/FoodSwitchFields.vue', 'kcalPer100g', 'energyPer100g'),
  named('visits/FoodSwitchFields.vue', 'changeoverDays', 'count'),
  named('visits/PlanGoalFields.vue', 'continuousMinutes', 'minutes'),
  named('visits/PlanGoalFields.vue', 'paceMinPerKm', 'pace', 'The owner’s pace'),
  named('visits/PlanGoalFields.vue', 'distanceKm', 'distance'),
  named('visits/PlanGoalFields.vue', 'paceMinPerKm', 'pace'),
  named('visits/PlanGoalFields.vue', 'walkMinutesNow', 'minutes'),
  named('visits/PlanMoreFields.vue', 'capPercent', 'percent', 'Weekly rise, at most'),
  named('visits/PlanMoreFields.vue', 'ownerMinutes', 'minutes'),
  named('visits/PlanMoreFields.vue', 'climbM', 'climb'),
  named('visits/QuestionnairePart.vue', 'questionnaireTotal', 'count'),
  named('weighings/WeighingFields.vue', 'weightKg', 'weight'),
  named('weighings/WeighingFields.vue', 'scaleStepKg', 'scaleStep'),
  named('exchange/ImportChoices.vue', 'scaleStepKg', 'scaleStep'),
  named('plans/SessionMore.vue', 'runMinutes', 'minutes'),
  named('runs/RunDayPart.vue', 'runMinutes', 'minutes'),
  named('runs/RunDayPart.vue', 'longestRunMinutes', 'minutes'),
  named('runs/RunDayPart.vue', 'runKm', 'distance'),
  named('runs/RunDayPart.vue', 'climbedM', 'climb'),
  named('keeping/KeepingPart.vue', 'retentionYears', 'count'),
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
