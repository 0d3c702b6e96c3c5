import { weightInRange, wholeInRange } from '../check.ts';
import { estimate, type Estimate, type FigureText } from '../figure.ts';
import { from } from '../origin.ts';

/** Body fat at the ideal score, % (Clinician's Brief 2010, S). */
const IDEAL_FAT_PERCENT = 20;
/** Body fat per score point, percentage points (S). */
const FAT_PER_POINT = 5;
/** Over (or under, M) the ideal weight per score point, share: usual, and the far end (S). */
const PER_POINT = { usual: 0.1, most: 0.15 } as const;

/**
 * Body fat in % that goes with a score, a mean with a wide spread.
 * @example fatPercent(8) // => 35
 */
export function fatPercent(bcs: number): number {
  wholeInRange('bcs', bcs, 'of 9', { min: 1, max: 9 });
  return Math.max(0, IDEAL_FAT_PERCENT + FAT_PER_POINT * (bcs - 5));
}

export interface IdealWeight extends Estimate {
  /** Why the vet comes before any target, in a sentence; null otherwise. */
  readonly referral: string | null;
}

export interface IdealWeightInput {
  readonly weightKg: number;
  /** 1–9, whole. */
  readonly bcs: number;
  readonly sighthound?: boolean;
}

/**
 * The weight this dog would have in ideal condition, kg, as a range; the practitioner sets the
 * target. Above 5, n = BCS − 5: middle `kg / (1 + 0.10 n)`, low `kg / (1 + 0.15 n)`, high at
 * constant lean mass `kg × (100 − fat %) / 80`, fat % = 20 + 5 n (M/C). At 5 the dog is at its
 * ideal; at 4 too, with room for one point above. At 3 and below, n = 4 − BCS, as 4
 * and 5 are both ideal: middle `kg / (1 − 0.10 n)`, low at 5 % a point, high counted from 5: no
 * percentage is published (M), the ends are ours (D).
 *
 * @throws RangeError for a weight outside 0.1–150 kg or a score that is not 1–9
 * @example idealWeight({ weightKg: 40, bcs: 8 }) // => { mid: 30.77, low: 27.59, high: 32.5, … }
 * Sources: AAHA toolkit (S), Vet Times 2015 (S), Clinician's Brief 2010 (S); below 5 from memory.
 */
export function idealWeight(dog: IdealWeightInput): IdealWeight {
  weightInRange('weightKg', dog.weightKg);
  wholeInRange('bcs', dog.bcs, 'of 9', { min: 1, max: 9 });
  if (dog.bcs > 5) return overIdeal(dog);
  return dog.bcs >= 4 ? atIdeal(dog) : underIdeal(dog);
}

function overIdeal(dog: IdealWeightInput): IdealWeight {
  const points = dog.bcs - 5;
  const { weightKg } = dog;
  const low = weightKg / (1 + PER_POINT.most * points);
  const high = (weightKg * (100 - fatPercent(dog.bcs))) / (100 - IDEAL_FAT_PERCENT);
  return build(dog, [weightKg / (1 + PER_POINT.usual * points), low, high], {
    rangeMeaning: '15 % a point over ideal, to constant lean mass',
    formula: 'kg / (1 + 0.10 × points over 5)',
    ...from('C', 'S', 'aahaWeight', 'vetTimes2015', 'cliniciansBrief2010', 'arithmetic'),
    notes: [
      'A range, not a point: the practitioner sets the target.',
      'The high end is our arithmetic: lean mass unchanged, from memory, at the body fat of the score.',
    ],
  });
}

function atIdeal(dog: IdealWeightInput): IdealWeight {
  const { weightKg } = dog;
  const high = dog.bcs === 5 ? weightKg : weightKg / (1 - PER_POINT.usual);
  return build(dog, [weightKg, weightKg, high], {
    rangeMeaning: 'the present weight, to one score point more',
    formula: 'the present weight (body condition 4–5 of 9 is ideal)',
    ...from('C', 'S', 'laflamme1997', 'wsavaNutrition'),
    notes: [],
  });
}

function underIdeal(dog: IdealWeightInput): IdealWeight {
  const points = 4 - dog.bcs;
  const { weightKg } = dog;
  const low = weightKg / (1 - (PER_POINT.usual / 2) * points);
  const high = weightKg / (1 - PER_POINT.usual * (points + 1));
  return build(dog, [weightKg / (1 - PER_POINT.usual * points), low, high], {
    rangeMeaning: '5 % a point, to counted from score 5',
    formula: 'kg / (1 − 0.10 × points under 4)',
    ...from('D', 'M', 'ownDecision'),
    notes: [
      'No percentage is published for thin dogs; 10 % a point under 4 is from memory. Find the cause first.',
    ],
  });
}

const SIGHTHOUND =
  'Sighthounds carry less fat: greyhounds at 5 of 9 measured 7.2 %, so the score says less about them.';

function build(
  dog: IdealWeightInput,
  [mid, low, high]: readonly [number, number, number],
  text: Omit<FigureText, 'id' | 'label' | 'unit' | 'inputs'>,
): IdealWeight {
  const sighthound = dog.sighthound === true;
  const built = estimate(mid, low, high, {
    ...text,
    id: 'idealWeight',
    label: 'Weight in ideal condition',
    unit: 'kg',
    inputs: [
      { label: 'Body weight', value: dog.weightKg, unit: 'kg' },
      { label: 'Body condition score', value: dog.bcs, unit: 'of 9' },
    ],
    sources: sighthound ? [...text.sources, 'greyhoundFat'] : text.sources,
    notes: [...(text.notes ?? []), ...(sighthound ? [SIGHTHOUND] : [])],
  });
  const referral =
    dog.bcs <= 2
      ? `Body condition ${dog.bcs} of 9: the vet has to find the cause before a target is set.`
      : null;
  return { ...built, referral };
}
