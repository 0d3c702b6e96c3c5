import type { ScreeningInput, Screening } from '../readiness/types.ts';
import { screenForRunning } from '../readiness/screen.ts';
import { lastKnown } from './course.ts';
import type { AssessedVisit, AssessInput } from './types.ts';

/** The screening of the record as it stands at the `latest` of its visits. */
export function screenRecord(
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
    signs: latest.signs,
    surgery: latest.surgery,
    radiographicClearance: latest.radiographicClearance,
    walkBase: latest.walkBase,
    conditioning: latest.conditioning,
    consent: latest.consent,
    overrides: latest.overrides,
    ...historyOf(visits, latest),
    ...(rules === undefined ? {} : { rules }),
  });
}

/** What was told of the dog's past, and what its body shows of it. */
function historyOf(
  visits: readonly AssessedVisit[],
  { lamenessClearances, injuries, disease, heatIllness, medicine }: AssessedVisit,
): ScreeningInput {
  const muscle = lastKnown(visits, (visit) => visit.muscle);
  const thighGirthCm = lastKnown(visits, bothGirths);
  return {
    ...(lamenessClearances === undefined ? {} : { lamenessClearances }),
    ...(injuries === undefined ? {} : { injuries }),
    ...(disease === undefined ? {} : { disease }),
    ...(heatIllness === undefined ? {} : { heatIllness }),
    ...(medicine === undefined ? {} : { medicine }),
    ...(muscle === null ? {} : { muscle }),
    ...(thighGirthCm === null ? {} : { thighGirthCm }),
  };
}

/** The girths of both thighs, cm, of a visit that has both: left and right of one day. */
function bothGirths({ measurements = [] }: AssessedVisit): ScreeningInput['thighGirthCm'] | null {
  const of = (limb: 'leftHind' | 'rightHind'): number | undefined =>
    measurements.find((entry) => entry.kind === 'thigh girth' && entry.limb === limb)?.value;
  const [leftHind, rightHind] = [of('leftHind'), of('rightHind')];
  return leftHind === undefined || rightHind === undefined ? null : { leftHind, rightHind };
}
