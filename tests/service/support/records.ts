import {
  blankClient,
  blankDog,
  blankPlanRequest,
  blankVisit,
} from '../../../electron/contract/blank.ts';
import type { SavedVisit } from '../../../electron/contract/contract.ts';
import type { Dog, VisitFacts } from '../../../electron/contract/records.ts';
import type { TestDesk } from '../desk.ts';

const SOUND = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 };

/** A weighed dog that may run, with one food. */
export function soundVisit(dogId: string, day: string): VisitFacts {
  return {
    ...blankVisit(dogId, day),
    weightKg: 24,
    bcs: 6,
    muscle: 'normal',
    lamenessWalk: SOUND,
    lamenessTrot: SOUND,
    walkBase: 'passed',
    foodGoal: 'lose',
    targetWeightKg: 22,
    diet: [
      {
        name: 'Dry food',
        treat: false,
        kcalPer100g: 360,
        gramsPerDay: 280,
        gramsPerCup: null,
        fixedGrams: false,
        energyFrom: 'declared',
        label: null,
      },
    ],
  };
}

export async function dogOf(desk: TestDesk, owner: string, name: string): Promise<Dog> {
  return desk.ok('dogs/saveWithOwner', {
    client: { ...blankClient(), name: owner },
    dog: { ...blankDog(), name, birthDay: '2021-05-01', adultWeightKg: 22 },
  });
}

/** A visit at which a plan is made and the proposed food accepted. */
export async function seenWithPlan(
  desk: TestDesk,
  dogId: string,
  day: string,
): Promise<SavedVisit> {
  return desk.ok('visits/save', {
    id: null,
    visit: soundVisit(dogId, day),
    plan: { ...blankPlanRequest(day, 'unconditioned'), goal: { continuousMinutes: 20 } },
    food: { decision: 'accepted', kcalPerDay: null, foodSwitch: null, note: '' },
  });
}
