import { Z90 } from '../energy/maintenance.ts';
import { METABOLIC_EXPONENT } from '../energy/resting.ts';
import { KCAL_PER_KG_CHANGE } from './balance.ts';
import { checkedRuns, orderedIntakes, surplusUpTo } from './eatenLog.ts';
import { LOG_LATE_DAYS, RECORD_DAYS, type OwnEnergyInput } from './ownEnergy.ts';
import { measured, type MeasuredWeight } from './weighing.ts';

/** Weight and need as the record shows them at its last weighing. */
export interface WeightState {
  readonly kg: number;
  readonly kgSd: number;
  /** Need without running, in the measure of the food log, kcal/day. */
  readonly need: number;
  readonly needSd: number;
  /** How weight and need go together, kg × kcal/day: a dog heavier than thought needs less. */
  readonly kgNeed: number;
  /**
   * How far the last weighing lay from what was expected of it and from the one before, %: the
   * smaller of the two; 0 for the first.
   */
  readonly surprisePercent: number;
  /** Lowest weight of the last half-year, as filtered, kg: a slip moves it little. */
  readonly lowestKg: number;
}

/** Gut fill and water, share of body weight, beside the error of the scale (D). */
const GUT_SHARE = 0.0065;
/** How far the need wanders in a fortnight, share (D): it falls on less food and with age. */
const NEED_DRIFT = 0.02;
const FORTNIGHT_DAYS = 14;

/**
 * What the weighings and the food log say of the dog as it is now: a linear filter of two states,
 * weight and need. The need starts at the formula with its spread, follows the body by kg^0.75 and
 * wanders a little, so that an adapted dog is followed; `estimateMaintenance` takes it as constant
 * over half a year and is what is shown. Null without a weighing since food is logged.
 */
export function weightState(input: OwnEnergyInput): WeightState | null {
  const { prior } = input;
  const intakes = orderedIntakes(input.intakes);
  const runs = checkedRuns(input.runs ?? []);
  const points = measured(input.weighings);
  const logged = (intakes[0]?.day ?? Number.POSITIVE_INFINITY) - LOG_LATE_DAYS;
  const latest = points.at(-1)?.dayNumber ?? 0;
  const counted = points.filter(
    ({ dayNumber }) => dayNumber >= logged && dayNumber >= latest - RECORD_DAYS,
  );
  const [first, ...rest] = counted.length === 0 ? points.slice(-1) : counted;
  if (first === undefined) return null;
  const needSd = (prior.mid * Math.log(prior.high / prior.low)) / (2 * Z90);
  let state = begin(first, prior.mid, needSd);
  let [lowestKg, surprise, day] = [state.kg, 0, first.dayNumber];
  let beforeKg = first.weightKg;
  const log = intakes.map((entry, index) =>
    index === 0 ? { ...entry, day: Math.min(entry.day, day) } : entry,
  );
  for (const point of rest) {
    const surplus = surplusUpTo(point.dayNumber, log, runs) - surplusUpTo(day, log, runs);
    const expected = predict(state, surplus, point.dayNumber - day);
    // A slip stands off the weighing before as well: a loss that did not come is none.
    const off = [expected.kg, beforeKg].map((kg) => 100 * (point.weightKg / kg - 1));
    surprise = Math.abs(off[0]!) < Math.abs(off[1]!) ? off[0]! : off[1]!;
    beforeKg = point.weightKg;
    state = correct(expected, point);
    day = point.dayNumber;
    lowestKg = Math.min(lowestKg, state.kg);
  }
  return {
    kg: state.kg,
    kgSd: Math.sqrt(state.kk),
    need: state.need,
    needSd: Math.sqrt(state.nn),
    kgNeed: state.kn,
    surprisePercent: surprise,
    lowestKg,
  };
}

/** Means of weight and need with their variances and covariance. */
export interface Filtered {
  readonly kg: number;
  readonly need: number;
  readonly kk: number;
  readonly kn: number;
  readonly nn: number;
}

const variance = (point: MeasuredWeight): number =>
  point.sdKg * point.sdKg + (GUT_SHARE * point.typicalKg) ** 2;

function begin(point: MeasuredWeight, need: number, needSd: number): Filtered {
  return { kg: point.weightKg, need, kk: variance(point), kn: 0, nn: needSd * needSd };
}

/** Weight and need some days on, by the balance of energy. `surplus`: eaten less run, kcal in all. */
export function predict(
  { kg, need, kk, kn, nn }: Filtered,
  surplus: number,
  days: number,
): Filtered {
  const a = -days / KCAL_PER_KG_CHANGE;
  const nextKg = Math.max(0.1, kg + (surplus - need * days) / KCAL_PER_KG_CHANGE);
  const drift = (NEED_DRIFT * need) ** 2 * (days / FORTNIGHT_DAYS);
  return {
    kg: nextKg,
    need: need * (nextKg / kg) ** METABOLIC_EXPONENT,
    kk: kk + 2 * a * kn + a * a * nn,
    kn: kn + a * nn,
    nn: nn + drift,
  };
}

function correct({ kg, need, kk, kn, nn }: Filtered, point: MeasuredWeight): Filtered {
  const gain = 1 / (kk + variance(point));
  const miss = point.weightKg - kg;
  return {
    kg: kg + kk * gain * miss,
    need: Math.max(1, need + kn * gain * miss),
    kk: kk - kk * kk * gain,
    kn: kn - kk * kn * gain,
    nn: nn - kn * kn * gain,
  };
}
