import { inRange, weightInRange } from '../check.ts';
import { figure, type Reason } from '../figure.ts';
import { from } from '../origin.ts';
import { LIMBS, type Limb } from '../readiness/types.ts';
import type { RuleChanges } from '../rules/all.ts';
import { GAIT_RULES, gaitRuleValues } from '../rules/gait.ts';
import { changeNote } from '../rules/rule.ts';
import { provenanceOf } from '../rules/provenance.ts';
import { FORE_SHARE } from './reference.ts';
import { symmetryIndex } from './symmetry.ts';
import type { StandingShares } from './types.ts';

/**
 * Share of the standing weight per limb, from one reading per limb in kg.
 *
 * Fore share of sound dogs 60.4 ± 4.8 %; a hind left-right difference above 8.7 % of body weight is
 * worth a flag. A normal result does not rule lameness out.
 *
 * @param weightKg body weight; the sum of the four readings where absent
 * @throws RangeError for a reading outside 0–150 kg or four readings of 0.
 * @example
 * standingShares({ leftFore: 9, rightFore: 9, leftHind: 7, rightHind: 5 }).shares
 *   // => { leftFore: 30, rightFore: 30, leftHind: 23.33, rightHind: 16.67 }
 * Sources: standing weight distribution (S); Hyytiäinen et al. 2012 (C from S).
 */
export function standingShares(
  readings: Readonly<Record<Limb, number>>,
  weightKg?: number,
  changes?: RuleChanges,
): StandingShares {
  const rules = gaitRuleValues(changes);
  for (const limb of LIMBS) inRange(limb, readings[limb], 'kg', { min: 0, max: 150 });
  const sum = LIMBS.reduce((total, limb) => total + readings[limb], 0);
  const body = weightInRange('weightKg', weightKg ?? sum);
  const share = (limb: Limb): number => (100 * readings[limb]) / sum;
  const fore = share('leftFore') + share('rightFore');
  const hindDifference = (100 * Math.abs(readings.leftHind - readings.rightHind)) / body;
  const limit = rules.hindDifferencePercent;
  const normal = 'A normal result does not rule lameness out.';
  return {
    shares: {
      leftFore: share('leftFore'),
      rightFore: share('rightFore'),
      leftHind: share('leftHind'),
      rightHind: share('rightHind'),
    },
    foreSharePercent: {
      ...figure(fore, {
        id: 'foreShare',
        label: 'Standing weight on the fore limbs',
        unit: '%',
        formula: '100 × (left fore + right fore) / sum',
        ...from('A', 'S', 'standingShare'),
        notes: [`Sound dogs ${FORE_SHARE.mean} ± ${FORE_SHARE.sd} %.`, normal],
      }),
      low: FORE_SHARE.mean - FORE_SHARE.sd,
      high: FORE_SHARE.mean + FORE_SHARE.sd,
      rangeMeaning: 'sound dogs, one standard deviation',
    },
    symmetryFore: symmetryOrZero(readings.leftFore, readings.rightFore),
    symmetryHind: symmetryOrZero(readings.leftHind, readings.rightHind),
    hindDifferencePercent: figure(hindDifference, {
      id: 'hindDifference',
      label: 'Hind left-right difference',
      unit: '% of body weight',
      formula: '100 × |left hind − right hind| / body weight',
      inputs: [{ label: 'Body weight', value: body, unit: 'kg' }],
      ...provenanceOf(GAIT_RULES.hindDifferencePercent, limit),
      notes: [`Above ${limit} % it is worth a flag.`, normal],
    }),
    reasons: hindDifference > limit ? [hindReason(hindDifference, limit)] : [],
  };
}

/** A pair that bears nothing at all is not lopsided. */
function symmetryOrZero(left: number, right: number): number {
  return left + right === 0 ? 0 : symmetryIndex(left, right);
}

function hindReason(difference: number, limit: number): Reason {
  const rule = GAIT_RULES.hindDifferencePercent;
  return {
    code: 'hind-difference',
    text: `Hind limbs differ by ${difference.toFixed(1)} % of body weight, more than ${limit} %${changeNote(rule, limit)}.`,
    params: { difference, limit },
    ...provenanceOf(rule, limit),
    change: 'Look for the cause; ask the vet where it is not known.',
  };
}
