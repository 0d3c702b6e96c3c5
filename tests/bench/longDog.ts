import { addDays } from '../../core/day.ts';
import {
  blankClient,
  blankDog,
  blankPlanRequest,
  blankPractice,
  blankVisit,
} from '../../electron/contract/records/forms.ts';
import type { VisitFacts } from '../../electron/contract/records.ts';
import { TODAY, type GeneratedPractice } from './practice.ts';
import { ask, startService } from './service.ts';

/** The dog with much in its record; its name is nobody else's. */
export const LONG_DOG = 'Yarrow';
const VISITS = 40;
const EVERY_DAYS = 7;
const SOUND = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 };

const facts = (dogId: string, index: number): VisitFacts => ({
  // Not the dog seen last, whose sheets are printed ahead.
  ...blankVisit(dogId, addDays(TODAY, (index - VISITS) * EVERY_DAYS)),
  kind: index === 0 ? 'intake' : 'follow-up',
  weightKg: Math.round(10 * (30 - 0.1 * index)) / 10,
  bcs: 5,
  muscle: 'normal',
  lamenessWalk: SOUND,
  lamenessTrot: SOUND,
  signsAsked: true,
  historyAsked: true,
  walkBase: 'passed',
  foodGoal: 'hold',
  diet: [
    {
      name: 'Dry food',
      treat: false,
      kcalPer100g: 360,
      gramsPerDay: 300,
      gramsPerCup: null,
      fixedGrams: false,
      energyFrom: 'declared',
      label: null,
    },
  ],
});

/**
 * Adds a dog with forty visits, a plan of about a year and its ration, and has the practice print
 * both sheets; all through the service.
 */
export async function addLongDog(practice: GeneratedPractice): Promise<void> {
  const service = startService(practice.folder);
  const sheets = ['running-plan', 'feeding-sheet'] as const;
  await ask(service, 'practice/save', {
    ...blankPractice(),
    name: 'Invented practice for measuring',
    intakeSheets: [...sheets],
    followUpSheets: [...sheets],
  });
  const dog = await ask(service, 'dogs/saveWithOwner', {
    client: { ...blankClient(), name: 'Ode Ownerless' },
    dog: {
      ...blankDog('female'),
      name: LONG_DOG,
      birthDay: addDays(TODAY, -1500),
      adultWeightKg: 25,
    },
  });
  for (let index = 0; index < VISITS; index += 1) {
    const last = index === VISITS - 1;
    await ask(service, 'visits/save', {
      id: null,
      visit: facts(dog.id, index),
      plan: last
        ? {
            ...blankPlanRequest(addDays(TODAY, 1), 'post-injury'),
            goal: { distanceKm: 10, paceMinPerKm: 6.5 },
          }
        : null,
      food: last ? { decision: 'accepted', kcalPerDay: null, foodSwitch: null, note: '' } : null,
    });
  }
  await service.close();
}
