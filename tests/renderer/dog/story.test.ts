import { describe, expect, it } from 'vitest';
import { buildRamp, presentState } from '../../../core/index.ts';
import {
  blankClient,
  blankDog,
  blankPlanRequest,
  blankVisit,
} from '../../../electron/contract/blank.ts';
import { presentInput } from '../../../electron/contract/assessInput.ts';
import type { DogFile, FoodDecision, Plan, Visit } from '../../../electron/contract/contract.ts';
import { toRampRequest } from '../../../electron/contract/rampRequest.ts';
import { changesSince, comingNext } from '../../../renderer/dog/story.ts';
import { DEFAULT_CHOICES, shownWith } from '../../../renderer/units/shown.ts';

const stored = { id: 'd', createdAt: '', updatedAt: '', revision: 1 };
const visit = (day: string, facts: Partial<Visit> = {}): Visit => ({
  ...blankVisit('d', day),
  ...stored,
  author: '',
  ...facts,
});
const fileOf = (visits: Visit[]): DogFile => ({
  dog: { ...blankDog(), ...stored, archivedAt: null, clientId: 'c', birthDay: '2021-05-01' },
  client: { ...blankClient(), ...stored },
  visits,
  plans: [],
  foodDecisions: [],
  sessions: [],
  weighings: [],
  assessment: null,
  state: null,
  weighDay: null,
});
const shown = shownWith(DEFAULT_CHOICES);
const plain = (text: string) => text.replace(/\u00a0/g, ' ');

describe('what changed since the visit before', () => {
  it('is told in sentences with units', () => {
    const lame = { leftFore: null, rightFore: null, leftHind: 2, rightHind: 0 };
    const file = fileOf([
      visit('2026-01-05', { weightKg: 26, bcs: 7, lamenessTrot: lame }),
      visit('2026-02-02', { weightKg: 25.5, bcs: 6, lamenessTrot: { ...lame, leftHind: 1 } }),
    ]);
    expect(changesSince(file, shown).map(plain)).toEqual([
      'The weight is 0.5 kg lower.',
      'The condition score went from 7 to 6 of 9.',
      'Lameness at trot, left hind: better, grade 2 to 1 of 5.',
    ]);
  });

  it('says of food that was left alone that it stays', () => {
    const decided = (decidedOn: string, kcalPerDay: number) =>
      ({ decidedOn, kcalPerDay }) as FoodDecision;
    const of = (kcal: number) => {
      const visits = [visit('2026-01-05'), visit('2026-02-02')];
      const foodDecisions = [decided('2026-01-05', 783.2), decided('2026-02-02', kcal)];
      return changesSince({ ...fileOf(visits), foodDecisions }, shown).map(plain);
    };
    expect(of(782.9)).toEqual(['The food stays at 783 kcal/day.']);
    expect(of(700)).toEqual(['The food was set to 700 kcal/day, before 783 kcal/day.']);
  });

  it('is nothing at the first visit, and nothing is made of what was not measured', () => {
    expect(changesSince(fileOf([visit('2026-01-05', { weightKg: 26 })]), shown)).toEqual([]);
    const unweighed = [visit('2026-01-05', { weightKg: 26 }), visit('2026-02-02')];
    expect(changesSince(fileOf(unweighed), shown)).toEqual([]);
  });
});

/** The file as it is on a day. */
function on(file: DogFile, day: string): DogFile {
  const state = presentState(presentInput(file, [], day));
  return { ...file, state, assessment: state?.assessment ?? null };
}

/** A file with a plan in force, and what core makes of it. */
function withPlan(lamenessTrot: Visit['lamenessTrot']): DogFile {
  const sound = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 };
  const seen = visit('2026-01-05', {
    weightKg: 26,
    bcs: 5,
    lamenessWalk: sound,
    lamenessTrot,
    walkBase: 'passed',
    conditioning: 'conditioned',
    consent: { given: true, vet: 'Dr C. Vet', day: '2026-01-05', scope: '', expiryDay: null },
  });
  const dog = { birthDay: '2021-05-01', adultWeightKg: 26, neuteredAtMonths: null };
  const request = {
    ...blankPlanRequest('2026-01-07', 'conditioned'),
    goal: { continuousMinutes: 20 },
  };
  const plan: Plan = {
    id: 'p',
    dogId: 'd',
    visitId: null,
    version: 1,
    madeOn: '2026-01-05',
    current: true,
    origin: 'built',
    request,
    ramp: buildRamp(toRampRequest(request, {})),
    review: null,
    keptBreaches: [],
    note: '',
    author: '',
    createdAt: '',
  };
  const empty = fileOf([seen]);
  const file = { ...empty, dog: { ...empty.dog, ...dog }, plans: [plan] };
  return on(file, '2026-01-06');
}

describe('what comes next', () => {
  it('announces the outings of a plan, but none to a dog that may not run', () => {
    const words = (file: DogFile) => comingNext(file).map((coming) => coming.words);
    const sound = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 };
    expect(words(withPlan(sound))).toEqual([
      expect.stringMatching(/^Next outing: /),
      'Weigh again',
      'Last outing of the plan',
    ]);
    expect(words(withPlan({ ...sound, leftHind: 2 }))).toEqual(['Weigh again']);
  });

  it('holds the next weighing and the end of a consent, in order of days', () => {
    const consent = {
      given: true,
      vet: 'Dr C. Vet',
      day: '2026-01-05',
      scope: '',
      expiryDay: '2026-01-20',
    };
    const file = fileOf([visit('2026-01-05', { weightKg: 26, consent })]);
    expect(comingNext(on(file, '2026-01-06'))).toEqual([
      { day: '2026-01-20', words: 'Last day of the vet’s consent' },
      { day: '2026-02-02', words: 'Weigh again' },
    ]);
    expect(comingNext(on(file, '2026-01-21')).map(({ words }) => words)).toEqual(['Weigh again']);
  });
});
