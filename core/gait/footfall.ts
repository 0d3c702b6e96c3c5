import { ArgumentError, inRange } from '../check.ts';
import type { Provenance, Reason } from '../figure.ts';
import { from, OWN } from '../origin.ts';
import type { Limb } from '../readiness/types.ts';
import type { RuleChanges } from '../rules/all.ts';
import { GAIT_RULES, gaitRuleValues } from '../rules/gait.ts';
import { provenanceOf } from '../rules/provenance.ts';
import { circularSpread, spread } from './spread.ts';
import { symmetryIndex } from './symmetry.ts';
import type { FootfallTimes, FootfallTiming, GaitClass, LimbTiming, Spread } from './types.ts';

const HILDEBRAND: Provenance = from('C', 'M', 'hildebrand');
const SECONDS = { min: 0, max: 86_400 } as const;

/** Upper ends of the classes of lateral phase, % of the stride; the last goes round to pace. */
const CLASSES: readonly (readonly [number, GaitClass])[] = [
  [6.25, 'pace'],
  [18.75, 'lateral sequence, lateral couplets'],
  [31.25, 'lateral sequence, single foot'],
  [43.75, 'lateral sequence, diagonal couplets'],
  [56.25, 'trot'],
  [68.75, 'diagonal sequence, diagonal couplets'],
  [81.25, 'diagonal sequence, single foot'],
  [93.75, 'diagonal sequence, lateral couplets'],
  [100, 'pace'],
];

/**
 * The class of a symmetrical gait by its lateral phase, 0–100 % of the stride: trot 43.75–56.25,
 * pace 0–6.25 and 93.75–100, eighths of the stride between.
 * @throws RangeError outside 0–100 %.
 * @example
 * hildebrandClass(50) // => 'trot'
 * hildebrandClass(25) // => 'lateral sequence, single foot'
 * Source: Hildebrand (M).
 */
export function hildebrandClass(lateralPhasePercent: number): GaitClass {
  inRange('lateralPhasePercent', lateralPhasePercent, '%', { min: 0, max: 100 });
  return CLASSES.find(([upTo]) => lateralPhasePercent <= upTo)![1];
}

/**
 * Stride time, duty factor, lateral phase, symmetry and gait from times of touch-down and lift-off,
 * in seconds from any start. Limbs may be missing; what cannot be told is null.
 *
 * Duty factor = stance / stride; lateral phase = (fore contact − contact of the hind limb of the
 * same side) / stride. Over 50 % duty the feet walk, else they run.
 *
 * @throws RangeError for times outside 0–86,400 s or touch-downs that do not rise.
 * @example
 * footfallTiming(sample.trot)
 *   // => { gait: 'trot', footing: 'running', strides: 5, reasons: [], … }
 * Source: Hildebrand's classes (M).
 */
export function footfallTiming(
  footfalls: readonly FootfallTimes[],
  changes?: RuleChanges,
): FootfallTiming {
  const rules = gaitRuleValues(changes);
  footfalls.forEach(checkTimes);
  const limbs = footfalls.map(limbTiming);
  const timesOf = (limb: Limb): FootfallTimes | undefined =>
    footfalls.find((entry) => entry.limb === limb);
  const left = phases(timesOf('leftHind'), timesOf('leftFore'));
  const right = phases(timesOf('rightHind'), timesOf('rightFore'));
  const both = circularSpread([...left, ...right]);
  const pairPhase = {
    fore: circularSpread(phases(timesOf('leftFore'), timesOf('rightFore'))),
    hind: circularSpread(phases(timesOf('leftHind'), timesOf('rightHind'))),
  };
  const duty = spread(footfalls.flatMap((entry) => dutyFactors(entry)));
  const symmetrical = isSymmetrical(pairPhase, rules.pairPhaseTolerance);
  const strides = Math.max(0, ...limbs.map(({ strideS }) => strideS?.count ?? 0));
  return {
    limbs,
    lateralPhase: { left: circularSpread(left), right: circularSpread(right), both },
    pairPhase,
    stanceSymmetry: {
      fore: stanceSymmetry(limbs, 'leftFore', 'rightFore'),
      hind: stanceSymmetry(limbs, 'leftHind', 'rightHind'),
    },
    dutyPercent: duty,
    strideS: spread(footfalls.flatMap(({ touchDowns }) => strideTimes(touchDowns))),
    footing: duty === null ? null : duty.mean > 50 ? 'walking' : 'running',
    gait: gaitOf(both, symmetrical),
    strides,
    reasons: reasonsFor(symmetrical, strides, rules.pairPhaseTolerance),
  };
}

function checkTimes({ limb, touchDowns, liftOffs }: FootfallTimes): void {
  for (const time of [...touchDowns, ...liftOffs]) inRange(`${limb} time`, time, 's', SECONDS);
  touchDowns.forEach((time, index) => {
    if (index === 0 || time > touchDowns[index - 1]!) return;
    const text = `${limb}: touch-downs must rise, but ${time} s follows ${touchDowns[index - 1]} s`;
    throw new ArgumentError(limb, 's', SECONDS, text);
  });
}

const strideTimes = (touchDowns: readonly number[]): number[] =>
  touchDowns.slice(1).map((time, index) => time - touchDowns[index]!);

/** Stance of each stride: from a touch-down to the lift-off before the next touch-down. */
function stances({
  touchDowns,
  liftOffs,
}: FootfallTimes): { stance: number; stride: number | null }[] {
  return touchDowns.flatMap((down, index) => {
    const next = touchDowns[index + 1];
    const off = liftOffs.find((time) => time > down && (next === undefined || time <= next));
    if (off === undefined) return [];
    return [{ stance: off - down, stride: next === undefined ? null : next - down }];
  });
}

function dutyFactors(times: FootfallTimes): number[] {
  return stances(times).flatMap(({ stance, stride }) =>
    stride === null ? [] : [(100 * stance) / stride],
  );
}

function limbTiming(times: FootfallTimes): LimbTiming {
  return {
    limb: times.limb,
    strideS: spread(strideTimes(times.touchDowns)),
    stanceS: spread(stances(times).map(({ stance }) => stance)),
    dutyPercent: spread(dutyFactors(times)),
  };
}

/** Where in the stride of `lead` the other limb touches down, % (0–100) of each stride. */
function phases(lead: FootfallTimes | undefined, other: FootfallTimes | undefined): number[] {
  if (lead === undefined || other === undefined) return [];
  return lead.touchDowns.slice(0, -1).flatMap((down, index) => {
    const next = lead.touchDowns[index + 1]!;
    const contact = other.touchDowns.find((time) => time >= down && time < next);
    return contact === undefined ? [] : [(100 * (contact - down)) / (next - down)];
  });
}

function stanceSymmetry(limbs: readonly LimbTiming[], left: Limb, right: Limb): number | null {
  const mean = (limb: Limb): number | undefined =>
    limbs.find((entry) => entry.limb === limb)?.stanceS?.mean;
  const [onLeft, onRight] = [mean(left), mean(right)];
  return onLeft === undefined || onRight === undefined ? null : symmetryIndex(onLeft, onRight);
}

/** Both pairs evenly spaced; null where no pair was timed. */
function isSymmetrical(
  { fore, hind }: FootfallTiming['pairPhase'],
  tolerance: number,
): boolean | null {
  const pairs = [fore, hind].filter((pair) => pair !== null);
  if (pairs.length === 0) return null;
  return pairs.every(({ mean }) => Math.abs(mean - 50) <= tolerance);
}

function gaitOf(lateral: Spread | null, symmetrical: boolean | null): GaitClass | null {
  if (symmetrical === false) return 'asymmetrical (canter or gallop)';
  return lateral === null ? null : hildebrandClass(lateral.mean);
}

const FEW_STRIDES = 5;

function reasonsFor(symmetrical: boolean | null, strides: number, tolerance: number): Reason[] {
  const reasons: Reason[] = [];
  if (symmetrical === false) {
    reasons.push({
      code: 'gait-asymmetrical',
      text: `The feet of a pair do not follow evenly (50 ± ${tolerance} % of the stride): canter, gallop, or a lame dog.`,
      params: { tolerance },
      ...provenanceOf(GAIT_RULES.pairPhaseTolerance, tolerance),
    });
  }
  if (symmetrical === null) {
    reasons.push({
      code: 'gait-pair-missing',
      text: 'No left and right of a pair were timed: that the gait is symmetrical is assumed.',
      params: {},
      ...HILDEBRAND,
    });
  }
  if (strides < FEW_STRIDES) {
    reasons.push({
      code: 'gait-few-strides',
      text: `Only ${strides} whole strides were timed; the spread says little.`,
      params: { strides },
      ...OWN,
      change: `Time at least ${FEW_STRIDES} strides at a steady speed.`,
    });
  }
  return reasons;
}
