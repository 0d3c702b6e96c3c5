import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { addDays, plannedSessions } from '../../core/index.ts';
import {
  blankClient,
  blankDog,
  blankPlanRequest,
  blankPractice,
  blankVisit,
} from '../../electron/contract/records/forms.ts';
import type { DogFile } from '../../electron/contract/contract.ts';
import type {
  FoodDecisionInput,
  PlanRequest,
  Practice,
  SessionInput,
  VisitFacts,
} from '../../electron/contract/records.ts';
import { openOwn, serviceOn, type TestDesk } from '../service/support/desk.ts';
import { exported, imported } from '../service/exchange/support/bundle.ts';
import { BEGINS, type Food, type Step, type Story, type ToldOutings } from './story.ts';

/** A story after its last step. */
export interface Played {
  readonly story: Story;
  readonly desk: TestDesk;
  readonly practice: Practice;
  readonly file: DogFile;
}

const SOUND = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 };

/** A lean, sound dog that may run, with one food and one treat. */
const FIRST_SEEN: Partial<VisitFacts> = {
  weightKg: 24,
  bcs: 5,
  muscle: 'normal',
  walkBase: 'passed',
  activity: 'moderate',
  consent: {
    given: true,
    vet: 'Dr C. Vet',
    day: '2026-02-20',
    scope: 'Running in harness',
    expiryDay: null,
  },
  diet: [food('Dry food', 360, 280), { ...food('Biscuits', 400, 15), treat: true }],
};

/** A food as a visit keeps it. */
export function food(
  name: string,
  kcalPer100g: number,
  gramsPerDay: number,
): VisitFacts['diet'][number] {
  return {
    name,
    kcalPer100g,
    gramsPerDay,
    treat: false,
    gramsPerCup: null,
    fixedGrams: false,
    energyFrom: 'declared',
    label: null,
  };
}

const dayOf = ({ on }: Step): string => addDays(BEGINS, on);

/** A service for all stories: every dog of theirs is in one practice. */
export function openStories(): { readonly desk: TestDesk; readonly close: () => Promise<void> } {
  const folder = mkdtempSync(join(tmpdir(), 'trotwell-stories-'));
  const desk = serviceOn(folder, BEGINS);
  return {
    desk,
    close: async () => {
      await desk.service.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** Plays a story. It leaves the service's clock and the practice's units as they are at its end. */
export async function play(all: TestDesk, story: Story): Promise<Played> {
  const practice = { ...blankPractice(), name: 'Invented Practice', ...story.practice };
  let desk = all;
  desk.setDay(BEGINS);
  await desk.ok('app/open', { which: 'own' });
  await desk.ok('practice/save', practice);
  const dog = { ...blankDog('female'), name: 'Rusk', birthDay: '2021-05-01', adultWeightKg: 24 };
  const { id: dogId, clientId } = await desk.ok('dogs/saveWithOwner', {
    client: { ...blankClient(), name: 'Dana Owner', vetName: 'Dr C. Vet', ...story.owner },
    dog: { ...dog, ...story.dog },
  });
  if (story.secondDog !== undefined) await addSecondDog(desk, clientId, story.secondDog);
  for (const step of story.steps) {
    desk.setDay(dayOf(step));
    if ('restored' in step) desk = await restored(desk, clientId, practice, dayOf(step));
    else await take(desk, dogId, step);
  }
  return { story, desk, practice, file: await desk.ok('dogs/file', { dogId }) };
}

async function addSecondDog(
  desk: TestDesk,
  clientId: string,
  facts: Partial<VisitFacts>,
): Promise<void> {
  const dog = {
    ...blankDog('female'),
    name: 'Twin',
    birthDay: '2020-05-01',
    adultWeightKg: 30,
    clientId,
  };
  const { id } = await desk.ok('dogs/save', { id: null, dog });
  await take(desk, id, { on: 0, visit: facts, food: 'accepted' });
}

async function restored(
  desk: TestDesk,
  clientId: string,
  practice: Practice,
  day: string,
): Promise<TestDesk> {
  const bundle = await exported(desk, clientId);
  const other = await openOwn(undefined, day);
  await other.ok('practice/save', practice);
  await imported(other, bundle);
  return other;
}

async function take(desk: TestDesk, dogId: string, step: Step): Promise<void> {
  const file = await desk.ok('dogs/file', { dogId });
  if ('visit' in step) return visit(desk, file, step);
  if ('weighed' in step) {
    const weighing = { ...blankWeighing, day: dayOf(step), weightKg: step.weighed };
    await desk.ok('weighings/save', { dogId, weighing });
  } else if ('told' in step) {
    for (const session of outingsTold(file, dayOf(step), step.told)) {
      await desk.ok('sessions/save', { dogId, session, reason: '' });
    }
  } else if ('edits' in step) {
    const ahead = plannedSessions(file.plans).filter(({ day }) => day >= dayOf(step));
    const edits = [...step.edits((count) => ahead.at(count)!.day)];
    await desk.ok('plans/edit', { dogId, edits, kept: [], note: step.why });
  } else if ('amended' in step) {
    const {
      id,
      revision,
      createdAt: _c,
      updatedAt: _u,
      author: _a,
      ...facts
    } = file.visits.at(-1)!;
    await desk.ok('visits/save', {
      id,
      basedOn: revision,
      reason: step.why,
      visit: { ...facts, ...step.amended },
      plan: null,
      food: null,
    });
  }
}

const blankWeighing = { weighingMethod: 'same scale', scaleStepKg: 0.1, note: '' } as const;

type VisitStep = Extract<Step, { readonly visit: unknown }>;

async function visit(desk: TestDesk, file: DogFile, step: VisitStep): Promise<void> {
  const day = dayOf(step);
  const previous = file.visits.at(-1);
  const begun = blankVisit(file.dog.id, day, previous, file.foodDecisions.at(-1) ?? null);
  await desk.ok('visits/save', {
    id: null,
    visit: {
      ...begun,
      lamenessWalk: SOUND,
      lamenessTrot: SOUND,
      signsAsked: true,
      historyAsked: true,
      ...(previous === undefined ? FIRST_SEEN : {}),
      ...step.visit,
    },
    plan: step.plan === undefined ? null : planRequest(day, step.plan),
    food: step.food === undefined ? null : foodAnswer(day, step.food),
    sessions: step.told === undefined ? [] : outingsTold(file, day, step.told),
    review:
      step.review === undefined
        ? null
        : { decision: step.review, clearedByVetOn: null, note: '', edits: [], kept: [] },
  });
}

function planRequest(day: string, plan: NonNullable<VisitStep['plan']>): PlanRequest {
  const { inDays, ...rest } = plan;
  return { ...blankPlanRequest(addDays(day, inDays), 'unconditioned'), ...rest };
}

function foodAnswer(day: string, answer: Food): FoodDecisionInput {
  const none = { kcalPerDay: null, foodSwitch: null, note: '' };
  if (typeof answer === 'string') return { ...none, decision: answer };
  if ('kcalPerDay' in answer) return { ...none, decision: 'edited', ...answer };
  return {
    ...none,
    decision: 'accepted',
    foodSwitch: { ...answer.newFood, startDay: addDays(day, 1) },
  };
}

/** Every outing before `day` that nothing was told of. */
function outingsTold(file: DogFile, day: string, told: ToldOutings): SessionInput[] {
  const known = new Set(file.sessions.map((session) => session.day));
  const open = plannedSessions(file.plans).filter(
    (session) => session.day < day && !known.has(session.day),
  );
  const outcome = typeof told === 'string' ? told : told.all;
  return open.map((session, index) => ({
    day: session.day,
    outcome,
    runMinutes: null,
    longestRunMinutes: null,
    runKm: null,
    climbedM: null,
    nextDay: outcome === 'done' ? 'normal' : null,
    signs: [],
    note: '',
    ...(typeof told !== 'string' && index === open.length - 1 ? told.last : {}),
  }));
}
