import { describe, expect, test } from 'vitest';
import { blankClient, blankDog, blankVisit } from '../../../electron/contract/records/forms.ts';
import { changesBetween } from '../../../electron/contract/history/historyDiff.ts';
import type { DietItem, SessionInput, VisitFacts } from '../../../electron/contract/records.ts';

const DOG_ID = '00000000-0000-4000-8000-000000000001';
const VISIT: VisitFacts = { ...blankVisit(DOG_ID, '2026-03-02'), weightKg: 24.3, bcs: 6 };
const FOOD: DietItem = {
  name: 'Dry food',
  treat: false,
  kcalPer100g: 360,
  gramsPerDay: 240,
  gramsPerCup: null,
  fixedGrams: false,
  energyFrom: 'declared',
  label: null,
};

const visitChanges = (before: Partial<VisitFacts>, after: Partial<VisitFacts>) =>
  changesBetween('visit', { ...VISIT, ...before }, { ...VISIT, ...after });

describe('the changes of a visit', () => {
  test('are none between equal states, in whatever order their properties come', () => {
    const turned = Object.fromEntries(Object.entries(VISIT).reverse()) as VisitFacts;
    expect(changesBetween('visit', VISIT, turned)).toEqual([]);
  });

  test('name the field, what kind of thing it holds, what it was and what it is', () => {
    expect(visitChanges({}, { weightKg: 25 })).toEqual([
      { path: 'weightKg', label: 'Body weight', measure: 'kg', before: 24.3, after: 25 },
    ]);
  });

  test('tell each limb and gait apart', () => {
    const { lamenessTrot } = VISIT;
    const [change, ...others] = visitChanges(
      {},
      { lamenessTrot: { ...lamenessTrot, rightFore: 2 } },
    );
    expect(others).toEqual([]);
    expect(change).toMatchObject({
      label: 'Lameness at trot, right fore',
      measure: 'lameness grade',
      before: null,
      after: 2,
    });
  });

  test('name a sign by its words', () => {
    expect(visitChanges({ signs: ['cough'] }, { signs: [] })).toEqual([
      expect.objectContaining({ label: expect.stringMatching(/^Sign: .*cough/i), after: null }),
    ]);
  });

  test('follow a food by its name, wherever it stands in the list', () => {
    const treat = { ...FOOD, name: 'Biscuits', treat: true, gramsPerDay: 40 };
    const changes = visitChanges(
      { diet: [FOOD, treat] },
      { diet: [{ ...treat, gramsPerDay: 20 }] },
    );
    expect(changes.map(({ label, before, after }) => [label, before, after])).toEqual([
      ['Biscuits, treat, amount', 40, 20],
      ['Dry food, fed', true, null],
      ['Dry food, energy', 360, null],
      ['Dry food, amount', 240, null],
    ]);
  });

  test('say when foods only changed places', () => {
    const second = { ...FOOD, name: 'Wet food' };
    expect(visitChanges({ diet: [FOOD, second] }, { diet: [second, FOOD] })).toEqual([
      expect.objectContaining({ label: 'Order of the foods', measure: 'order' }),
    ]);
  });

  test('tell two entries of the same name apart', () => {
    const changes = visitChanges(
      { diet: [FOOD, FOOD] },
      { diet: [FOOD, { ...FOOD, gramsPerDay: 1 }] },
    );
    expect(changes.map(({ label }) => label)).toEqual(['Dry food (2), amount']);
  });

  test('tell a measurement apart by limb, joint and movement', () => {
    const angle = {
      kind: 'joint angle',
      limb: 'leftHind',
      joint: 'stifle',
      movement: 'flexion',
      value: 45,
      note: '',
    } as const;
    expect(
      visitChanges({ measurements: [angle] }, { measurements: [{ ...angle, value: 50 }] }),
    ).toEqual([
      expect.objectContaining({
        label: 'Stifle flexion, left hind',
        measure: 'degrees',
        before: 45,
        after: 50,
      }),
    ]);
  });

  test('do not depend on the order in which the limbs were timed', () => {
    const left = { limb: 'leftFore', touchDowns: [0, 0.6], liftOffs: [0.3] } as const;
    const right = { limb: 'rightFore', touchDowns: [0.3], liftOffs: [] } as const;
    const footfalls = (...all: (typeof left | typeof right)[]) => ({
      footfalls: all as unknown as VisitFacts['footfalls'],
    });
    expect(visitChanges(footfalls(left, right), footfalls(right, left))).toEqual([]);
    expect(visitChanges(footfalls(left), footfalls(left, right))).toHaveLength(2);
  });
});

describe('the changes of other records', () => {
  test('of an owner and of a dog', () => {
    const owner = blankClient();
    expect(changesBetween('client', owner, { ...owner, phone: '1' })[0]?.label).toBe('Phone');
    const dog = { ...blankDog('female'), clientId: DOG_ID };
    expect(changesBetween('dog', dog, { ...dog, shortNosed: true })).toEqual([
      expect.objectContaining({ label: 'Short-nosed', before: false, after: true }),
    ]);
  });

  test('of a session that was removed tell all it held, and nothing of what it did not', () => {
    const session: SessionInput = {
      day: '2026-03-04',
      outcome: 'done',
      runMinutes: null,
      longestRunMinutes: null,
      runKm: null,
      climbedM: null,
      nextDay: 'normal',
      signs: [],
      note: '',
    };
    expect(changesBetween('session', session, null).map(({ path }) => path)).toEqual([
      'day',
      'outcome',
      'nextDay',
    ]);
  });
});
