import { idealWeight } from '../condition/idealWeight.ts';
import { known } from '../check.ts';
import { addDays, dayNumber, monthsBetween, type IsoDay } from '../day.ts';
import { maintenanceEnergy } from '../energy/maintenance.ts';
import { restingEnergyFigure } from '../energy/resting.ts';
import type { Estimate } from '../figure.ts';
import { isSenior } from '../readiness/age.ts';
import { adjustFood, WEIGH_IN_DAYS } from '../weight/adjustFood.ts';
import type { FoodProposal } from '../weight/foodTypes.ts';
import { aimContradiction } from '../weight/aimAndTarget.ts';
import { estimateMaintenance } from '../weight/ownEnergy.ts';
import { projectTarget } from '../weight/projection.ts';
import { weightTrend } from '../weight/trend.ts';
import type { Weighing } from '../weight/weighing.ts';
import { weightState, type WeightState } from '../weight/weightState.ts';
import { aimOfDecision, presentAim, rationSince, weighingsOnAim, type Aim } from './aim.ts';
import { courseOf, lastKnown, weighingsUpTo } from './course.ts';
import { isGrowing } from './growing.ts';
import { intakesBetween, presentIntake } from './intake.ts';
import { plannedRunning, runsDone } from './running.ts';
import { screenRecord } from './screening.ts';
import { targetInForce } from './target.ts';
import { type TargetInForce } from './types.ts';
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
 * @example
 * assess(sample.loss)
 *   // => { weightKg: 40, ageMonths: 72, targetWeightKg: 30.77, aimProblem: null, … }
 */
export function assess(input: AssessInput): Assessment | null {
  const { dog, day } = input;
  const visits = input.visits.filter((visit) => visit.day <= day);
  const latest = visits.at(-1);
  const weighings = weighingsUpTo(day, visits, input.weighings);
  const weightKg = weighings.at(-1)?.weightKg ?? null;
  if (latest === undefined || weightKg === null) return null;
  const ageMonths = Math.max(0, monthsBetween(dog.birthDay, day));
  const target = targetInForce({ visits, weighings, day });
  const targetWeightKg = target.kg;
  const maintenance = maintenanceOf(dog, visits, weightKg, ageMonths);
  const decisions = decidedUpTo(input);
  const decision = decisions.at(-1);
  const aim = presentAim(visits, weighings);
  const ration = rationSince(decisions);
  const trendOnRation = weightTrend(weighingsOnAim(weighings, { aim, ration, day }));
  const earlierKg = weighings.slice(0, -1).map((weighing) => weighing.weightKg);
  const record = { prior: maintenance, weighings, ...livedOn(input, visits, decisions, weightKg) };
  const body = weightState(record);
  const facts = {
    day,
    ageMonths,
    growing: isGrowing({ ...dog, ageMonths, weightKg }),
    weightKg,
    targetWeightKg,
    maintenance,
    own: estimateMaintenance(record),
    running: plannedRunning(input.plan, input.sessions ?? [], weightKg, day),
    intakeKcal: presentIntake(latest, decisions),
  };
  const ahead = { latest, aim, targetWeightKg, weighings, trendOnRation, decision };
  return {
    ...facts,
    body: facts.growing ? null : body,
    resting: restingEnergyFigure(weightKg),
    ideal: idealOf(dog, visits, weightKg),
    target,
    aimProblem: aimProblem(latest, weightKg, target, earlierKg),
    trend: weightTrend(weighings),
    trendOnRation,
    projection: projectTarget(trendOnRation, targetWeightKg),
    ...courseOf({ ...ahead, growing: facts.growing }),
    screening: screenRecord(input, visits, latest, weightKg),
    food: weighedInAtVisits(
      input,
      adjustFood({
        ...facts,
        ...fedAt(visits, latest),
        ...known({ adultWeightKg: dog.adultWeightKg }),
        ...planAt(visits, aim, decision),
        ...startOf(aim, weightKg, earlierKg),
        ...steeredBy(body, ration, day),
        ...watched({ dog, ageMonths, aim, weighings }),
        currentKcal: facts.intakeKcal,
        trend: trendOnRation,
        ...runningFed(facts, decision),
      }),
    ),
  };
}

/**
 * Scales at home tell the rate sooner; a dog that is to lose weight is weighed in at a visit no
 * later for it (D).
 */
function weighedInAtVisits(input: AssessInput, food: FoodProposal): FoodProposal {
  const { day, visits, weighings = [] } = input;
  const next = food.nextWeighInDay;
  const soonest = addDays(day, WEIGH_IN_DAYS.settling);
  const goal = visits.findLast((visit) => visit.day <= day)?.foodGoal;
  if (goal !== 'lose' || weighings.length === 0 || next <= soonest) return food;
  const atVisits = assess({ ...input, weighings: [] })?.food.nextWeighInDay ?? soonest;
  return atVisits < next ? { ...food, nextWeighInDay: atVisits } : food;
}

function idealOf(
  { sighthound }: AssessedDog,
  visits: readonly AssessedVisit[],
  weightKg: number,
): Assessment['ideal'] {
  const bcs = lastKnown(visits, (visit) => visit.bcs);
  return bcs === null ? null : idealWeight({ weightKg, bcs, sighthound });
}

const decidedUpTo = ({ foodDecisions, day }: AssessInput) =>
  foodDecisions.filter(({ decidedOn }) => decidedOn <= day);

/**
 * The running to feed for, and how much of it the present food holds: what was counted when the ration
 * was decided, and what the diet told has gone up or down since towards the present week, as the printed
 * table of weeks says. A plan that is over takes no food away: what the dog runs since is not known,
 * its weight tells.
 */
function runningFed(
  { running, intakeKcal }: Pick<Assessment, 'running' | 'intakeKcal'>,
  decision?: AssessedDecision,
) {
  const planned = running?.current?.kcalPerDay ?? null;
  if (planned === null) return { runningKcalPerDay: 0, runningInRationKcalPerDay: 0 };
  const counted = decision?.known.runningKcalPerDay ?? 0;
  const decided = decision?.kcalPerDay ?? null;
  const [least, most] = [Math.min(counted, planned), Math.max(counted, planned)];
  const followed = decided === null ? counted : counted + intakeKcal - decided;
  return {
    runningKcalPerDay: planned,
    runningInRationKcalPerDay: Math.min(most, Math.max(least, followed)),
  };
}

/** Weight and need as they stand, and how long the ration has been fed. */
function steeredBy(state: WeightState | null, ration: IsoDay | null, day: IsoDay) {
  if (state === null || ration === null) return {};
  return { state, daysOnRation: dayNumber(day, 'day') - dayNumber(ration, 'decision') };
}

/** Where the present plan began, and what the dog weighed before. */
function startOf({ start }: Aim, weightKg: number, earlierKg: readonly number[]) {
  return { initialWeightKg: start?.weightKg ?? weightKg, earlierKg };
}

function aimProblem(
  { foodGoal: goal }: AssessedVisit,
  weightKg: number,
  { basis, kg: targetWeightKg }: TargetInForce,
  earlierKg: readonly number[],
) {
  if (basis !== 'chosen') return null;
  return aimContradiction({ goal, weightKg, targetWeightKg, earlierKg });
}

/** Months after it in which a dog gains easily: weighed every two weeks (S: for 4–5 months). */
const AFTER_NEUTERING_MONTHS = 5;

interface Watched {
  readonly dog: AssessedDog;
  readonly ageMonths: number;
  readonly aim: Aim;
  readonly weighings: readonly Weighing[];
}

/** What asks for the vet or for more frequent weighing, or makes a plan begin anew. */
function watched({ dog, ageMonths, aim, weighings }: Watched) {
  const { neuteredAtMonths } = dog;
  const since = neuteredAtMonths === null ? Infinity : ageMonths - neuteredAtMonths;
  return {
    lostPercentIn4Weeks: lostIn4Weeks(weighings),
    neuteredLately: since >= 0 && since <= AFTER_NEUTERING_MONTHS,
    ...known({ afterGapDays: aim.afterGapDays }),
  };
}

/** Weight gone in the 28 days up to the last weighing, % of the highest in them; 0 where none is. */
function lostIn4Weeks(weighings: readonly Weighing[]): number {
  const last = weighings.at(-1)!;
  const lately = weighings.filter(({ day }) => day >= addDays(last.day, -28));
  return 100 * (1 - last.weightKg / Math.max(...lately.map(({ weightKg }) => weightKg)));
}

/** What the dog ate and ran. */
const livedOn = (
  { plan, sessions = [] }: AssessInput,
  visits: readonly AssessedVisit[],
  decisions: readonly AssessedDecision[],
  weightKg: number,
) => ({
  intakes: intakesBetween(visits, decisions),
  runs: runsDone(plan, sessions, weightKg),
});

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

/** What is eaten, drunk or digested in a way that a vet should know of before the food is changed (D). */
const isUnlikeItself = ({ appetite, thirst, stool }: AssessedVisit): boolean =>
  appetite === 'less than usual' || thirst === 'more than usual' || stool === 'loose';

/** What the record says of feeding, and of what stands against it. */
function fedAt(visits: readonly AssessedVisit[], visit: AssessedVisit) {
  const bcs = lastKnown(visits, (entry) => entry.bcs);
  const muscle = lastKnown(visits, (entry) => entry.muscle);
  return {
    ...known({ bcs, muscle }),
    unwell: visit.signs.some((sign) => SIGNS_OF_ILLNESS.includes(sign)),
    unlikeItself: isUnlikeItself(visit),
    onMedicine: (visit.medicine ?? '').trim() !== '',
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
  const senior = isSenior(ageMonths, dog.adultWeightKg ?? weightKg, undefined, dog.shortNosed);
  const growing = isGrowing({ ...dog, ageMonths, weightKg });
  const unknown = growing && dog.adultWeightKg === null;
  const bcs = lastKnown(visits, (visit) => visit.bcs);
  const heavy = bcs !== null && bcs >= 6 && !growing;
  const maintenance = maintenanceEnergy({
    weightKg: heavy ? idealWeight({ weightKg, bcs }).mid : weightKg,
    lifeStage: growing && !unknown ? 'puppy' : senior ? 'senior' : 'adult',
    neuter: dog.neuter,
    activity: latest.activity,
    afterWeightLoss: isSlimmed(visits, weightKg),
    ...known({ adultWeightKg: dog.adultWeightKg }),
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
