import { addDays } from '../../core/day.ts';
import {
  estimateMaintenance,
  KCAL_PER_KG_CHANGE,
  maintenanceEnergy,
  METHOD_SD_SHARE,
  runningCost,
  WEIGHING_SD_SHARE,
  type DoneRun,
  type Intake,
  ownEnergyAt,
  type EnergyPrior,
  type Weighing,
} from '../../core/nutrition.ts';
import { random, type Random } from './random.ts';
import type { Scenario } from './scenarios.ts';

const START = '2026-01-05';
/** Log-SD of the need between dogs and its middle, as the formula takes them. */
const SPREAD = 0.29;
const MIDDLE = 95;

export interface SimulatedDog {
  /** What the dog truly needs at the end of its record, kcal/day. */
  readonly truth: number;
  /** The same in the measure of the owner's log. */
  readonly truthAsLogged: number;
  readonly formula: number;
  readonly own: EnergyPrior;
  readonly telling: boolean;
}

interface Life {
  readonly weights: readonly number[];
  readonly truth: number;
}

/** One dog lived day by day, weighed and estimated. */
export function simulateDog(scenario: Scenario, draw: Random): SimulatedDog {
  const startKg = Math.exp(draw.uniform(Math.log(5), Math.log(50)));
  const coefficient = MIDDLE * Math.exp(SPREAD * draw.normal());
  const days = Math.round(draw.uniform(...scenario.days));
  const eaten = (scenario.eatenPerLogged ?? 1) * (1 + (scenario.eatenSpread ?? 0) * draw.normal());
  const intakes = rations(coefficient * startKg ** 0.75, days, draw);
  const runs = scenario.runs === true ? doneRuns(startKg, days) : [];
  const life = live(scenario, { startKg, coefficient, days, eaten, intakes, runs });
  const weighings = weigh(scenario, life.weights, days, draw);
  const prior = maintenanceEnergy({ weightKg: startKg });
  // Where the model holds, what it leaves out is nothing: the posterior itself is held to the truth.
  const modelErrorSd = scenario.modelHolds ? { modelErrorSd: 0 } : {};
  const own = estimateMaintenance({ prior, weighings, intakes, runs, ...modelErrorSd });
  return {
    truth: life.truth,
    truthAsLogged: life.truth / eaten,
    formula: prior.mid,
    own: scenario.carried === true ? ownEnergyAt(own, life.weights.at(-1)!) : own,
    telling: own.informative,
  };
}

/** A ration that changes twice, between a loss plan and a little too much for this dog. */
function rations(needKcal: number, days: number, draw: Random): Intake[] {
  return [0, 0.3, 0.6].map((share) => ({
    fromDay: addDays(START, Math.round(share * days)),
    kcalPerDay: Math.round(needKcal * draw.uniform(0.75, 1.1)),
  }));
}

function doneRuns(weightKg: number, days: number): DoneRun[] {
  return Array.from({ length: days }, (_, day) => day)
    .filter((day) => day % 7 === 1 || day % 7 === 3 || day % 7 === 5)
    .map((day) => ({
      day: addDays(START, day),
      kcal: runningCost({ weightKg, distanceKm: 5 }).mid,
    }));
}

interface LifeInput {
  readonly startKg: number;
  readonly coefficient: number;
  readonly days: number;
  readonly eaten: number;
  readonly intakes: readonly Intake[];
  readonly runs: readonly DoneRun[];
}

function live(scenario: Scenario, input: LifeInput): Life {
  const { startKg, coefficient, days, eaten, intakes, runs } = input;
  const ranOn = new Map(runs.map(({ day, kcal }) => [day, kcal]));
  let tissueKg = startKg;
  let truth = 0;
  const weights: number[] = [];
  for (let day = 0; day <= days; day += 1) {
    const today = addDays(START, day);
    const water = startKg * (scenario.waterLoss ?? 0) * Math.min(1, day / 14);
    weights.push(tissueKg - water);
    const adapted = 1 - (scenario.adaptation ?? 0) * (day / Math.max(1, days));
    const body = scenario.followsBody === true ? tissueKg : startKg;
    truth = coefficient * adapted * body ** 0.75;
    const logged = intakes.findLast((intake) => dayOf(intake) <= today)!.kcalPerDay;
    const surplus = logged * eaten - truth - (ranOn.get(today) ?? 0);
    tissueKg += surplus / KCAL_PER_KG_CHANGE;
  }
  return { weights, truth };
}

const dayOf = (intake: Intake): string => ('fromDay' in intake ? intake.fromDay : intake.day);

function weigh(
  scenario: Scenario,
  weights: readonly number[],
  days: number,
  draw: Random,
): Weighing[] {
  const step = draw.pick([0.01, 0.05, 0.1, 0.2]);
  const offset = METHOD_SD_SHARE * draw.normal();
  const changesOn = scenario.secondScale === true && draw.uniform(0, 1) < 0.5 ? days / 2 : Infinity;
  const on = weighingDays(scenario, days, draw);
  const slipOn = scenario.slip === true ? draw.pick(on) : -1;
  return on.map((day) => {
    const other = day > changesOn;
    const error = (scenario.noise ?? WEIGHING_SD_SHARE) * draw.normal();
    const slip = day === slipOn ? draw.pick([-0.1, 0.1]) : 0;
    const kg = weights[day]! * (1 + error + slip + (other ? offset : 0));
    return {
      day: addDays(START, day),
      weightKg: Math.max(0.1, Math.round(kg / step) * step),
      scaleStepKg: step,
      method: other ? ('other scale' as const) : ('same scale' as const),
    };
  });
}

function weighingDays(scenario: Scenario, days: number, draw: Random): number[] {
  const on = [0];
  for (;;) {
    const next = on.at(-1)! + Math.round(draw.uniform(...scenario.gap));
    if (next >= days) return [...on, days];
    on.push(next);
  }
}

export interface CalibrationRow {
  readonly name: string;
  readonly dogs: number;
  /** Share of dogs whose true need lies in the 90 % interval, %. */
  readonly coverage: number;
  /** The same against the need in the measure of the owner's log. */
  readonly coverageAsLogged: number;
  /** Median of the error's size, % of the truth: the estimate and the plain formula. */
  readonly estimateError: number;
  readonly formulaError: number;
  /** Share of dogs whose record tells more than the formula, %. */
  readonly telling: number;
}

/** Simulates `dogs` dogs in a scenario and counts how often the interval holds the truth. */
export function calibrate(scenario: Scenario, dogs: number, seed: number): CalibrationRow {
  const draw = random(seed);
  const lives = Array.from({ length: dogs }, () => simulateDog(scenario, draw));
  const share = (test: (dog: SimulatedDog) => boolean): number =>
    (100 * lives.filter(test).length) / dogs;
  const holds = (own: EnergyPrior, kcal: number): boolean => own.low <= kcal && kcal <= own.high;
  const error = (mid: number, truth: number): number => 100 * Math.abs(mid / truth - 1);
  return {
    name: scenario.name,
    dogs,
    coverage: share(({ own, truth }) => holds(own, truth)),
    coverageAsLogged: share(({ own, truthAsLogged }) => holds(own, truthAsLogged)),
    estimateError: median(lives.map(({ own, truth }) => error(own.mid, truth))),
    formulaError: median(lives.map(({ formula, truth }) => error(formula, truth))),
    telling: share(({ telling }) => telling),
  };
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)]!;
}
