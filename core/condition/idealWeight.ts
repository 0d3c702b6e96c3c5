import { weightInRange, wholeInRange } from '../check.ts';
import { estimate, type Estimate, type FigureInput } from '../figure.ts';

/** Body fat at the ideal score, % (Clinician's Brief 2010, S). */
const IDEAL_FAT_PERCENT = 20;
/** Body fat per score point, percentage points (S). */
const FAT_PER_POINT = 5;

/** Body fat in % that goes with a score, a mean with a wide spread. */
export function fatPercent(bcs: number): number {
  wholeInRange('bcs', bcs, 'of 9', { min: 1, max: 9 });
  return Math.max(0, IDEAL_FAT_PERCENT + FAT_PER_POINT * (bcs - 5));
}

/**
 * The weight this dog would have in ideal condition, kg, as a range; the practitioner sets the
 * target. Above 5, n = BCS − 5: middle `kg / (1 + 0.10 n)`, low `kg / (1 + 0.15 n)`, high at
 * constant lean mass `kg × (100 − fat %) / 80`, fat % = 20 + 5 n. At 4 and 5 the dog is at its
 * ideal. At 3 and below `kg / (1 − 0.10 × points under 5)`: no percentage is published (M).
 *
 * @param bcs 1–9, whole
 * @throws RangeError for a weight outside 0.1–150 kg or a score that is not 1–9
 * @example idealWeight({ weightKg: 40, bcs: 8 }) // 30.77 (27.59 to 32.5)
 * Sources: AAHA toolkit (S), Vet Times 2015 (S), Clinician's Brief 2010 (S); below 5 from memory.
 */
export function idealWeight(dog: {
  weightKg: number;
  bcs: number;
  sighthound?: boolean;
}): Estimate {
  const { weightKg } = dog;
  weightInRange('weightKg', weightKg);
  wholeInRange('bcs', dog.bcs, 'of 9', { min: 1, max: 9 });
  const points = dog.bcs - 5;
  const inputs: FigureInput[] = [
    { label: 'Body weight', value: weightKg, unit: 'kg' },
    { label: 'Body condition score', value: dog.bcs, unit: 'of 9' },
  ];
  const sighthoundNote =
    dog.sighthound === true
      ? [
          'Sighthounds carry less fat: greyhounds at 5 of 9 measured 7.2 %, so the range is less sure.',
        ]
      : [];
  const shared = {
    id: 'idealWeight',
    label: 'Weight in ideal condition',
    unit: 'kg',
    inputs,
  } as const;
  if (points > 0) {
    const high = (weightKg * (100 - fatPercent(dog.bcs))) / (100 - IDEAL_FAT_PERCENT);
    return estimate(weightKg / (1 + 0.1 * points), weightKg / (1 + 0.15 * points), high, {
      ...shared,
      rangeMeaning: '15 % a point over ideal, to constant lean mass',
      formula: 'kg / (1 + 0.10 × points over 5)',
      evidence: 'C',
      mark: 'S',
      sources: ['aahaWeight', 'vetTimes2015', 'cliniciansBrief2010'],
      notes: ['A range, not a point: the practitioner sets the target.', ...sighthoundNote],
    });
  }
  if (dog.bcs >= 4) return atIdeal(weightKg, shared, sighthoundNote);
  const under = -points * 0.1;
  return estimate(weightKg / (1 - under), weightKg, weightKg / (1 - under * 1.5), {
    ...shared,
    rangeMeaning: 'no change, to 15 % a point',
    formula: 'kg / (1 − 0.10 × points under 5)',
    evidence: 'D',
    mark: 'M',
    sources: ['ownDecision'],
    notes: [
      'No percentage is published for thin dogs; 10 % a point is from memory. Find the cause first.',
      ...sighthoundNote,
    ],
  });
}

function atIdeal(
  weightKg: number,
  shared: { id: string; label: string; unit: string; inputs: FigureInput[] },
  notes: readonly string[],
): Estimate {
  return estimate(weightKg, weightKg, weightKg, {
    ...shared,
    formula: 'the present weight (body condition 4–5 of 9 is ideal)',
    evidence: 'C',
    mark: 'S',
    sources: ['laflamme1997', 'wsavaNutrition'],
    notes,
  });
}
