import type { AssessedDog, AssessedVisit } from '../../../core/assess/types.ts';

const SOUND = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 } as const;

/** A grown dog of 30 kg; its 27 kg are expected. */
export const grownDog: AssessedDog = {
  birthDay: '2020-05-01',
  neuter: 'neutered',
  neuteredAtMonths: 18,
  adultWeightKg: 27,
  shortNosed: false,
  sighthound: false,
};

/** A visit with nothing against the dog; it eats `kcal` a day. */
export function visit(
  day: string,
  weightKg: number | null,
  changes: Partial<AssessedVisit> & { readonly kcal?: number } = {},
): AssessedVisit {
  const { kcal = 0, ...facts } = changes;
  return {
    day,
    weightKg,
    weighingMethod: 'same scale',
    scaleStepKg: 0.1,
    bcs: 5,
    muscle: 'normal',
    lamenessWalk: SOUND,
    lamenessTrot: SOUND,
    signs: [],
    surgery: 'none',
    airwayDisease: false,
    airwayClearance: false,
    radiographicClearance: false,
    conditioning: 'unconditioned',
    walkBase: 'passed',
    activity: 'low',
    consent: { given: true, vet: 'Dr Example', day, scope: '', expiryDay: null },
    overrides: [],
    targetWeightKg: null,
    foodGoal: 'hold',
    mealsPerDay: 2,
    weightLossDiet: false,
    diet: kcal === 0 ? [] : [{ name: 'Dry food', kcalPer100g: 400, gramsPerDay: kcal / 4 }],
    ...facts,
  };
}
