import { describe, expect, test } from 'vitest';
import { addDays } from '../../../core/index.ts';
import {
  blankClient,
  blankDog,
  blankPlanRequest,
  blankPractice,
  blankVisit,
} from '../../../electron/contract/records/forms.ts';
import type { Plan } from '../../../electron/contract/contract.ts';
import type { VisitFacts } from '../../../electron/contract/records.ts';
import { openOwn, type TestDesk } from '../support/desk.ts';
import { doneOn, tellAllDone } from '../support/records.ts';

const SOUND = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 };
const FOOD = { decision: 'accepted', kcalPerDay: null, foodSwitch: null, note: '' } as const;
const PLAN = {
  ...blankPlanRequest('2026-03-04', 'unconditioned'),
  goal: { continuousMinutes: 20 },
};

async function addDog(desk: TestDesk, name = 'Rusk'): Promise<string> {
  await desk.ok('practice/save', { ...blankPractice(), name: 'Mill Brook Canine Fitness' });
  const dog = await desk.ok('dogs/saveWithOwner', {
    client: { ...blankClient(), name: 'Dana Owner' },
    dog: { ...blankDog('female'), name, birthDay: '2021-05-01', adultWeightKg: 24 },
  });
  return dog.id;
}

function facts(dogId: string, day: string, change: Partial<VisitFacts> = {}): VisitFacts {
  return {
    ...blankVisit(dogId, day),
    weightKg: 30,
    bcs: 7,
    muscle: 'normal',
    lamenessWalk: SOUND,
    lamenessTrot: SOUND,
    signsAsked: true,
    historyAsked: true,
    walkBase: 'passed',
    foodGoal: 'lose',
    targetWeightKg: 25,
    ...change,
  };
}

const visit = (desk: TestDesk, of: VisitFacts, made: { plan?: boolean; food?: boolean } = {}) =>
  desk.ok('visits/save', {
    id: null,
    visit: of,
    plan: made.plan === true ? PLAN : null,
    food: made.food === true ? FOOD : null,
  });

/** What is due on a day, in short. */
async function due(desk: TestDesk, day: string): Promise<string[]> {
  desk.setDay(day);
  const lines = await desk.ok('dogs/due', {});
  return lines.map((line) => `${line.name}: ${line.reason} ${line.day}`);
}

function lastSessionDay({ ramp }: Plan): string {
  return ramp.weeks
    .flatMap(({ sessions }) => sessions.map(({ day }) => day))
    .toSorted()
    .at(-1)!;
}

describe('the due list', () => {
  test('is empty without dogs, and for a dog that was never weighed', async () => {
    const desk = await openOwn();
    expect(await desk.ok('dogs/due', {})).toEqual([]);
    await addDog(desk);
    expect(await desk.ok('dogs/due', {})).toEqual([]);
  });

  test('asks for a weighing four weeks after the last, from a week before', async () => {
    const desk = await openOwn();
    const dogId = await addDog(desk);
    await visit(desk, facts(dogId, '2026-03-02'));
    expect(await due(desk, '2026-03-22')).toEqual([]);
    expect(await due(desk, '2026-03-23')).toEqual(['Rusk: weigh 2026-03-30']);
    const [line] = await desk.ok('dogs/due', {});
    expect(line).toEqual({
      dogId,
      name: 'Rusk',
      clientName: 'Dana Owner',
      reason: 'weigh',
      day: '2026-03-30',
    });
  });

  test('asks for the day the food decision named until a weighing answers it', async () => {
    const desk = await openOwn();
    const dogId = await addDog(desk);
    const saved = await visit(desk, facts(dogId, '2026-03-02'), { food: true });
    const named = saved.foodDecision!.proposal.nextWeighInDay;
    expect(named).toBe('2026-03-16');
    expect(await due(desk, '2026-03-20')).toEqual([`Rusk: weigh ${named}`]);
    await visit(desk, facts(dogId, '2026-03-20', { weightKg: null }));
    expect(await due(desk, '2026-03-20')).toEqual([`Rusk: weigh ${named}`]);
    await visit(desk, facts(dogId, '2026-03-20'));
    expect(await due(desk, '2026-03-20')).toEqual([]);
    expect(await due(desk, '2026-04-15')).toEqual(['Rusk: weigh 2026-04-17']);
  });

  test('names a plan whose last session is near or past', async () => {
    const desk = await openOwn();
    const dogId = await addDog(desk);
    const { plan } = await visit(desk, facts(dogId, '2026-03-02'), { plan: true });
    const last = lastSessionDay(plan!);
    const planLines = async (day: string) =>
      (await due(desk, day)).filter((line) => line.includes('plan'));
    expect(await planLines(addDays(last, -8))).toEqual([]);
    // Nothing was told of its outings: on every page it waits, and so here.
    expect(await planLines(addDays(last, -7))).toEqual([`Rusk: plan on hold ${last}`]);
    await tellAllDone(desk, dogId, addDays(last, -7));
    expect(await planLines(addDays(last, -7))).toEqual([`Rusk: plan ends ${last}`]);
    await tellAllDone(desk, dogId, addDays(last, 3));
    expect(await planLines(addDays(last, 3))).toEqual([`Rusk: plan ends ${last}`]);
    expect(await planLines(addDays(last, 91))).toEqual([]);
    // A sign the owner tells of stops the running, whether or not somebody reviewed it.
    desk.setDay(addDays(last, 1));
    await desk.ok('sessions/save', { dogId, session: doneOn(last, { signs: ['collapse'] }) });
    expect(await planLines(addDays(last, 3))).toEqual([`Rusk: plan on hold ${last}`]);
  });

  test('names the latest consent alone, within a month of its end', async () => {
    const desk = await openOwn();
    const dogId = await addDog(desk);
    const consent = (expiryDay: string) => ({
      weightKg: null,
      consent: { given: true, vet: 'Dr Example', day: '2026-03-01', scope: 'Running', expiryDay },
    });
    await visit(desk, facts(dogId, '2026-03-02', consent('2026-04-15')));
    expect(await due(desk, '2026-03-15')).toEqual([]);
    expect(await due(desk, '2026-03-16')).toEqual(['Rusk: consent ends 2026-04-15']);
    await visit(desk, facts(dogId, '2026-03-16', consent('2026-12-31')));
    expect(await due(desk, '2026-03-16')).toEqual([]);
  });

  test('names a consent that ends of a dog not heard of for a year, and none long ended', async () => {
    const desk = await openOwn();
    const dogId = await addDog(desk);
    const consent = (expiryDay: string) => ({
      weightKg: null,
      consent: { given: true, vet: 'Dr Example', day: '2026-03-01', scope: 'Running', expiryDay },
    });
    await visit(desk, facts(dogId, '2026-03-02', consent('2027-03-01')));
    expect(await due(desk, '2027-02-10')).toEqual(['Rusk: consent ends 2027-03-01']);
    expect(await due(desk, '2027-05-30')).toEqual(['Rusk: consent ends 2027-03-01']);
    await visit(desk, facts(dogId, '2027-05-30', consent('2027-03-01')));
    expect(await due(desk, '2027-05-31')).toEqual([]);
  });

  test('puts the most overdue first and lets go of what is long past', async () => {
    const desk = await openOwn();
    const first = await addDog(desk, 'Ash');
    const second = await addDog(desk, 'Birk');
    desk.setDay('2026-03-10');
    await visit(desk, facts(first, '2026-03-10'));
    await visit(desk, facts(second, '2026-03-02'));
    const both = ['Birk: weigh 2026-03-30', 'Ash: weigh 2026-04-07'];
    expect(await due(desk, '2026-06-28')).toEqual(both);
    expect(await due(desk, '2026-06-29')).toEqual(both.slice(1));
  });
});

describe('the dogs off course', () => {
  test('stand there for 90 days after the weighing, however often they are seen unweighed', async () => {
    const desk = await openOwn();
    const dogId = await addDog(desk);
    await visit(desk, facts(dogId, '2026-01-05'));
    await visit(desk, facts(dogId, '2026-02-20', { weightKg: 30.5 }));
    await visit(desk, facts(await addDog(desk, 'Fern'), '2026-02-20', { weightKg: null }));
    await visit(desk, facts(await addDog(desk, 'Moss'), '2026-02-20'));
    const last = addDays('2026-02-20', 90);
    desk.setDay(last);
    await visit(desk, facts(dogId, last, { weightKg: null }));
    expect(await desk.ok('dogs/offCourse', {})).toMatchObject([
      { dogId, name: 'Rusk', clientName: 'Dana Owner', day: '2026-02-20', weightKg: 30.5 },
    ]);
    desk.setDay(addDays(last, 1));
    expect(await desk.ok('dogs/offCourse', {})).toEqual([]);
  });
});
