import { ArgumentError, inRange, listOf, weightInRange } from '../check.ts';
import { Z90 } from '../energy/maintenance.ts';
import { METABOLIC_EXPONENT } from '../energy/resting.ts';
import { estimate, type Estimate, type FigureInput } from '../figure.ts';
import { from } from '../origin.ts';
import { KCAL_PER_KG_CHANGE } from './balance.ts';
import {
  checkedRuns,
  orderedIntakes,
  surplusUpTo,
  type DatedKcal,
  type DoneRun,
  type Intake,
} from './eatenLog.ts';
import { fitLine, type Observation } from './line.ts';
import { flagWeighings, type FlaggedWeighing } from './flagWeighings.ts';
import { posteriorOf } from './posterior.ts';
import { STABLE_DAYS } from './trend.ts';
import { measured, toObservation, type MeasuredWeight, type Weighing } from './weighing.ts';

export type { DoneRun, Intake } from './eatenLog.ts';

/** A 90 % range around a median, taken as log-normal; an `Estimate` fits as it is. */
export interface EnergyPrior {
  readonly mid: number;
  readonly low: number;
  readonly high: number;
}

export interface OwnEnergyInput {
  readonly prior: EnergyPrior;
  readonly weighings: readonly Weighing[];
  readonly intakes: readonly Intake[];
  /** Runs done beyond the counted activity: the estimate is then without them. */
  readonly runs?: readonly DoneRun[];
  /** Log-SD of what the model leaves out; by the length of the record where absent. */
  readonly modelErrorSd?: number;
}

export interface OwnEnergy extends Estimate {
  /** True once the record tells more than the formula: see `estimateMaintenance`. */
  readonly informative: boolean;
  readonly sentence: string;
  /** Days between first and last weighing that count. */
  readonly spanDays: number;
  /** Weighings that count: of the last half-year, from 3 days before the first logged intake on. */
  readonly weighings: number;
  /** Mean weight of the record, the weight the energy belongs to, kg; null without a record. */
  readonly atWeightKg: number | null;
  /** The record alone, without the formula, with its 90 % interval; null before it says anything. */
  readonly recordAlone: EnergyPrior | null;
  /** Share of the formula's doubt that is left, 1 = all of it (ratio of the intervals' widths). */
  readonly doubtLeft: number;
  readonly flagged: readonly FlaggedWeighing[];
}

/** The record tells more than the formula once it leaves at most this share of its doubt (D). */
export const TELLING_DOUBT = 0.6;
/** Older weighings do not count: the need of a dog moves with age, season and work (D). */
export const RECORD_DAYS = 182;

/**
 * What the model leaves out (food that is not told, water, a need that falls) as a log-SD: up to 8
 * weeks of record and from 12 weeks on, in proportion between (C: simulation in four worlds).
 */
const MODEL_ERROR = { short: { days: 56, logSd: 0.13 }, long: { days: 84, logSd: 0.06 } } as const;

function modelError(spanDays: number): number {
  const { short, long } = MODEL_ERROR;
  const share = (spanDays - short.days) / (long.days - short.days);
  return short.logSd + Math.min(1, Math.max(0, share)) * (long.logSd - short.logSd);
}

/** A food log may begin this many days after the first weighing that counts (D). */
export const LOG_LATE_DAYS = 3;

/**
 * The dog's own maintenance energy, kcal/day, from what it ate and what it weighed over the last
 * half-year: posterior median with a 90 % interval, at the mean weight of that record.
 *
 * Model: `weight(t) = w0 + (eaten(t) − runs(t) − M t) / 7920`, M constant. Weighings carry the
 * errors of `weightTrend`, w0 is unknown with a flat prior, M has the formula's log-normal prior.
 *
 * Method: the weights are linear in w0 and M, so generalised least squares of
 * `weight − (eaten − runs) / 7920` on the days gives the likelihood of M exactly, as a normal; its
 * product with the log-normal prior is one-dimensional and skewed, so it is put on a grid. A
 * state-space filter would need a random walk of M whose size nobody has measured. To the record's
 * own error comes that of the model, which only simulation can tell (`MODEL_ERROR`).
 *
 * `informative` needs more than 14 days (German 2011, S) and an interval of at most 0.6 of the
 * formula's width (D). What it learns is the need in the owner's own measure: a log that is 10 % short
 * makes it 10 % low, and feeding by the same log is right again. It cannot know that early loss
 * carries water, nor that a slimmer dog needs less (`ownEnergyAt` carries it to another weight):
 * the interval allows for that. `npm run calibration` prints how often it holds the truth.
 *
 * Without two weighings on different days since the first logged intake (or up to 3 days before it,
 * D) it returns the prior.
 *
 * @throws RangeError for energies outside 0–20000 kcal/day, a prior that is not low < mid < high,
 *   weights or days out of range
 * @example estimateMaintenance({
 *   prior: maintenanceEnergy({ weightKg: 25 }),
 *   weighings: [{ day: '2026-03-01', weightKg: 25 }, { day: '2026-04-26', weightKg: 24.2 }],
 *   intakes: [{ fromDay: '2026-03-01', kcalPerDay: 900 }],
 * }) // => { mid: 1009.2, low: 805.5, high: 1221.3, … }
 * Sources: adipose energy Hand et al. 2010 (S); prior by its own sources; scale error ours (D).
 */
export function estimateMaintenance(input: OwnEnergyInput): OwnEnergy {
  const { prior } = input;
  checkPrior(prior);
  const intakes = orderedIntakes(listOf('intakes', input.intakes));
  const runs = checkedRuns(input.runs ?? []);
  const points = counted(measured(listOf('weighings', input.weighings)), intakes);
  const record = fitRecord(points, fromFirstWeighing(points, intakes), runs);
  if (record === null) return build({ ...prior }, prior, points, null, []);
  const leftOut = input.modelErrorSd ?? modelError(spanOf(points));
  const posterior = posteriorOf({
    logMid: Math.log(prior.mid),
    logSd: Math.log(prior.high / prior.low) / (2 * Z90),
    mean: record.kcalPerDay,
    sd: Math.hypot(record.sd, leftOut * record.kcalPerDay),
  });
  const own = { mid: posterior(0.5), low: posterior(0.05), high: posterior(0.95) };
  return build(own, prior, points, record, flagWeighings(points, record.observations));
}

const spanOf = (points: readonly MeasuredWeight[]): number =>
  points.at(-1)!.dayNumber - points[0]!.dayNumber;

/** The weighings of the last half-year since intake is logged, or shortly before. */
function counted(all: readonly MeasuredWeight[], intakes: readonly DatedKcal[]): MeasuredWeight[] {
  const logged = intakes[0]?.day ?? Number.POSITIVE_INFINITY;
  const latest = all.at(-1)?.dayNumber ?? 0;
  return all.filter(
    ({ dayNumber: day }) => day >= logged - LOG_LATE_DAYS && day >= latest - RECORD_DAYS,
  );
}

/** A log begun shortly after the first weighing is taken to hold for the days between. */
function fromFirstWeighing(
  points: readonly MeasuredWeight[],
  intakes: readonly DatedKcal[],
): readonly DatedKcal[] {
  const [first, ...rest] = intakes;
  if (first === undefined || points.length === 0) return intakes;
  return [{ ...first, day: Math.min(first.day, points[0]!.dayNumber) }, ...rest];
}

function checkPrior(prior: EnergyPrior): void {
  if (typeof prior !== 'object' || prior === null) {
    throw new ArgumentError('prior', 'kcal/day', undefined, 'prior must be a range in kcal/day');
  }
  inRange('prior.mid', prior.mid, 'kcal/day', { min: 1, max: 20000 });
  inRange('prior.low', prior.low, 'kcal/day', { min: 0.1, max: prior.mid * 0.9999 });
  inRange('prior.high', prior.high, 'kcal/day', { min: prior.mid * 1.0001, max: 50000 });
}

interface RecordFit {
  readonly kcalPerDay: number;
  readonly sd: number;
  readonly observations: readonly Observation[];
}

/** What the record alone says of M; null without two weighings on different days. */
function fitRecord(
  points: readonly MeasuredWeight[],
  intakes: readonly DatedKcal[],
  runs: readonly DatedKcal[],
): RecordFit | null {
  const observations = points.map((point) => ({
    ...toObservation(point),
    y: point.weightKg - surplusUpTo(point.dayNumber, intakes, runs) / KCAL_PER_KG_CHANGE,
  }));
  const fit = fitLine(observations);
  if (fit === null) return null;
  return {
    kcalPerDay: -KCAL_PER_KG_CHANGE * fit.slope,
    sd: KCAL_PER_KG_CHANGE * fit.slopeSd,
    observations,
  };
}

/** Mean weight over the days of a record with a line, by trapezoids between weighings, kg. */
function meanWeight(points: readonly MeasuredWeight[]): number {
  const area = points.slice(1).reduce((sum, point, index) => {
    const before = points[index]!;
    const between = point.dayNumber - before.dayNumber;
    return sum + (between * (point.typicalKg + before.typicalKg)) / 2;
  }, 0);
  return area / spanOf(points);
}

/**
 * The dog's own energy carried from the mean weight of its record to another weight by kg^0.75.
 * A dog that slims needs less than before: slimmed dogs were measured lower still (German 2011, S).
 * The prior alone, without a record, is returned as it is.
 *
 * @throws RangeError for a weight outside 0.1–150 kg
 * @example ownEnergyAt(sample.own, 20) // => { mid: 864.1, low: 689.6, high: 1045.7 }
 */
export function ownEnergyAt(own: OwnEnergy, weightKg: number): EnergyPrior {
  weightInRange('weightKg', weightKg);
  const { mid, low, high, atWeightKg } = own;
  const factor = atWeightKg === null ? 1 : (weightKg / atWeightKg) ** METABOLIC_EXPONENT;
  return { mid: mid * factor, low: low * factor, high: high * factor };
}

/** A figure of the record is shown to 10 kcal: it is not known better. */
const toTen = (kcal: number): number => Math.max(10, 10 * Math.round(kcal / 10));

/** Beyond what 90 of 100 dogs need, a short or padded log is likelier than such a dog (D). */
const CHECK_LOG = ' That is outside the range of the formula: check the food log.';
const SILENT = 'The record does not yet tell more than the formula.';

function build(
  own: EnergyPrior,
  prior: EnergyPrior,
  points: readonly MeasuredWeight[],
  record: RecordFit | null,
  flagged: readonly FlaggedWeighing[],
): OwnEnergy {
  const spanDays = record === null ? 0 : spanOf(points);
  const doubtLeft = Math.log(own.high / own.low) / Math.log(prior.high / prior.low);
  const informative = spanDays > STABLE_DAYS && doubtLeft <= TELLING_DOUBT;
  const percent = Math.round(100 * (own.mid / prior.mid - 1));
  const outside = own.mid < prior.low || own.mid > prior.high;
  const sentence = `${informative ? tellingSentence(percent) : SILENT}${outside ? CHECK_LOG : ''}`;
  const half = record === null ? 0 : Z90 * record.sd;
  return {
    ...own,
    figure: estimate(toTen(own.mid), toTen(own.low), toTen(own.high), {
      id: 'ownEnergy',
      label: 'This dog’s own maintenance energy',
      unit: 'kcal/day',
      rangeMeaning: '90 % interval',
      formula: 'eaten − 7920 kcal per kg of weight change, weighed against the formula',
      inputs: [
        { label: 'Formula', value: Math.round(prior.mid), unit: 'kcal/day' },
        { label: 'Weighings', value: points.length, unit: '' },
        { label: 'Time spanned', value: spanDays, unit: 'days' },
        ...(record === null ? [] : [meanWeightInput(points)]),
      ],
      ...from('C', 'C', 'hand2010', 'ownDecision'),
      notes: [
        sentence,
        'Early weight loss carries water and gut fill, so the first weeks overstate the need.',
        'It is the need in the measure of the food log: feed by the same log.',
      ],
    }).figure,
    informative,
    sentence,
    spanDays,
    weighings: points.length,
    atWeightKg: record === null ? null : meanWeight(points),
    recordAlone:
      record === null
        ? null
        : {
            mid: record.kcalPerDay,
            low: record.kcalPerDay - half,
            high: record.kcalPerDay + half,
          },
    doubtLeft,
    flagged,
  };
}

function meanWeightInput(points: readonly MeasuredWeight[]): FigureInput {
  const kg = Math.round(10 * meanWeight(points)) / 10;
  return { label: 'Mean weight of the record', value: kg, unit: 'kg' };
}

function tellingSentence(percent: number): string {
  if (percent === 0) return 'The record of this dog agrees with the formula.';
  const side = percent < 0 ? 'less' : 'more';
  return `The record says this dog needs about ${Math.abs(percent)} % ${side} than the formula.`;
}
