import { known } from '../check.ts';
import { goalMinutes } from '../ramp/request.ts';
import type { RampRequest } from '../ramp/types.ts';
import { openGoalLimits } from '../readiness/goal.ts';
import type {
  Limb,
  LimbGrades,
  ScreeningInput,
  Screening,
  ScreeningReason,
} from '../readiness/types.ts';
import { screenForRunning } from '../readiness/screen.ts';
import { lastKnown } from './course.ts';
import type { AssessedVisit, AssessInput } from './types.ts';

/** The screening of the record as it stands at the `latest` of its visits. */
export function screenRecord(
  { dog, day, rules, plan }: AssessInput,
  visits: readonly AssessedVisit[],
  latest: AssessedVisit,
  weightKg: number | null,
): Screening {
  const { adultWeightKg, neuteredAtMonths } = dog;
  const bcs = lastKnown(visits, (visit) => visit.bcs);
  return screenForRunning({
    day,
    birthDay: dog.birthDay,
    ...known({ weightKg, adultWeightKg, bcs, neuteredAtMonths, rules }),
    shortNosed: dog.shortNosed,
    airwayDisease: latest.airwayDisease,
    airwayClearance: latest.airwayClearance,
    lameness: {
      walk: gradesOf(visits, (visit) => visit.lamenessWalk),
      trot: gradesOf(visits, (visit) => visit.lamenessTrot),
    },
    ...signsOf(latest),
    historyAsked: latest.historyAsked ?? true,
    surgery: latest.surgery,
    radiographicClearance: latest.radiographicClearance,
    walkBase: latest.walkBase,
    conditioning: latest.conditioning,
    consent: latest.consent,
    overrides: latest.overrides,
    longRunClearance: latest.longRunClearance ?? false,
    ...goalOf(plan),
    ...historyOf(visits, latest),
  });
}

/**
 * The limits that a plan made anew would break with its goal at the latest visit; none: it may be
 * kept.
 * @example
 * goalLimitsOf(sample.loss, { ...sample.request, goal: { continuousMinutes: 60 } })[0]?.params
 *   // => { minutes: 60, limit: 30 }
 */
export function goalLimitsOf(input: AssessInput, request: RampRequest): ScreeningReason[] {
  const visits = input.visits.filter((visit) => visit.day <= input.day);
  const latest = visits.at(-1);
  if (latest === undefined) return [];
  const plan = { ramp: { weeks: [], request }, climbM: null };
  return openGoalLimits(screenRecord({ ...input, plan }, visits, latest, null).reasons);
}

/** An empty list is a finding only once the signs were asked for. */
function signsOf({ signs, signsAsked = true }: AssessedVisit): ScreeningInput {
  return signsAsked || signs.length > 0 ? { signs } : {};
}

/** The goal of a running plan; a walking programme has none to run. */
function goalOf(plan: AssessInput['plan']): ScreeningInput {
  const request = plan?.ramp.request;
  if (request === undefined || request.programme === 'walking') return {};
  return { goalMinutes: goalMinutes(request.goal) };
}

/**
 * The grades of the last visit. A limb that was lame when it was last looked at stands as lame until
 * it is looked at again (D): a visit without a look at the gait clears no dog.
 */
function gradesOf(
  visits: readonly AssessedVisit[],
  of: (visit: AssessedVisit) => LimbGrades,
): LimbGrades {
  const now = of(visits.at(-1)!);
  const grade = (limb: Limb): number | null => {
    const last = lastKnown(visits, (visit) => of(visit)[limb]);
    return (last ?? 0) > 0 ? last : now[limb];
  };
  return {
    leftFore: grade('leftFore'),
    rightFore: grade('rightFore'),
    leftHind: grade('leftHind'),
    rightHind: grade('rightHind'),
  };
}

/** What was told of the dog's past, and what its body shows of it. */
function historyOf(
  visits: readonly AssessedVisit[],
  { lamenessClearances, injuries, disease, heatIllness, medicine }: AssessedVisit,
): ScreeningInput {
  const muscle = lastKnown(visits, (visit) => visit.muscle);
  const thighGirthCm = lastKnown(visits, bothGirths);
  const body = { muscle, thighGirthCm };
  return known({ lamenessClearances, injuries, disease, heatIllness, medicine, ...body });
}

/** The girths of both thighs, cm, of a visit that has both: left and right of one day. */
function bothGirths({ measurements = [] }: AssessedVisit): ScreeningInput['thighGirthCm'] | null {
  const of = (limb: 'leftHind' | 'rightHind'): number | undefined =>
    measurements.find((entry) => entry.kind === 'thigh girth' && entry.limb === limb)?.value;
  const [leftHind, rightHind] = [of('leftHind'), of('rightHind')];
  return leftHind === undefined || rightHind === undefined ? null : { leftHind, rightHind };
}
