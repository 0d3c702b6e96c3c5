import { inRange, oneOf, weightInRange, wholeInRange } from '../check.ts';
import { addMonths, dayNumber, monthsBetween, type IsoDay } from '../day.ts';
import type { Provenance } from '../figure.ts';
import type { StartLevel } from '../ramp/types.ts';
import { ageGate, isSenior } from './age.ts';
import { RED_FLAGS } from './signs.ts';
import type { Gate, Limb, Screening, ScreeningInput, ScreeningReason } from './types.ts';

type Found = Omit<ScreeningReason, 'overriddenBecause'>;

const PRACTICE: Provenance = { evidence: 'D', mark: 'CP', sources: ['commonPractice'] };
const OWN: Provenance = { evidence: 'D', mark: 'D', sources: ['ownDecision'] };

const LIMB_WORDS: Readonly<Record<Limb, string>> = {
  leftFore: 'left fore',
  rightFore: 'right fore',
  leftHind: 'left hind',
  rightHind: 'right hind',
};
const ORDER: readonly Gate[] = ['vet first', 'walking only', 'note'];

function reason(
  code: string,
  gate: Gate,
  text: string,
  provenance: Provenance,
  change?: string,
  params: Found['params'] = {},
): Found {
  return { code, gate, text, params, ...provenance, ...(change === undefined ? {} : { change }) };
}

/**
 * May this dog run in harness? Looks at every gate and gives all reasons at once; the outcome is
 * the strictest gate that was not set aside with a written reason. What is not known is asked for
 * in a note and closes no gate by itself, except the walk base, which has to be passed.
 *
 * @throws RangeError naming the argument: bcs 1–9, weights 0.1–150 kg, lameness grades 0–5,
 *   ageMonths 0–360, days as calendar days.
 * Sources: common practice of the trade and our own cautious choices, marked on each reason;
 * growth: Hart et al. 2020, Salmeri et al. 1991; heat in short-nosed dogs: RVC VetCompass.
 */
export function screenForRunning(input: ScreeningInput): Screening {
  checkInput(input);
  const ageMonths = ageOf(input);
  const found = [
    ...lamenessReasons(input),
    ...signReasons(input),
    ...clearanceReasons(input),
    ...conditionReasons(input),
    ...ageReasons(input, ageMonths),
    ...walkBaseReasons(input),
    ...consentReasons(input),
  ];
  const reasons = found
    .map((entry) => ({ ...entry, overriddenBecause: overrideFor(input, entry) }))
    .sort((a, b) => ORDER.indexOf(a.gate) - ORDER.indexOf(b.gate));
  const open = reasons.filter((entry) => entry.overriddenBecause === null);
  const outcome = open.some(({ gate }) => gate === 'vet first')
    ? 'vet first'
    : open.some(({ gate }) => gate === 'walking only')
      ? 'walking only'
      : 'ready to start';
  return {
    outcome,
    reasons,
    recommendedStart: outcome === 'ready to start' ? startLevel(input, ageMonths) : null,
    oldEnoughOn: oldEnoughOn(input, ageMonths),
  };
}

function checkInput(input: ScreeningInput): void {
  if (input.day !== undefined) dayNumber(input.day, 'day');
  if (input.birthDay !== undefined) dayNumber(input.birthDay, 'birthDay');
  if (input.ageMonths !== undefined) {
    inRange('ageMonths', input.ageMonths, 'months', { min: 0, max: 360 });
  }
  if (input.weightKg !== undefined) weightInRange('weightKg', input.weightKg);
  if (input.bcs !== undefined) wholeInRange('bcs', input.bcs, 'of 9', { min: 1, max: 9 });
  for (const gait of ['walk', 'trot'] as const) {
    for (const [limb, grade] of Object.entries(input.lameness?.[gait] ?? {})) {
      if (grade !== null) {
        wholeInRange(`lameness.${gait}.${limb}`, grade, 'of 5', { min: 0, max: 5 });
      }
    }
  }
  for (const sign of input.signs ?? []) {
    oneOf(
      'signs',
      sign,
      RED_FLAGS.map(({ id }) => id as string),
    );
  }
}

function ageOf(input: ScreeningInput): number | null {
  if (input.ageMonths !== undefined) return input.ageMonths;
  if (input.day === undefined || input.birthDay === undefined) return null;
  return Math.max(0, monthsBetween(input.birthDay, input.day));
}

function overrideFor(input: ScreeningInput, entry: Found): string | null {
  if (entry.gate === 'note') return null;
  const override = input.overrides?.find(
    ({ code, reason: why }) => code === entry.code && why.trim() !== '',
  );
  return override?.reason ?? null;
}

function lameLimbs(grades: Partial<Record<Limb, number | null>> | undefined): [Limb, number][] {
  return (Object.entries(grades ?? {}) as [Limb, number | null][]).filter(
    (entry): entry is [Limb, number] => entry[1] !== null && entry[1] > 0,
  );
}

function lamenessReasons(input: ScreeningInput): Found[] {
  const describe = (limbs: [Limb, number][]): string =>
    limbs.map(([limb, grade]) => `${LIMB_WORDS[limb]} grade ${grade} of 5`).join(', ');
  const walk = lameLimbs(input.lameness?.walk);
  const trot = lameLimbs(input.lameness?.trot);
  const found: Found[] = [];
  if (walk.length > 0) {
    const text = `Lame at walk: ${describe(walk)}.`;
    const change = 'The vet finds and treats the cause, and the dog walks sound.';
    found.push(reason('lameness-walk', 'vet first', text, PRACTICE, change));
  }
  if (trot.length > 0 && input.trotLamenessAssessed !== true) {
    const text = `Lame at trot: ${describe(trot)}.`;
    const change = 'The vet assesses the lameness and clears the dog for work, or it trots sound.';
    found.push(reason('lameness-trot', 'vet first', text, PRACTICE, change));
  }
  const seen = (gait: 'walk' | 'trot'): boolean =>
    Object.values(input.lameness?.[gait] ?? {}).some((grade) => grade !== null);
  if (!seen('trot')) {
    const text = 'The dog has not been looked at in trot.';
    const change = 'Watch it trot in hand on a hard, level surface.';
    found.push(reason('trot-not-seen', 'walking only', text, OWN, change));
  }
  return found;
}

function signReasons(input: ScreeningInput): Found[] {
  return (input.signs ?? []).map((id) => {
    const flag = RED_FLAGS.find((entry) => entry.id === id)!;
    const change = flag.emergency
      ? 'This can be an emergency: call the vet now.'
      : 'The vet examines the dog and clears it in writing.';
    return reason(`sign-${id}`, 'vet first', `${flag.label}.`, PRACTICE, change);
  });
}

function clearanceReasons(input: ScreeningInput): Found[] {
  const found: Found[] = [];
  if (input.surgery === 'not cleared') {
    const text = 'Surgery in the history without a written clearance.';
    found.push(
      reason(
        'surgery',
        'vet first',
        text,
        PRACTICE,
        'The surgeon or treating vet clears the dog in writing.',
      ),
    );
  }
  const cleared = input.consent?.given === true;
  if ((input.shortNosed === true || input.airwayDisease === true) && !cleared) {
    const text =
      input.shortNosed === true
        ? 'Short-nosed: more than twice the odds of heat illness.'
        : 'Airway disease: breathing limits cooling.';
    const provenance: Provenance = { evidence: 'A', mark: 'S', sources: ['vetCompass'] };
    const change = "The vet's written clearance, recorded as consent.";
    found.push(
      reason(
        'airway',
        'vet first',
        text,
        input.shortNosed === true ? provenance : PRACTICE,
        change,
      ),
    );
  }
  return found;
}

function conditionReasons(input: ScreeningInput): Found[] {
  const { bcs } = input;
  if (bcs === undefined) {
    const text = 'Body condition has not been scored.';
    return [reason('bcs-missing', 'note', text, OWN, 'Score the dog from 1 to 9.')];
  }
  if (bcs >= 8) {
    const text = `Body condition ${bcs} of 9: running would load joints and heart too much.`;
    return [
      reason('bcs-high', 'walking only', text, PRACTICE, 'Body condition 7 or lower.', { bcs }),
    ];
  }
  if (bcs <= 2) {
    const text = `Body condition ${bcs} of 9: too thin; the cause has to be found.`;
    return [
      reason(
        'bcs-low',
        'vet first',
        text,
        PRACTICE,
        'The vet finds the cause and the dog gains weight.',
        { bcs },
      ),
    ];
  }
  return [];
}

function ageReasons(input: ScreeningInput, ageMonths: number | null): Found[] {
  if (ageMonths === null) {
    return [reason('age-missing', 'note', 'The age is not known.', OWN, 'Enter the day of birth.')];
  }
  const adultWeightKg = input.adultWeightKg ?? input.weightKg;
  const gate = ageGate(adultWeightKg ?? 40, input.neuteredAtMonths);
  const params = { ageMonths, ...gate };
  if (ageMonths < gate.requiredMonths && input.radiographicClearance !== true) {
    const text = `${ageMonths} months old: no running in harness before ${gate.requiredMonths} months.`;
    const provenance: Provenance = {
      evidence: 'C',
      mark: 'CP',
      sources: ['commonPractice', 'sportRules', 'hart2020', 'plateClosure'],
    };
    const change = `Wait until ${gate.requiredMonths} months, or the vet confirms closed growth plates on radiographs.`;
    return [reason('age-growth', 'walking only', text, provenance, change, params)];
  }
  if (ageMonths < gate.advisedMonths && input.radiographicClearance !== true) {
    const text = `${ageMonths} months old: waiting until ${gate.advisedMonths} months is advised (very large, or neutered early).`;
    const provenance: Provenance = {
      evidence: 'D',
      mark: 'D',
      sources: ['ownDecision', 'salmeri1991'],
    };
    return [reason('age-advice', 'note', text, provenance, undefined, params)];
  }
  if (adultWeightKg !== undefined && isSenior(ageMonths, adultWeightKg)) {
    const text =
      'Senior: no upper age while fit and cleared by the vet; start with walking, one level lower.';
    const provenance: Provenance = {
      evidence: 'D',
      mark: 'CP',
      sources: ['commonPractice', 'aahaLifeStages'],
    };
    return [reason('senior', 'note', text, provenance, undefined, params)];
  }
  return [];
}

function walkBaseReasons(input: ScreeningInput): Found[] {
  if (input.walkBase === 'passed') return [];
  const text =
    input.walkBase === 'failed'
      ? 'The walk base was not passed.'
      : 'The walk base has not been tested.';
  const change = '30 min brisk walk twice in a week, sound, and clear the next day.';
  return [reason('walk-base', 'walking only', text, OWN, change)];
}

function consentReasons(input: ScreeningInput): Found[] {
  const { consent, day } = input;
  if (consent?.given !== true) {
    const text =
      'No consent of the treating vet is recorded. In many countries it is required; local law decides.';
    return [
      reason(
        'consent-missing',
        'note',
        text,
        PRACTICE,
        'Record who consented, when, to what, and until when.',
      ),
    ];
  }
  if (day !== undefined && consent.expiryDay && consent.expiryDay < day) {
    const text = `The vet's consent ended on ${consent.expiryDay}.`;
    return [
      reason('consent-expired', 'note', text, PRACTICE, 'Ask the vet to renew it.', {
        day: consent.expiryDay,
      }),
    ];
  }
  return [];
}

/** The start the record supports: never above what the practitioner judged, one lower for a senior. */
function startLevel(input: ScreeningInput, ageMonths: number | null): StartLevel {
  const judged = input.conditioning ?? 'unconditioned';
  if (judged === 'post-injury' || input.surgery === 'cleared in writing') return 'post-injury';
  const weightKg = input.adultWeightKg ?? input.weightKg;
  const senior = ageMonths !== null && weightKg !== undefined && isSenior(ageMonths, weightKg);
  const heavy = input.bcs !== undefined && input.bcs >= 6;
  return senior || heavy ? 'unconditioned' : judged;
}

function oldEnoughOn(input: ScreeningInput, ageMonths: number | null): IsoDay | null {
  if (ageMonths === null || input.birthDay === undefined || input.radiographicClearance === true) {
    return null;
  }
  const gate = ageGate(input.adultWeightKg ?? input.weightKg ?? 40, input.neuteredAtMonths);
  return ageMonths < gate.requiredMonths ? addMonths(input.birthDay, gate.requiredMonths) : null;
}
