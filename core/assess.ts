import { monthsBetween, type IsoDay } from './day.ts';
import { idealWeight } from './condition/idealWeight.ts';
import { maintenanceEnergy, type Activity, type NeuterStatus } from './energy/maintenance.ts';
import { restingEnergyFigure } from './energy/resting.ts';
import type { Estimate, Figure } from './figure.ts';
import { intakeEnergy, type FedFood } from './food/ration.ts';
import { isSenior } from './readiness/age.ts';
import { screenForRunning } from './readiness/screen.ts';
import type { LimbGrades, Screening } from './readiness/types.ts';
import type { StartLevel } from './ramp/types.ts';
import { adjustFood } from './weight/adjustFood.ts';
import { lossCorridor, type CorridorPoint } from './weight/corridor.ts';
import type { FoodGoal, FoodProposal } from './weight/foodTypes.ts';
import { estimateMaintenance, type Intake, type OwnEnergy } from './weight/ownEnergy.ts';
import { projectTarget, type TargetProjection } from './weight/projection.ts';
import { weightTrend, type WeightTrend } from './weight/trend.ts';
import type { Weighing, WeighingMethod } from './weight/weighing.ts';

/** What the record says of the dog itself. */
export interface AssessedDog {
  readonly birthDay: IsoDay;
  readonly neuter: NeuterStatus;
  readonly neuteredAtMonths: number | null;
  readonly adultWeightKg: number | null;
  readonly shortNosed: boolean;
  readonly sighthound: boolean;
}

/** What the record says of one visit; null where nothing was measured. */
export interface AssessedVisit {
  readonly day: IsoDay;
  readonly weightKg: number | null;
  readonly weighingMethod: WeighingMethod;
  readonly scaleStepKg: number;
  readonly bcs: number | null;
  readonly lamenessWalk: LimbGrades;
  readonly lamenessTrot: LimbGrades;
  readonly signs: readonly string[];
  readonly surgery: 'none' | 'cleared in writing' | 'not cleared';
  readonly airwayDisease: boolean;
  readonly radiographicClearance: boolean;
  readonly conditioning: StartLevel;
  readonly walkBase: 'passed' | 'failed' | 'not tested';
  readonly activity: Activity;
  readonly consent: {
    readonly given: boolean;
    readonly vet: string;
    readonly day: IsoDay | null;
    readonly scope: string;
    readonly expiryDay: IsoDay | null;
  };
  readonly overrides: readonly { readonly code: string; readonly reason: string }[];
  readonly targetWeightKg: number | null;
  readonly foodGoal: FoodGoal;
  readonly mealsPerDay: number;
  readonly weightLossDiet: boolean;
  readonly diet: readonly FedFood[];
}

/** A food decision that stands: from its day on the dog is fed `kcalPerDay`. */
export interface AssessedDecision {
  readonly decidedOn: IsoDay;
  readonly kcalPerDay: number;
}

export interface AssessInput {
  readonly dog: AssessedDog;
  /** Oldest first. */
  readonly visits: readonly AssessedVisit[];
  /** Oldest first; those of the assessed day itself do not count, they are what is being decided. */
  readonly foodDecisions: readonly AssessedDecision[];
  readonly day: IsoDay;
  /** Planned running beyond the counted activity, kcal/day on average. */
  readonly runningKcalPerDay?: number;
}

/** What core makes of a record on a day: one source for screen, handouts and lists. */
export interface Assessment {
  readonly day: IsoDay;
  readonly weightKg: number;
  readonly ageMonths: number;
  readonly resting: Figure;
  readonly maintenance: Estimate;
  readonly ideal: Estimate | null;
  /** The practitioner's target where one is set, else the middle of the ideal range. */
  readonly targetWeightKg: number;
  readonly targetChosen: boolean;
  /** Over all weighings, for the chart. */
  readonly trend: WeightTrend;
  /** Since the present ration began, for the decision. */
  readonly trendOnRation: WeightTrend;
  readonly projection: TargetProjection;
  /** Empty unless weight is to be lost. */
  readonly corridor: readonly CorridorPoint[];
  readonly own: OwnEnergy;
  /** What the dog eats now by the record, kcal/day; 0 when nothing is known. */
  readonly intakeKcal: number;
  readonly screening: Screening;
  readonly food: FoodProposal;
}

/**
 * Puts the whole record of a dog together. Null before the first weighing.
 * @throws RangeError when a stored quantity is out of range
 */
export function assess(input: AssessInput): Assessment | null {
  const visits = input.visits.filter((visit) => visit.day <= input.day);
  const latest = visits.at(-1);
  const weighed = visits.filter((visit) => visit.weightKg !== null);
  const weightKg = weighed.at(-1)?.weightKg ?? null;
  if (latest === undefined || weightKg === null) return null;
  const { dog } = input;
  const ageMonths = Math.max(0, monthsBetween(dog.birthDay, input.day));
  const bcs = lastKnown(visits, (visit) => visit.bcs);
  const ideal = bcs === null ? null : idealWeight({ weightKg, bcs, sighthound: dog.sighthound });
  const chosen = lastKnown(visits, (visit) => visit.targetWeightKg);
  const targetWeightKg = chosen ?? ideal?.mid ?? weightKg;
  const growing = isGrowing(dog, ageMonths, weightKg);
  const maintenance = maintenanceOf(dog, latest, weightKg, ageMonths, growing);
  const weighings = weighed.map(toWeighing);
  const decisions = input.foodDecisions.filter(({ decidedOn }) => decidedOn < input.day);
  const own = estimateMaintenance({
    prior: maintenance,
    weighings,
    intakes: intakesOf(visits, decisions),
  });
  const trend = weightTrend(weighings);
  const rationSince = decisions.at(-1)?.decidedOn ?? '';
  const trendOnRation = weightTrend(weighings.filter(({ day }) => day >= rationSince));
  const plan = planStart(visits, latest.foodGoal);
  const intakeKcal = presentIntake(latest, decisions);
  return {
    day: input.day,
    weightKg,
    ageMonths,
    resting: restingEnergyFigure(weightKg),
    maintenance,
    ideal,
    targetWeightKg,
    targetChosen: chosen !== null,
    trend,
    trendOnRation,
    projection: projectTarget(trendOnRation, targetWeightKg),
    corridor: corridorOf(latest, plan, targetWeightKg),
    own,
    intakeKcal,
    screening: screening(dog, visits, latest, weightKg, input.day),
    food: adjustFood({
      ...fedAt(latest),
      day: input.day,
      weightKg,
      targetWeightKg,
      ...(bcs === null ? {} : { bcs }),
      initialWeightKg: plan?.weightKg ?? weightKg,
      onPlan: decisions.length > 0,
      currentKcal: intakeKcal,
      trend: trendOnRation,
      maintenance,
      own,
      growing,
      runningKcalPerDay: input.runningKcalPerDay ?? 0,
    }),
  };
}

/** What a visit says of feeding. */
function fedAt(visit: AssessedVisit) {
  return {
    goal: visit.foodGoal,
    weightLossDiet: visit.weightLossDiet,
    foods: visit.diet,
    mealsPerDay: visit.mealsPerDay,
  };
}

function corridorOf(
  visit: AssessedVisit,
  plan: PlanStart | null,
  targetKg: number,
): CorridorPoint[] {
  if (visit.foodGoal !== 'lose' || plan === null || plan.weightKg <= targetKg) return [];
  return lossCorridor({ startDay: plan.day, initialKg: plan.weightKg, targetKg });
}

/** A ration decided at or after the latest visit stands; before that, what was told there. */
function presentIntake(latest: AssessedVisit, decisions: readonly AssessedDecision[]): number {
  const decided = decisions.at(-1);
  if (decided !== undefined && decided.decidedOn >= latest.day) return decided.kcalPerDay;
  const told = intakeEnergy(latest.diet);
  return told > 0 ? told : (decided?.kcalPerDay ?? 0);
}

function lastKnown<T>(
  visits: readonly AssessedVisit[],
  pick: (visit: AssessedVisit) => T | null,
): T | null {
  for (let index = visits.length - 1; index >= 0; index -= 1) {
    const value = pick(visits[index]!);
    if (value !== null) return value;
  }
  return null;
}

/** Under a year, and not yet near the expected adult weight where that is known. */
function isGrowing(dog: AssessedDog, ageMonths: number, weightKg: number): boolean {
  if (ageMonths >= 18) return false;
  if (dog.adultWeightKg === null) return ageMonths < 12;
  return weightKg < 0.95 * dog.adultWeightKg;
}

function maintenanceOf(
  dog: AssessedDog,
  visit: AssessedVisit,
  weightKg: number,
  ageMonths: number,
  growing: boolean,
): Estimate {
  const senior = isSenior(ageMonths, dog.adultWeightKg ?? weightKg);
  return maintenanceEnergy({
    weightKg,
    lifeStage: growing && dog.adultWeightKg !== null ? 'puppy' : senior ? 'senior' : 'adult',
    neuter: dog.neuter,
    activity: visit.activity,
    ...(dog.adultWeightKg === null ? {} : { adultWeightKg: dog.adultWeightKg }),
  });
}

function toWeighing(visit: AssessedVisit): Weighing {
  return {
    day: visit.day,
    weightKg: visit.weightKg!,
    method: visit.weighingMethod,
    scaleStepKg: visit.scaleStepKg,
  };
}

/**
 * What was eaten between visits: the diet told at the later visit, else the ration decided at the
 * earlier one, else the diet told there.
 */
function intakesOf(
  visits: readonly AssessedVisit[],
  decisions: readonly AssessedDecision[],
): Intake[] {
  return visits.slice(0, -1).flatMap((visit, index) => {
    const told = intakeEnergy(visits[index + 1]!.diet);
    const decided = decisions.filter(({ decidedOn }) => decidedOn <= visit.day).at(-1)?.kcalPerDay;
    const kcalPerDay = told > 0 ? told : (decided ?? intakeEnergy(visit.diet));
    return kcalPerDay >= 1 ? [{ fromDay: visit.day, kcalPerDay }] : [];
  });
}

interface PlanStart {
  readonly day: IsoDay;
  readonly weightKg: number;
}

/** The weighing with which the present aim began. */
function planStart(visits: readonly AssessedVisit[], goal: FoodGoal): PlanStart | null {
  let start: PlanStart | null = null;
  for (let index = visits.length - 1; index >= 0; index -= 1) {
    const visit = visits[index]!;
    if (visit.foodGoal !== goal) break;
    if (visit.weightKg !== null) start = { day: visit.day, weightKg: visit.weightKg };
  }
  return start;
}

function screening(
  dog: AssessedDog,
  visits: readonly AssessedVisit[],
  latest: AssessedVisit,
  weightKg: number,
  day: IsoDay,
): Screening {
  const bcs = lastKnown(visits, (visit) => visit.bcs);
  return screenForRunning({
    day,
    birthDay: dog.birthDay,
    weightKg,
    ...(dog.adultWeightKg === null ? {} : { adultWeightKg: dog.adultWeightKg }),
    ...(bcs === null ? {} : { bcs }),
    ...(dog.neuteredAtMonths === null ? {} : { neuteredAtMonths: dog.neuteredAtMonths }),
    shortNosed: dog.shortNosed,
    airwayDisease: latest.airwayDisease,
    lameness: { walk: latest.lamenessWalk, trot: latest.lamenessTrot },
    signs: latest.signs,
    surgery: latest.surgery,
    radiographicClearance: latest.radiographicClearance,
    walkBase: latest.walkBase,
    conditioning: latest.conditioning,
    consent: latest.consent,
    overrides: latest.overrides,
  });
}
