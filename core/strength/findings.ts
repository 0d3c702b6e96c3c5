import type { Disease, Injury, LamenessClearance, Palpation, Rise } from '../readiness/record.ts';
import type { LimbGrades, Screening, SurgeryState } from '../readiness/types.ts';
import type { Contraindication, Purpose } from './catalogue.ts';
import type { StrengthInput, StrengthStage } from './propose.ts';

/** What a visit found that exercises are chosen by; a visit is taken as it is. */
export interface StrengthFindings {
  readonly disease: Disease;
  readonly injuries: readonly Injury[];
  readonly surgery: SurgeryState;
  readonly lamenessClearances: readonly LamenessClearance[];
  readonly palpation: Palpation;
  readonly lamenessWalk: LimbGrades;
  readonly lamenessTrot: LimbGrades;
  readonly sitToStand: Rise | null;
  readonly lieToStand: Rise | null;
}

// The structure is in the practitioner's own words: rather one word too many than too few (D).
const SPINE = /spin|disc|disk|vertebr|back|neck|lumb|sacr/i;
const CRUCIATE = /cruciate|\bccl\b|\bacl\b|stifle|knee/i;
/** From here on a back that is pressed counts as painful: it tenses each time (D). */
const PAIN_FROM = 2;

function spine({ disease, injuries, palpation }: StrengthFindings): boolean {
  const sore = [palpation.neck, palpation.back, palpation['loin and pelvis']];
  return (
    disease.spine === 'yes' ||
    injuries.some(({ structure }) => SPINE.test(structure)) ||
    sore.some((grade) => (grade ?? 0) >= PAIN_FROM)
  );
}

/** A clearance counts from the day of the injury on; an injury of no known day is never cleared. */
function cruciate({ injuries, surgery, lamenessClearances }: StrengthFindings): boolean {
  if (surgery === 'cleared in writing') return false;
  const hind = lamenessClearances.filter(({ limb }) => limb.endsWith('Hind'));
  return injuries.some(
    ({ structure, day }) =>
      CRUCIATE.test(structure) && !(day !== null && hind.some((seen) => seen.day >= day)),
  );
}

function against(found: StrengthFindings, screening: Screening): Contraindication[] {
  const growing = screening.reasons.some(({ code }) => code.startsWith('age-'));
  return [
    ...(spine(found) ? (['spine'] as const) : []),
    ...(cruciate(found) ? (['cruciate before clearance'] as const) : []),
    ...(growing ? (['open growth plates'] as const) : []),
  ];
}

function needs(found: StrengthFindings, screening: Screening): Purpose[] {
  const lame = (end: 'Fore' | 'Hind') =>
    [found.lamenessWalk, found.lamenessTrot].some((grades) =>
      Object.entries(grades).some(([limb, grade]) => limb.endsWith(end) && (grade ?? 0) > 0),
    );
  const rises = [found.sitToStand, found.lieToStand].some(
    (rise) => rise !== null && rise !== 'even',
  );
  const senior = screening.reasons.some(({ code }) => code === 'senior');
  return [
    ...(rises || lame('Hind') ? (['hind limbs'] as const) : []),
    ...(lame('Fore') ? (['fore limbs'] as const) : []),
    ...(senior ? (['balance'] as const) : []),
  ];
}

/**
 * How far the dog may go with exercises, what speaks against some, and what it needs.
 * @example strengthInputOf(sample.findings, sample.screening, true)
 *   // => { stage: 'running', against: ['spine'], needs: [] }
 */
export function strengthInputOf(
  found: StrengthFindings,
  screening: Screening,
  runs: boolean,
): StrengthInput {
  const stages: Readonly<Record<Screening['outcome'], StrengthStage>> = {
    'vet first': 'vet first',
    'walking only': 'walking',
    'ready to start': runs ? 'running' : 'ready',
  };
  return {
    stage: stages[screening.outcome],
    against: against(found, screening),
    needs: needs(found, screening),
  };
}
