import { inRange } from '../check.ts';
import { dayNumber, type IsoDay } from '../day.ts';
import { METABOLIC_EXPONENT } from '../energy/resting.ts';
import { Z90 } from '../energy/maintenance.ts';
import { estimate, type Estimate } from '../figure.ts';
import { measured, type MeasuredWeight, type Weighing } from './weighing.ts';

/** Energy in adipose change, kcal/kg (Hand Table 27-15, S). */
export const KCAL_PER_KG_CHANGE = 7920;

/** What the dog ate from a day on, until the next entry. */
export interface Intake {
  readonly fromDay: IsoDay;
  readonly kcalPerDay: number;
}

/** A 90 % range around a median, taken as log-normal. */
export interface EnergyPrior {
  readonly mid: number;
  readonly low: number;
  readonly high: number;
}

export interface OwnEnergy extends Estimate {
  /** True once the record narrows the range by a fifth or more against the formula. */
  readonly informative: boolean;
  readonly sentence: string;
  /** Days between first and last weighing that count. */
  readonly spanDays: number;
}

/** Width of the posterior against the prior above which the record counts as silent (D). */
const SILENT_ABOVE = 0.8;
const GRID_POINTS = 401;
/** Standard deviations of the prior the grid spans to either side. */
const GRID_REACH = 5;

const INPUT_RANGE = { min: 1, max: 20000 };

/**
 * The dog's own maintenance energy, kcal/day, from what it ate and what it weighed: posterior median
 * with a 90 % interval, at the latest weight.
 *
 * Model: `weight(t) = w0 + (eaten(t) − M × τ(t)) / 7920`, τ counting days by (kg / latest kg)^0.75,
 * so that a lighter dog is expected to need less; weighings carry their own normal errors; w0 is
 * unknown with a flat prior; M has the formula's log-normal prior. For a given M the model is
 * linear with one free constant, so w0 integrates out exactly, and what is left is one dimension: a
 * grid over log M. A grid was chosen over a linear-Gaussian filter because the prior is log-normal
 * and skewed and the grid is exact for it; no quantity is tuned.
 *
 * Without two weighings on different days or a logged intake it returns the prior.
 *
 * @throws RangeError for energies outside 1–20000 kcal/day, a prior that is not low < mid < high,
 *   weights or days out of range
 * Sources: adipose energy Hand et al. 2010 (S); prior by its own sources; scale error ours (D).
 */
export function estimateMaintenance(input: {
  readonly prior: EnergyPrior;
  readonly weighings: readonly Weighing[];
  readonly intakes: readonly Intake[];
}): OwnEnergy {
  const { prior } = input;
  checkPrior(prior);
  const logSd = Math.log(prior.high / prior.low) / (2 * Z90);
  const intakes = orderedIntakes(input.intakes);
  const first = intakes[0];
  const all = measured(input.weighings);
  const points = first === undefined ? [] : all.filter((point) => point.dayNumber >= first.day);
  const spanDays = points.length < 2 ? 0 : points.at(-1)!.dayNumber - points[0]!.dayNumber;
  if (spanDays === 0) return result(prior.mid, prior.low, prior.high, prior, 0, points.length);
  const logMid = Math.log(prior.mid);
  const posterior = gridPosterior(points, intakes, logMid, logSd);
  const at = (share: number): number => Math.exp(quantile(posterior, share));
  return result(at(0.5), at(0.05), at(0.95), prior, spanDays, points.length);
}

interface DatedIntake {
  readonly day: number;
  readonly kcalPerDay: number;
}

function checkPrior(prior: EnergyPrior): void {
  for (const name of ['mid', 'low', 'high'] as const) {
    inRange(`prior.${name}`, prior[name], 'kcal/day', { min: 0.1, max: 50000 });
  }
  inRange('prior.low', prior.low, 'kcal/day', { min: 0.1, max: prior.mid });
  inRange('prior.high', prior.high, 'kcal/day', { min: prior.mid * 1.0001, max: 50000 });
}

function orderedIntakes(intakes: readonly Intake[]): DatedIntake[] {
  return intakes
    .map((intake, index) => ({
      day: dayNumber(intake.fromDay, `intakes[${index}].fromDay`),
      kcalPerDay: inRange(
        `intakes[${index}].kcalPerDay`,
        intake.kcalPerDay,
        'kcal/day',
        INPUT_RANGE,
      ),
    }))
    .sort((a, b) => a.day - b.day);
}

/** Energy eaten from the first intake up to `day`, kcal. */
function eatenUpTo(intakes: readonly DatedIntake[], day: number): number {
  return intakes.reduce((sum, intake, index) => {
    const end = Math.min(day, intakes[index + 1]?.day ?? day);
    return sum + Math.max(0, end - intake.day) * intake.kcalPerDay;
  }, 0);
}

/** Days counted by metabolic size relative to the latest weight, by trapezoids between weighings. */
function metabolicDays(points: readonly MeasuredWeight[]): number[] {
  const latest = points.at(-1)!.weightKg;
  const share = points.map(({ weightKg }) => (weightKg / latest) ** METABOLIC_EXPONENT);
  let total = 0;
  return points.map((point, index) => {
    if (index > 0) {
      const days = point.dayNumber - points[index - 1]!.dayNumber;
      total += (days * (share[index]! + share[index - 1]!)) / 2;
    }
    return total;
  });
}

interface Grid {
  readonly logs: readonly number[];
  readonly weights: readonly number[];
}

function gridPosterior(
  points: readonly MeasuredWeight[],
  intakes: readonly DatedIntake[],
  logMid: number,
  logSd: number,
): Grid {
  const tau = metabolicDays(points);
  const eaten = points.map(({ dayNumber: day }) => eatenUpTo(intakes, day));
  const logs = Array.from(
    { length: GRID_POINTS },
    (_, index) => logMid + logSd * GRID_REACH * ((2 * index) / (GRID_POINTS - 1) - 1),
  );
  const logDensity = logs.map((log) => {
    const kcal = Math.exp(log);
    const start = points.map(
      (point, index) => point.weightKg - (eaten[index]! - kcal * tau[index]!) / KCAL_PER_KG_CHANGE,
    );
    return -0.5 * ((log - logMid) / logSd) ** 2 - 0.5 * spreadOfStart(start, points);
  });
  const top = Math.max(...logDensity);
  return { logs, weights: logDensity.map((value) => Math.exp(value - top)) };
}

/** Chi-square left when the unknown starting weight takes its best value (its integral). */
function spreadOfStart(start: readonly number[], points: readonly MeasuredWeight[]): number {
  let weightSum = 0;
  let mean = 0;
  points.forEach(({ sdKg }, index) => {
    weightSum += 1 / sdKg ** 2;
    mean += start[index]! / sdKg ** 2;
  });
  mean /= weightSum;
  return points.reduce((sum, { sdKg }, index) => sum + ((start[index]! - mean) / sdKg) ** 2, 0);
}

/** Quantile of a density on an even grid, linear between the grid's points. */
function quantile({ logs, weights }: Grid, share: number): number {
  const steps = weights.map((weight, index) =>
    index === 0 ? 0 : (weight + weights[index - 1]!) / 2,
  );
  const wanted = share * steps.reduce((a, b) => a + b, 0);
  let total = 0;
  for (let index = 1; index < logs.length; index += 1) {
    const step = steps[index]!;
    if (total + step >= wanted && step > 0) {
      return logs[index - 1]! + ((wanted - total) / step) * (logs[index]! - logs[index - 1]!);
    }
    total += step;
  }
  return logs.at(-1)!;
}

const SILENT = 'The record does not yet tell more than the formula.';
const TELLING = 'The record of this dog narrows the formula down.';

function result(
  mid: number,
  low: number,
  high: number,
  prior: EnergyPrior,
  spanDays: number,
  weighings: number,
): OwnEnergy {
  const informative = Math.log(high / low) < SILENT_ABOVE * Math.log(prior.high / prior.low);
  const sentence = informative ? TELLING : SILENT;
  const built = estimate(mid, low, high, {
    id: 'ownEnergy',
    label: "This dog's own maintenance energy",
    unit: 'kcal/day',
    rangeMeaning: '90 % interval',
    formula: 'eaten − 7920 kcal per kg of weight change, weighed against the formula',
    inputs: [
      { label: 'Formula', value: Math.round(prior.mid), unit: 'kcal/day' },
      { label: 'Weighings', value: weighings, unit: '' },
      { label: 'Time spanned', value: spanDays, unit: 'days' },
    ],
    evidence: 'C',
    mark: 'C',
    sources: ['hand2010', 'ownDecision'],
    notes: [sentence, 'Early weight loss carries water and gut fill, so the first weeks flatter.'],
  });
  return { ...built, informative, sentence, spanDays };
}
