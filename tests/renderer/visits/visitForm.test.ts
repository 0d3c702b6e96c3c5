import { describe, expect, it } from 'vitest';
import { blankClient, blankDog, blankVisit } from '../../../electron/contract/records/forms.ts';
import type { DogFile, Visit } from '../../../electron/contract/contract.ts';
import {
  blankDietEntry,
  factsOf,
  keptVisitForm,
  newVisitForm,
  paceOf,
  planRequestOf,
  type LaterStage,
} from '../../../renderer/visits/visitForm.ts';
import { blankFood, foodDecisionOf } from '../../../renderer/visits/foodEntry.ts';

const stored = { id: 'd', createdAt: '', updatedAt: '', revision: 1 };
const dog = { ...blankDog('female'), ...stored, archivedAt: null, clientId: 'c', name: 'Bramble' };

function fileWith(visits: Visit[]): DogFile {
  return {
    dog,
    client: { ...blankClient(), ...stored },
    visits,
    plans: [],
    foodDecisions: [],
    sessions: [],
    weighings: [],
    assessment: null,
    state: null,
    weighDay: null,
  };
}
const earlier: Visit = {
  ...blankVisit('d', '2025-01-01'),
  ...stored,
  id: 'v1',
  author: '',
  weightKg: 25,
  bcs: 7,
  targetWeightKg: 22,
  conditioning: 'conditioned',
  diet: [
    {
      name: 'Dry',
      treat: false,
      kcalPer100g: 360,
      gramsPerDay: 200,
      gramsPerCup: null,
      fixedGrams: false,
      energyFrom: 'declared',
      label: null,
    },
  ],
};

describe('a new visit', () => {
  it('is an intake with a plan at the first meeting', () => {
    const form = newVisitForm(fileWith([]), '2025-03-29');
    expect(form.visit.kind).toBe('intake');
    expect(form.visit.day).toBe('2025-03-29');
    expect(form.plan.wanted).toBe(true);
  });
  it('is a follow-up later on: target and food are carried over, weight and score are not', () => {
    const form = newVisitForm(fileWith([earlier]), '2025-03-29');
    expect(form.visit).toMatchObject({
      kind: 'follow-up',
      targetWeightKg: 22,
      weightKg: null,
      bcs: null,
    });
    expect(form.visit.diet).toHaveLength(1);
    expect(form.plan).toMatchObject({ wanted: false, start: 'conditioned' });
    expect(form.food.decision).toBe('open');
  });
});

describe('a kept visit', () => {
  it('comes back as it was', () => {
    const form = keptVisitForm(fileWith([earlier]), 'v1');
    expect(form?.visit).toMatchObject({ weightKg: 25, bcs: 7 });
  });
  it('is null when there is none of that id', () => {
    expect(keptVisitForm(fileWith([]), 'v1')).toBeNull();
  });
});

describe('what is computed with and sent', () => {
  const form = newVisitForm(fileWith([]), '2025-03-29');

  it('leaves out a food whose numbers are still missing', () => {
    const visit = { ...form.visit, diet: [blankDietEntry(false), ...earlier.diet] };
    expect(factsOf(visit).diet).toEqual(earlier.diet);
  });
  it('asks for a plan only when one is wanted and complete', () => {
    expect(planRequestOf(form.plan)).toEqual({
      programme: 'running',
      startDay: '2025-03-29',
      start: 'unconditioned',
      sessionsPerWeek: 3,
      goal: { continuousMinutes: 30 },
      eventDay: null,
      capPercent: null,
      weekdays: null,
      daysOut: [],
      climbM: null,
      paceMinPerKm: null,
      laterStages: [],
    });
    expect(planRequestOf({ ...form.plan, weekdays: [5, 1] })?.weekdays).toEqual([1, 5]);
    expect(planRequestOf({ ...form.plan, wanted: false })).toBeNull();
    const distance = { ...form.plan, goalKind: 'distance' as const };
    expect(planRequestOf(distance)).toBeNull();
    distance.goal = { continuousMinutes: 30, distanceKm: 5, paceMinPerKm: 6.5 };
    expect(planRequestOf(distance)?.goal).toEqual({ distanceKm: 5, paceMinPerKm: 6.5 });
  });
  it('sends the pace beside a goal in minutes, and later stages in their order, not with an event', () => {
    const plan = {
      ...form.plan,
      paceMinPerKm: 6.5,
      laterStages: ['hills', 'pull'] as LaterStage[],
    };
    expect(planRequestOf(plan)).toMatchObject({
      paceMinPerKm: 6.5,
      laterStages: ['pull', 'hills'],
    });
    expect(planRequestOf({ ...plan, eventDay: '2025-09-01' })?.laterStages).toEqual([]);
    const goal = { continuousMinutes: 30, distanceKm: 5, paceMinPerKm: 7 };
    const distance = { ...plan, goalKind: 'distance' as const, goal };
    expect(planRequestOf(distance)?.paceMinPerKm).toBeNull();
    expect(paceOf(distance)).toBe(7);
    expect(paceOf(plan)).toBe(6.5);
  });
  it('sends no decision on the food while it is left open, and kcal only when edited', () => {
    expect(foodDecisionOf({ ...blankFood('2025-01-01'), kcalPerDay: 700 })).toBeNull();
    expect(
      foodDecisionOf({ ...blankFood('2025-01-01'), decision: 'accepted', kcalPerDay: 700 }),
    ).toMatchObject({
      kcalPerDay: null,
    });
    expect(
      foodDecisionOf({
        ...blankFood('2025-01-01'),
        decision: 'edited',
        kcalPerDay: 700,
        note: 'x',
      }),
    ).toMatchObject({
      kcalPerDay: 700,
    });
  });
});
