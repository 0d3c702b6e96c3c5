import { plannedSessions } from '../../../core/index.ts';
import {
  blankClient,
  blankDog,
  blankPlanRequest,
  blankVisit,
} from '../../../electron/contract/records/forms.ts';
import type { SavedVisit } from '../../../electron/contract/contract.ts';
import type { PlanAnswer } from '../../../electron/contract/plans/answer.ts';
import type { Dog, SessionInput, VisitFacts } from '../../../electron/contract/records.ts';
import type { TestDesk } from './desk.ts';

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
    signsAsked: true,
    historyAsked: true,
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
    dog: { ...blankDog('female'), name, birthDay: '2021-05-01', adultWeightKg: 22 },
  });
}

/** An outing that was done as planned and went well, with what else is told of it. */
export const doneOn = (day: string, rest: Partial<SessionInput> = {}): SessionInput => ({
  day,
  outcome: 'done',
  runMinutes: null,
  longestRunMinutes: null,
  runKm: null,
  climbedM: null,
  nextDay: 'normal',
  signs: [],
  note: '',
  ...rest,
});

/** The proposed plan is taken as it is. */
export const ACCEPTED: PlanAnswer = {
  decision: 'accepted',
  clearedByVetOn: null,
  note: '',
  edits: [],
  kept: [],
};

/** The owner tells, on `day`, that every outing before it was done. */
export async function tellAllDone(desk: TestDesk, dogId: string, day: string): Promise<void> {
  desk.setDay(day);
  const { plans, sessions } = await desk.ok('dogs/file', { dogId });
  const told = new Set(sessions.map((session) => session.day));
  for (const planned of plannedSessions(plans)) {
    if (planned.day >= day || told.has(planned.day)) continue;
    await desk.ok('sessions/save', { dogId, session: doneOn(planned.day) });
  }
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
