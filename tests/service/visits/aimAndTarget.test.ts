import { describe, expect, it } from 'vitest';
import {
  blankClient,
  blankDog,
  blankPlanRequest,
  blankPractice,
  blankVisit,
} from '../../../electron/contract/records/forms.ts';
import type { VisitFacts } from '../../../electron/contract/records.ts';
import { openOwn, type TestDesk } from '../support/desk.ts';

async function weighed(desk: TestDesk): Promise<VisitFacts> {
  await desk.ok('practice/save', { ...blankPractice(), name: 'Mill Brook Canine Fitness' });
  const dog = await desk.ok('dogs/saveWithOwner', {
    client: { ...blankClient(), name: 'Dana Owner' },
    dog: { ...blankDog('female'), name: 'Rusk', birthDay: '2021-05-01', adultWeightKg: 24 },
  });
  return { ...blankVisit(dog.id, '2026-03-02'), weightKg: 28, bcs: 6 };
}
const sent = (visit: VisitFacts) => ({ id: null, visit, plan: null, food: null });

describe('a visit whose aim and target contradict each other', () => {
  it.each([
    ['lose', 28],
    ['lose', 31],
    ['gain', 28],
    ['gain', 24],
  ] as const)('is refused at an intake, nothing is kept: %s to %d kg', async (foodGoal, kg) => {
    const desk = await openOwn();
    const visit = await weighed(desk);
    const plan = blankPlanRequest('2026-03-04', 'unconditioned');
    const facts = { ...visit, foodGoal, targetWeightKg: kg };
    const error = await desk.refused('visits/save', { ...sent(facts), plan });
    expect(error.kind).toBe('input');
    expect(error.fields![0]!.path).toBe('visit.targetWeightKg');
    expect(error.fields![0]!.message).toMatch(/^Target weight must be (below|above) .* 28\.0 kg/);
    const file = await desk.ok('dogs/file', { dogId: visit.dogId });
    expect([file.visits, file.plans]).toEqual([[], []]);
  });

  it('is kept at a follow-up at which the target is reached', async () => {
    const desk = await openOwn();
    const visit = await weighed(desk);
    const losing = { ...visit, foodGoal: 'lose', targetWeightKg: 25 } as const;
    await desk.ok('visits/save', sent(losing));
    desk.setDay('2026-05-04');
    await desk.ok('visits/save', sent({ ...losing, day: '2026-05-04', weightKg: 24.9 }));
    const file = await desk.ok('dogs/file', { dogId: visit.dogId });
    expect(file.assessment!.food.reasons[0]!.code).toBe('target-reached');
  });
});
