import { describe, expect, test } from 'vitest';
import { checkRamp, editRamp } from '../../../core/index.ts';
import { blankPlanRequest } from '../../../electron/contract/records/forms.ts';
import type { VisitFacts } from '../../../electron/contract/records.ts';
import { openOwn, type TestDesk } from '../support/desk.ts';
import { dogOf, soundVisit } from '../support/records.ts';

// What the service lets a dog do: no plan with a goal too long for it, nothing ready that nobody asked about.

const DAY = '2026-03-02';

async function request(desk: TestDesk, minutes: number, facts: Partial<VisitFacts> = {}) {
  const dog = await dogOf(desk, 'Dana Owner', 'Rusk');
  const goal = { continuousMinutes: minutes };
  return {
    id: null,
    visit: { ...soundVisit(dog.id, DAY), ...facts },
    plan: { ...blankPlanRequest(DAY, 'unconditioned'), goal },
    food: null,
  };
}

const AGREED = 'Agreed with the vet on the phone.';
const overrides = ['goal-limit', 'goal-long'].map((code) => ({ code, reason: AGREED }));

describe('a goal too long for the dog', () => {
  test('is refused at its field, with limit, unit and reason, and nothing is kept', async () => {
    const desk = await openOwn();
    const input = await request(desk, 40);
    const error = await desk.refused('visits/save', input);
    expect(error).toMatchObject({
      kind: 'input',
      fields: [{ path: 'plan.goal.continuousMinutes' }],
    });
    expect(error.message).toMatch(/40 min .* over 30 min.*body condition 6 of 9/);
    const file = await desk.ok('dogs/file', { dogId: input.visit.dogId });
    expect([file.visits, file.plans]).toEqual([[], []]);
  });

  test('is kept with a written reason up to 90 min', async () => {
    const desk = await openOwn();
    const saved = await desk.ok('visits/save', await request(desk, 40, { overrides }));
    const { state } = await desk.ok('dogs/file', { dogId: saved.visit.dogId });
    const reason = state!.screening.reasons.find(({ code }) => code === 'goal-limit');
    expect(reason!.overriddenBecause).toBe(AGREED);
    const error = await desk.refused('visits/save', await request(desk, 91, { overrides }));
    expect(error.message).toMatch(/91 min .* over 90 min: it needs the vet’s written yes/);
  });

  test('over 90 min is kept with the vet’s written yes', async () => {
    const desk = await openOwn();
    const facts = { bcs: 5, longRunClearance: true };
    const saved = await desk.ok('visits/save', await request(desk, 120, facts));
    expect(saved.plan!.version).toBe(1);
  });
});

describe('a plan changed by hand', () => {
  test('holds no run that is too long for the dog either, whatever the reason for it', async () => {
    const desk = await openOwn();
    const input = await request(desk, 20, { bcs: 5 });
    const { plan } = await desk.ok('visits/save', input);
    const { day } = plan!.ramp.weeks.at(-1)!.sessions[0]!;
    const to = { kind: 'continuous', repeats: 1, runMin: 95, walkMin: 0 } as const;
    const edits = [{ kind: 'change', day, to } as const];
    const kept = checkRamp(editRamp(plan!.ramp, edits)).map(({ code, weekIndex, day: on }) => ({
      ...{ code, weekIndex, reason: AGREED },
      ...(on === undefined ? {} : { day: on }),
    }));
    const edit = { dogId: input.visit.dogId, edits, kept, note: '' };
    const error = await desk.refused('plans/edit', edit);
    expect(error.message).toMatch(/95 min .* over 90 min: it needs the vet’s written yes/);
  });
});

describe('a dog whose signs or history nobody asked about', () => {
  const stateOf = async (facts: Partial<VisitFacts>) => {
    const desk = await openOwn();
    const { visit } = await request(desk, 20, facts);
    await desk.ok('visits/save', { id: null, visit, plan: null, food: null });
    const { state } = await desk.ok('dogs/file', { dogId: visit.dogId });
    const asks = state!.screening.reasons.filter(({ unseen }) => unseen);
    return [state!.mayRun, ...asks.map(({ code }) => code)];
  };

  test.each<readonly [string, Partial<VisitFacts>, readonly string[]]>([
    ['both asked', {}, ['ready to start']],
    ['signs not asked', { signsAsked: false }, ['walking only', 'signs-not-asked']],
    ['history not asked', { historyAsked: false }, ['walking only', 'history-not-asked']],
    [
      'something told',
      { signsAsked: false, historyAsked: false, signs: ['cough'], medicine: 'Drops' },
      ['vet first'],
    ],
  ])('%s', async (_, facts, expected) => {
    expect(await stateOf(facts)).toEqual(expected);
  });
});
