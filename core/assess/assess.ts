import { idealWeight } from '../condition/idealWeight.ts';
import { monthsBetween } from '../day.ts';
import { maintenanceEnergy } from '../energy/maintenance.ts';
import { restingEnergyFigure } from '../energy/resting.ts';
import type { Estimate } from '../figure.ts';
import { isSenior } from '../readiness/age.ts';
import { screenForRunning } from '../readiness/screen.ts';
import type { Screening } from '../readiness/types.ts';
import { adjustFood } from '../weight/adjustFood.ts';
import { aimContradiction } from '../weight/aimAndTarget.ts';
import { estimateMaintenance } from '../weight/ownEnergy.ts';
import { projectTarget } from '../weight/projection.ts';
import { weightTrend } from '../weight/trend.ts';
import { aimOfDecision, presentAim, weighingsOnAim, type Aim } from './aim.ts';
import { courseOf, lastKnown, weighingsUpTo } from './course.ts';
import { isGrowing } from './growing.ts';
import { intakesBetween, presentIntake } from './intake.ts';
import { plannedRunning, runsDone } from './running.ts';
import type {
  AssessedDecision,
  AssessedDog,
  AssessedVisit,
  AssessInput,
  Assessment,
} from './types.ts';

/**
 * Puts the whole record of a dog together. Null before the first visit or weighing.
 * @throws RangeError when a stored quantity is out of range
 */
export function assess(input: AssessInput): Assessment | null {
  const { dog, day } = input;
  const visits = input.visits.filter((visit) => visit.day <= day);
  const latest = visits.at(-1);
  const weighings = weighingsUpTo(day, visits, input.weighings);
  const weightKg = weighings.at(-1)?.weightKg ?? null;
  if (latest === undefined || weightKg === null) return null;
  const ageMonths = Math.max(0, monthsBetween(dog.birthDay, day));
  const bcs = lastKnown(visits, (visit) => visit.bcs);
  const ideal = bcs === null ? null : idealWeight({ weightKg, bcs, sighthound: dog.sighthound });
  const chosen = lastKnown(visits, (visit) => visit.targetWeightKg);
  const targetWeightKg = chosen ?? ideal?.mid ?? weightKg;
  const maintenance = maintenanceOf(dog, visits, weightKg, ageMonths);
  const decisions = input.foodDecisions.filter(({ decidedOn }) => decidedOn <= day);
  const decision = decisions.at(-1);
  const aim = presentAim(visits);
  const trend = weightTrend(weighings);
  const trendOnRation = weightTrend(
    weighingsOnAim(weighings, { aim, ration: decision?.decidedOn ?? null, day }),
  );
  const earlierKg = weighings.slice(0, -1).map((weighing) => weighing.weightKg);
  const facts = {
    day,
    weightKg,
    targetWeightKg,
    maintenance,
    own: estimateMaintenance({
      prior: maintenance,
      weighings,
      intakes: intakesBetween(visits, decisions),
      runs: runsDone(input.plan, input.sessions ?? [], weightKg),
    }),
    running: plannedRunning(input.plan, weightKg, day),
    intakeKcal: presentIntake(latest, decisions),
  };
  return {
    ...facts,
    ageMonths,
    resting: restingEnergyFigure(weightKg),
    ideal,
    targetChosen: chosen !== null,
    aimProblem: chosen === null ? null : aimProblem(latest, weightKg, chosen, earlierKg),
    trend,
    trendOnRation,
    projection: projectTarget(trendOnRation, targetWeightKg),
    ...courseOf({ latest, aim, targetWeightKg, weighings, trendOnRation, decision }),
    screening: screening(input, visits, latest, weightKg),
    food: adjustFood({
      ...facts,
      ...fedAt(visits, latest),
      ...growthAt(dog, ageMonths, weightKg),
      ...planAt(visits, aim, decision),
      ...startOf(aim, weightKg, earlierKg),
      currentKcal: facts.intakeKcal,
      trend: trendOnRation,
      runningKcalPerDay: facts.running?.current?.kcalPerDay ?? 0,
      runningInRationKcalPerDay: decision?.known.runningKcalPerDay ?? 0,
    }),
  };
}

/** Where the present plan began, and what the dog weighed before. */
function startOf({ start }: Aim, weightKg: number, earlierKg: readonly number[]) {
  return { initialWeightKg: start?.weightKg ?? weightKg, earlierKg };
}

function aimProblem(
  { foodGoal: goal }: AssessedVisit,
  weightKg: number,
  targetWeightKg: number,
  earlierKg: readonly number[],
) {
  return aimContradiction({ goal, weightKg, targetWeightKg, earlierKg });
}

/** A growing dog, with the adult weight its food is computed from. */
function growthAt({ adultWeightKg }: AssessedDog, ageMonths: number, weightKg: number) {
  return {
    growing: isGrowing({ ageMonths, adultWeightKg, weightKg }),
    ...(adultWeightKg === null ? {} : { adultWeightKg }),
  };
}

/** A ration decided under another aim is no ration of the present plan. */
function planAt(visits: readonly AssessedVisit[], aim: Aim, decision?: AssessedDecision) {
  if (decision === undefined) return { onPlan: false };
  return {
    onPlan: decision.decidedOn >= aim.sinceDay,
    rationFromLossPlan:
      visits.at(-1)!.foodGoal !== 'lose' && aimOfDecision(visits, decision) === 'lose',
  };
}

/** Signs with which no food is changed before the vet has seen the dog (D). */
const SIGNS_OF_ILLNESS: readonly string[] = [
  'fever',
  'pale-gums',
  'distended-abdomen',
  'collapse',
  'new-murmur',
  'cough',
  'exercise-intolerance',
];

/** What the record says of feeding, and of what stands against it. */
function fedAt(visits: readonly AssessedVisit[], visit: AssessedVisit) {
  const bcs = lastKnown(visits, (entry) => entry.bcs);
  const muscle = lastKnown(visits, (entry) => entry.muscle);
  return {
    ...(bcs === null ? {} : { bcs }),
    ...(muscle === null ? {} : { muscle }),
    unwell: visit.signs.some((sign) => SIGNS_OF_ILLNESS.includes(sign)),
    pregnantOrNursing: visit.signs.some((sign) => sign === 'pregnancy' || sign === 'lactation'),
    goal: visit.foodGoal,
    weightLossDiet: visit.weightLossDiet,
    foods: visit.diet,
    mealsPerDay: visit.mealsPerDay,
  };
}

function maintenanceOf(
  dog: AssessedDog,
  visits: readonly AssessedVisit[],
  weightKg: number,
  ageMonths: number,
): Estimate {
  const latest = visits.at(-1)!;
  const senior = isSenior(ageMonths, dog.adultWeightKg ?? weightKg);
  const { growing } = growthAt(dog, ageMonths, weightKg);
  const unknown = growing && dog.adultWeightKg === null;
  const maintenance = maintenanceEnergy({
    weightKg,
    lifeStage: growing && !unknown ? 'puppy' : senior ? 'senior' : 'adult',
    neuter: dog.neuter,
    activity: latest.activity,
    afterWeightLoss: isSlimmed(visits, weightKg),
    ...(dog.adultWeightKg === null ? {} : { adultWeightKg: dog.adultWeightKg }),
  });
  return unknown ? asOfAnAdult(maintenance) : maintenance;
}

const NOT_FOR_GROWTH =
  'Computed as for a grown dog, so too low for this one: enter the expected adult weight.';

function asOfAnAdult(maintenance: Estimate): Estimate {
  const { figure } = maintenance;
  return { ...maintenance, figure: { ...figure, notes: [NOT_FOR_GROWTH, ...figure.notes] } };
}

/** A dog counts as slimmed, and needs less, from this loss on a plan to lose, % (D). */
const SLIMMED_FROM_PERCENT = 10;

function isSlimmed(visits: readonly AssessedVisit[], weightKg: number): boolean {
  if (visits.at(-1)!.foodGoal === 'lose') return false;
  const onPlan = visits.filter(({ foodGoal }) => foodGoal === 'lose');
  const heaviest = Math.max(0, ...onPlan.map((visit) => visit.weightKg ?? 0));
  return weightKg <= heaviest * (1 - SLIMMED_FROM_PERCENT / 100);
}

function screening(
  { dog, day, rules }: AssessInput,
  visits: readonly AssessedVisit[],
  latest: AssessedVisit,
  weightKg: number,
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
    airwayClearance: latest.airwayClearance,
    lameness: { walk: latest.lamenessWalk, trot: latest.lamenessTrot },
    trotLamenessAssessed: latest.trotLamenessAssessed ?? false,
    signs: latest.signs,
    surgery: latest.surgery,
    radiographicClearance: latest.radiographicClearance,
    walkBase: latest.walkBase,
    conditioning: latest.conditioning,
    consent: latest.consent,
    overrides: latest.overrides,
    ...(rules === undefined ? {} : { rules }),
  });
}
