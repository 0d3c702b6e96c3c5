import { describe, expect, test } from 'vitest';
import { inUnits } from '../../../core/quantityText.ts';
import {
  blankClient,
  blankDog,
  blankPlanRequest,
  blankPractice,
  blankVisit,
} from '../../../electron/contract/records/forms.ts';
import { HANDOUT_KINDS, type VisitFacts } from '../../../electron/contract/records.ts';
import { openOwn, type TestDesk } from '../support/desk.ts';
import { OTHER } from '../../support/otherUnits.ts';
import { doneOn, soundVisit } from '../support/records.ts';

const SOUND = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 };

async function withPlan(desk: TestDesk) {
  await desk.ok('practice/save', { ...blankPractice(), name: 'Mill Brook Canine Fitness' });
  const dog = await desk.ok('dogs/saveWithOwner', {
    client: { ...blankClient(), name: 'Dana Owner' },
    dog: { ...blankDog('female'), name: 'Rusk', birthDay: '2021-05-01', adultWeightKg: 24 },
  });
  const visit: VisitFacts = {
    ...blankVisit(dog.id, '2026-03-02'),
    weightKg: 24,
    bcs: 5,
    lamenessWalk: SOUND,
    lamenessTrot: SOUND,
    signsAsked: true,
    historyAsked: true,
    walkBase: 'passed',
    conditioning: 'conditioned',
  };
  const saved = await desk.ok('visits/save', {
    id: null,
    visit,
    plan: blankPlanRequest('2026-03-03', 'conditioned'),
    food: null,
  });
  return { dogId: dog.id, visit, plan: saved.plan! };
}

const ALL_SHEETS = [...HANDOUT_KINDS];

describe('session results', () => {
  test('are kept one a day, changed and dropped', async () => {
    const desk = await openOwn();
    const { dogId, plan } = await withPlan(desk);
    const day = plan.ramp.weeks[0]!.sessions[0]!.day;
    desk.setDay('2026-03-10');
    await desk.ok('sessions/save', { dogId, session: doneOn(day) });
    await desk.ok('sessions/save', {
      dogId,
      session: doneOn(day, { outcome: 'missed', nextDay: null }),
    });
    const { sessions } = await desk.ok('dogs/file', { dogId });
    expect(sessions.map(({ outcome }) => outcome)).toEqual(['missed']);
    await desk.ok('sessions/drop', { dogId, day });
    expect((await desk.ok('dogs/file', { dogId })).sessions).toEqual([]);
  });

  test('of a day to come are refused', async () => {
    const desk = await openOwn();
    const { dogId } = await withPlan(desk);
    const error = await desk.refused('sessions/save', { dogId, session: doneOn('2026-04-01') });
    expect(error.fields?.[0]?.path).toBe('session.day');
  });
});

describe('a review', () => {
  test('after stiffness that lasted goes back, keeps the old version and never raises the load', async () => {
    const desk = await openOwn();
    const { dogId, plan } = await withPlan(desk);
    const days = plan.ramp.weeks
      .slice(0, 2)
      .flatMap(({ sessions }) => sessions.map(({ day }) => day));
    desk.setDay('2026-03-17');
    for (const day of days) await desk.ok('sessions/save', { dogId, session: doneOn(day) });
    await desk.ok('sessions/save', {
      dogId,
      session: doneOn(days.at(-1)!, { nextDay: 'stiffness over 24 h' }),
    });
    const reviewed = await desk.ok('plans/review', {
      dogId,
      visitId: null,
      clearedByVetOn: null,
      note: 'A hard week.',
    });
    expect(reviewed).toMatchObject({ version: 2, current: true, origin: 'reviewed' });
    expect(reviewed.review?.decision).toBe('back');
    const before = plan.ramp.weeks[1]!.runMinutes;
    expect(reviewed.ramp.weeks[0]!.runMinutes).toBeLessThanOrEqual(before);
    const { plans } = await desk.ok('dogs/file', { dogId });
    expect(plans.map(({ current }) => current)).toEqual([false, true]);
    // The results of the week before belong to no session of the new version; the paper still prints.
    const { pages } = await desk.ok('handouts/bundle', { kinds: ALL_SHEETS, dogId, paper: null });
    expect(pages).toBeGreaterThan(4);
  });

  test('after lameness stops, and the plan has no weeks', async () => {
    const desk = await openOwn();
    const { dogId, plan } = await withPlan(desk);
    const day = plan.ramp.weeks[0]!.sessions[0]!.day;
    desk.setDay('2026-03-10');
    await desk.ok('sessions/save', { dogId, session: doneOn(day, { signs: ['lameness'] }) });
    const reviewed = await desk.ok('plans/review', {
      dogId,
      visitId: null,
      clearedByVetOn: null,
      note: '',
    });
    expect(reviewed.review?.decision).toBe('stop');
    expect(reviewed.ramp.weeks).toEqual([]);
    const { pages } = await desk.ok('handouts/bundle', { kinds: ALL_SHEETS, dogId, paper: null });
    expect(pages).toBeGreaterThan(4);
  });

  test('at a visit goes by what that visit found', async () => {
    const desk = await openOwn();
    const { dogId } = await withPlan(desk);
    desk.setDay('2026-03-10');
    const { visit } = await desk.ok('visits/save', {
      id: null,
      visit: { ...soundVisit(dogId, '2026-03-10'), bcs: 2 },
      plan: null,
      food: null,
    });
    const input = { dogId, visitId: visit.id, clearedByVetOn: null, note: '' };
    expect((await desk.ok('plans/review', input)).review?.decision).toBe('stop');
  });

  test('of a dog without a plan is refused', async () => {
    const desk = await openOwn();
    const dog = await desk.ok('dogs/saveWithOwner', {
      client: { ...blankClient(), name: 'Dana Owner' },
      dog: { ...blankDog('female'), name: 'Rusk', birthDay: '2021-05-01' },
    });
    const input = { dogId: dog.id, visitId: null, clearedByVetOn: null, note: '' };
    expect((await desk.refused('plans/review', input)).kind).toBe('not-found');
  });
});

describe('an edit by hand', () => {
  test('that breaks a rule needs a written reason, which is kept', async () => {
    const desk = await openOwn();
    const { dogId, plan } = await withPlan(desk);
    const day = plan.ramp.weeks[1]!.sessions[0]!.day;
    const edit = {
      dogId,
      edits: [{ kind: 'change' as const, day, to: { repeats: 20 } }],
      kept: [],
      note: '',
    };
    const error = await desk.refused('plans/edit', edit);
    expect(error.message).toContain('written reason');
    const kept = await desk.ok('plans/edit', {
      ...edit,
      kept: (['session-too-long', 'over-cap'] as const).map((code) => ({
        code,
        weekIndex: 1,
        reason: 'Trained elsewhere before.',
      })),
    });
    expect(kept).toMatchObject({ version: 2, origin: 'edited' });
    for (const code of ['session-too-long', 'over-cap']) {
      expect(kept.keptBreaches).toContainEqual(
        expect.objectContaining({ code, keptBecause: 'Trained elsewhere before.' }),
      );
    }
  });

  test('inside the rules needs none', async () => {
    const desk = await openOwn();
    const { dogId, plan } = await withPlan(desk);
    const day = plan.ramp.weeks.at(-1)!.sessions.at(-1)!.day;
    const edited = await desk.ok('plans/edit', {
      dogId,
      edits: [{ kind: 'remove', day }],
      kept: [],
      note: 'Owner is away.',
    });
    expect(edited.keptBreaches).toEqual([]);
  });
});

describe('a rule the practice changed', () => {
  test('bites in the next plan and goes back to the published value', async () => {
    const desk = await openOwn();
    await desk.ok('rules/set', {
      ruleId: 'capConditioned',
      value: 10,
      reason: 'Our dogs are older.',
    });
    const { plan } = await withPlan(desk);
    expect(plan.ramp.capPercent).toBe(10);
    const status = await desk.ok('app/status', {});
    expect(status.rules).toMatchObject([{ ruleId: 'capConditioned', value: 10 }]);
    expect(
      await desk.ok('rules/set', { ruleId: 'capConditioned', value: null, reason: '' }),
    ).toEqual([]);
  });

  test('is refused outside its range, with name, unit and range, and without a reason', async () => {
    const desk = await openOwn();
    const error = await desk.refused('rules/set', {
      ruleId: 'capConditioned',
      value: 50,
      reason: 'x',
    });
    expect(error.message).toMatch(/capConditioned must be from 5 to 30 %/);
    await desk.refused('rules/set', { ruleId: 'capConditioned', value: 10, reason: '' });
    await desk.refused('rules/set', { ruleId: 'noSuchRule', value: 10, reason: 'x' });
  });

  test('is refused as a part of one where it counts whole weeks', async () => {
    const desk = await openOwn();
    const set = (value: number) => ({ ruleId: 'recoveryEvery', value, reason: 'x' });
    const { message } = await desk.refused('rules/set', set(3.5));
    expect(message).toBe('“An easy week every” must be a whole number from 3 to 6 weeks.');
    await desk.ok('rules/set', set(3));
  });

  test('is refused where the limits of the heat bands would no longer rise', async () => {
    const desk = await openOwn();
    const set = (ruleId: string, value: number | null) =>
      ({ ruleId, value, reason: 'A cool valley.' }) as const;
    const { message, fields } = await desk.refused('rules/set', set('heatCautionToC', 8));
    expect(message).toBe(
      'The limits of the heat bands must rise, but are: Usual care up to 10 °C, Caution up to 8 °C, Half the run time up to 18 °C, Walk only up to 20 °C.',
    );
    expect(inUnits(fields![0]!.said!)).toBe(message);
    expect(inUnits(fields![0]!.said!, OTHER)).toContain('Caution up to 46 °F,');
    await desk.ok('rules/set', set('heatUsualToC', 6));
    await desk.ok('rules/set', set('heatCautionToC', 8));
    // Back as published, the first limit would lie above the second.
    await desk.refused('rules/set', set('heatUsualToC', null));
    await desk.ok('rules/set', set('heatCautionToC', null));
    expect(await desk.ok('rules/set', set('heatUsualToC', null))).toEqual([]);
  });
});
