import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { restingEnergy, weighOut } from '../../core/index.ts';
import {
  blankClient,
  blankDog,
  blankPlanRequest,
  blankPractice,
  blankVisit,
} from '../../electron/contract/records/forms.ts';
import type { HandoutKind, VisitFacts } from '../../electron/contract/records.ts';
import { openOwn, type TestDesk } from './support/desk.ts';

const SOUND = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 };
const PLAN = {
  ...blankPlanRequest('2026-03-04', 'unconditioned'),
  goal: { continuousMinutes: 20 },
};

async function intake(desk: TestDesk, facts: Partial<VisitFacts> = {}) {
  await desk.ok('practice/save', { ...blankPractice(), name: 'Mill Brook Canine Fitness' });
  const dog = await desk.ok('dogs/saveWithOwner', {
    client: { ...blankClient(), name: 'Dana Owner' },
    dog: { ...blankDog('female'), name: 'Rusk', birthDay: '2021-05-01', adultWeightKg: 24 },
  });
  const visit: VisitFacts = {
    ...blankVisit(dog.id, '2026-03-02'),
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
      {
        name: 'Biscuits',
        treat: true,
        kcalPer100g: 400,
        gramsPerDay: 40,
        gramsPerCup: null,
        fixedGrams: false,
        energyFrom: 'declared',
        label: null,
      },
    ],
    ...facts,
  };
  return { dog, visit };
}

async function pdfText(desk: TestDesk, kind: HandoutKind, dogId: string): Promise<string> {
  const pdf = await desk.ok('handouts/render', { kind, dogId, paper: null });
  const file = join(desk.folder, pdf.fileName);
  writeFileSync(file, Buffer.from(pdf.base64, 'base64'));
  return execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' });
}

describe('the main job', () => {
  test('from intake to plan, follow-up and new food', async () => {
    const desk = await openOwn();
    const { dog, visit } = await intake(desk);
    const first = await desk.ok('visits/save', {
      id: null,
      visit,
      plan: PLAN,
      food: { decision: 'accepted', kcalPerDay: null, foodSwitch: null, note: '' },
    });
    expect(first.plan).toMatchObject({ version: 1, current: true, madeOn: '2026-03-02' });
    expect(first.plan!.ramp.weeks[0]!.runMinutes).toBe(12);
    // Hand et al. 2010 p. 532 (S): a loss plan starts at 1.0 × RER of the target weight.
    expect(first.foodDecision!.kcalPerDay).toBeCloseTo(restingEnergy(25), 6);
    const items = first.foodDecision!.ration!.items;
    const fed = items.reduce((sum, item) => sum + (item.gramsPerDay * item.kcalPer100g) / 100, 0);
    expect(fed).toBeCloseTo(restingEnergy(25), 6);

    // Six weeks later almost nothing was lost, weighed often enough to be sure of it.
    const now = { ...visit, ...blankVisit(dog.id, visit.day, visit, first.foodDecision) };
    for (const [day, weightKg] of [
      ['2026-03-16', 30],
      ['2026-03-30', 29.9],
      ['2026-04-13', 29.9],
    ] as const) {
      desk.setDay(day);
      const saved = await desk.ok('visits/save', {
        id: null,
        visit: {
          ...now,
          day,
          weightKg,
          bcs: 7,
          lamenessWalk: SOUND,
          lamenessTrot: SOUND,
          signsAsked: true,
        },
        plan: null,
        food:
          day === '2026-04-13'
            ? { decision: 'accepted', kcalPerDay: null, foodSwitch: null, note: '' }
            : null,
      });
      if (saved.foodDecision === null) continue;
      expect(saved.foodDecision.proposal.verdict).toBe('change');
      expect(saved.foodDecision.kcalPerDay).toBeLessThan(first.foodDecision!.kcalPerDay);
      expect(saved.foodDecision.kcalPerDay).toBeGreaterThanOrEqual(0.8 * restingEnergy(25) - 1e-9);
    }
    const file = await desk.ok('dogs/file', { dogId: dog.id });
    expect(file.visits).toHaveLength(4);
    expect(file.foodDecisions).toHaveLength(2);
    expect(await pdfText(desk, 'running-plan', dog.id)).toContain('Rusk');
    expect(await pdfText(desk, 'feeding-sheet', dog.id)).toContain('Dry food');
  });

  test('decides the food for the running of the plan made with it', async () => {
    const desk = await openOwn();
    const { visit } = await intake(desk, { foodGoal: 'hold', bcs: 5, targetWeightKg: null });
    const food = { decision: 'edited' as const, kcalPerDay: 1100, foodSwitch: null, note: '' };
    const { plan, foodDecision } = await desk.ok('visits/save', {
      id: null,
      visit,
      plan: { ...blankPlanRequest('2026-03-02', 'unconditioned'), paceMinPerKm: 7 },
      food,
    });
    expect(plan!.ramp.weeks[0]!.runMinutes).toBeGreaterThan(0);
    expect(foodDecision!.known.runningKcalPerDay).toBeGreaterThan(0);
    const codes = foodDecision!.proposal.reasons.map(({ code }) => code);
    expect(codes).toContain('running-food');
  });

  test('a second plan replaces the first and keeps it', async () => {
    const desk = await openOwn();
    const { dog, visit } = await intake(desk);
    await desk.ok('visits/save', { id: null, visit, plan: PLAN, food: null });
    desk.setDay('2026-03-16');
    await desk.ok('visits/save', {
      id: null,
      visit: { ...visit, kind: 'follow-up', day: '2026-03-16' },
      plan: { ...PLAN, startDay: '2026-03-18', start: 'conditioned' },
      food: null,
    });
    const { plans } = await desk.ok('dogs/file', { dogId: dog.id });
    expect(plans.map(({ version, current }) => [version, current])).toEqual([
      [1, false],
      [2, true],
    ]);
  });

  test('an edited ration is kept with the proposal it departs from', async () => {
    const desk = await openOwn();
    const { visit } = await intake(desk);
    const saved = await desk.ok('visits/save', {
      id: null,
      visit,
      plan: null,
      food: {
        decision: 'edited',
        kcalPerDay: 900,
        foodSwitch: null,
        note: 'Owner cannot go lower yet.',
      },
    });
    expect(saved.foodDecision).toMatchObject({
      kcalPerDay: 900,
      foodSwitch: null,
      note: 'Owner cannot go lower yet.',
    });
    expect(saved.foodDecision!.proposal.kcalPerDay).toBeCloseTo(restingEnergy(25), 6);
    expect(saved.foodDecision!.ration!.kcalPerDay).toBe(900);
  });

  test('a food is replaced by another at the same energy, day by day, and the sheet says how', async () => {
    const desk = await openOwn();
    const { dog, visit } = await intake(desk);
    const foodSwitch = {
      replaces: 'Dry food',
      name: 'Light food',
      kcalPer100g: 300,
      startDay: '2026-03-03',
      days: 7,
    };
    const { foodDecision } = await desk.ok('visits/save', {
      id: null,
      visit,
      plan: null,
      food: { decision: 'accepted', kcalPerDay: null, foodSwitch, note: '' },
    });
    const fed = foodDecision!.ration!.items.find(({ name }) => name === 'Light food')!;
    expect(foodDecision!.ration!.items.map(({ name }) => name)).not.toContain('Dry food');
    expect(foodDecision!.changeover!.steps).toHaveLength(7);
    for (const { oldGrams, newGrams } of foodDecision!.changeover!.steps) {
      expect(oldGrams * 3.6 + newGrams * 3).toBeCloseTo(fed.kcalPerDay, 6);
    }
    expect(blankVisit(dog.id, '2026-03-20', visit, foodDecision).diet[0]).toMatchObject({
      name: 'Light food',
      kcalPer100g: 300,
      gramsPerDay: weighOut(foodDecision!.ration!).items.find(({ name }) => name === fed.name)!
        .gramsPerDay,
    });
    expect(await pdfText(desk, 'feeding-sheet', dog.id)).toContain('Light food');
    const error = await desk.refused('visits/save', {
      id: null,
      visit,
      plan: null,
      food: {
        decision: 'accepted',
        kcalPerDay: null,
        foodSwitch: { ...foodSwitch, replaces: 'No such food' },
        note: '',
      },
    });
    expect(error.fields?.[0]?.path).toBe('food.foodSwitch.replaces');
  });

  test('nothing is printed before a weighing', async () => {
    const desk = await openOwn();
    const { dog } = await intake(desk);
    const error = await desk.refused('handouts/render', {
      kind: 'running-plan',
      dogId: dog.id,
      paper: null,
    });
    expect(error.message).toContain('weigh the dog');
  });

  test('a dog that may not run gets a sheet without a plan', async () => {
    const desk = await openOwn();
    const { dog, visit } = await intake(desk, { lamenessTrot: { ...SOUND, leftHind: 2 } });
    await desk.ok('visits/save', { id: null, visit, plan: PLAN, food: null });
    const text = await pdfText(desk, 'running-plan', dog.id);
    expect(text).not.toContain('Week 2');
  });

  test('the demonstration opens, is marked, and leaves the own practice alone', async () => {
    const desk = await openOwn();
    await intake(desk);
    const status = await desk.ok('app/open', { which: 'demo' });
    expect(status).toMatchObject({ open: 'demo', ownExists: true });
    expect(status.practice!.name).toContain('demonstration');
    const dogs = await desk.ok('dogs/list', { query: '' });
    expect(dogs.map(({ name }) => name)).not.toContain('Rusk');
    const outcomes = await Promise.all(
      dogs.map(
        async ({ id }) => (await desk.ok('dogs/file', { dogId: id })).assessment!.screening.outcome,
      ),
    );
    expect(new Set(outcomes)).toEqual(new Set(['ready to start', 'walking only', 'vet first']));
    await desk.ok('app/open', { which: 'own' });
    expect((await desk.ok('dogs/list', { query: '' })).map(({ name }) => name)).toEqual(['Rusk']);
  });
});
