import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assess, weightCourse } from '../../../core/index.ts';
import type { AssessedVisit } from '../../../core/assess/types.ts';
import { addDays } from '../../../core/day.ts';
import { grownDog, visit } from './visits.ts';
import { holds } from '../../support/laws.ts';

const START = '2026-01-05';
const after = (weeks: number) => addDays(START, 7 * weeks);

/** A plan to lose from 30 kg to 25 kg, weighed once more in a later week. */
function onPlan(week: number, weightKg: number) {
  const plan = { bcs: 7, foodGoal: 'lose', targetWeightKg: 25 } as const;
  return [visit(START, 30, plan), visit(after(week), weightKg, { ...plan, bcs: null })];
}
const courseOf = (
  visits: readonly AssessedVisit[],
  foodDecisions: { decidedOn: string; kcalPerDay: number }[] = [],
) => weightCourse({ dog: grownDog, visits, foodDecisions, day: visits.at(-1)!.day });

describe('the course of a weight', () => {
  // 0.5–2 % of 30 kg a week: after 4 weeks 27.6 to 29.4 kg. One weighing errs by 1 %, 1.645 times
  // that is about 0.5 kg.
  it.each([
    [4, 30, 'above-corridor'],
    [4, 29.8, undefined],
    [4, 28.5, undefined],
    [4, 27.3, undefined],
    [4, 26.9, 'below-corridor'],
  ])('in week %i at %f kg: %s', (week, weightKg, code) => {
    expect(courseOf(onPlan(week, weightKg))?.code).toBe(code);
  });

  it('takes the days between two weeks in proportion', () => {
    const visits = onPlan(8, 29.2);
    expect(courseOf(visits)?.code).toBeUndefined();
    const later = { ...visits[1]!, day: addDays(after(8), 6) };
    expect(courseOf([visits[0]!, later])?.code).toBe('above-corridor');
  });

  it('says nothing on the first day of a plan', () => {
    expect(courseOf(onPlan(4, 30).slice(0, 1))).toBeNull();
  });

  it('tells a drift in a dog on no plan, and none once a ration is decided', () => {
    const weeks = [0, 4, 8, 12, 16, 20];
    const drifting = weeks.map((week, i) => visit(after(week), 20 + i * 0.5, { foodGoal: 'hold' }));
    expect(courseOf(drifting)?.code).toBe('drift-up');
    expect(courseOf(drifting, [{ decidedOn: START, kcalPerDay: 900 }])).toBeNull();
  });

  it('counts a weighing between visits', () => {
    const [first] = onPlan(4, 30);
    const weighings = [{ day: after(4), weightKg: 30 }];
    const input = { dog: grownDog, visits: [first!], foodDecisions: [], day: after(4) };
    expect(weightCourse(input)).toBeNull();
    expect(weightCourse({ ...input, weighings })?.code).toBe('above-corridor');
  });

  it('is that of its day: what was weighed, asked and decided later says nothing yet', () => {
    const [first, second] = onPlan(4, 30);
    const input = { dog: grownDog, foodDecisions: [] };
    const early = { ...input, visits: [first!, second!], day: after(3) };
    expect(weightCourse(early)).toBeNull();
    expect(weightCourse({ ...early, day: after(4) })?.code).toBe('above-corridor');
    expect(weightCourse({ ...early, day: addDays(START, -1) })).toBeNull();
    const weeks = [0, 4, 8, 12, 16, 20];
    const drifting = weeks.map((week, i) => visit(after(week), 20 + i * 0.5, { foodGoal: 'hold' }));
    const decided = (decidedOn: string) =>
      courseOf(drifting, [{ decidedOn, kcalPerDay: 900 }])?.code;
    expect(decided(addDays(after(20), 1))).toBe('drift-up');
    expect(decided(after(20))).toBeUndefined();
  });

  it('of a dog that was never weighed is none', () => {
    expect(courseOf([visit(START, null), visit(after(4), null)])).toBeNull();
  });

  it('is no corridor where the plan began at its target', () => {
    const at = (targetWeightKg: number) =>
      courseOf([
        visit(START, 30, { foodGoal: 'lose', bcs: 7, targetWeightKg }),
        visit(after(4), 33, { foodGoal: 'lose', bcs: null, targetWeightKg }),
      ])?.code;
    expect(at(25)).toBe('above-corridor');
    expect(at(30)).toBeUndefined();
    expect(at(31)).toBeUndefined();
  });

  it('is what the whole assessment says', () => {
    const entry = fc.record({
      week: fc.integer({ min: 0, max: 40 }),
      kg: fc.integer({ min: 180, max: 400 }),
      bcs: fc.option(fc.integer({ min: 3, max: 9 })),
      foodGoal: fc.constantFrom('lose' as const, 'hold' as const),
      target: fc.option(fc.integer({ min: 20, max: 32 })),
    });
    holds(
      fc.property(fc.array(entry, { minLength: 1, maxLength: 8 }), fc.boolean(), (entries, fed) => {
        const visits = entries
          .sort((a, b) => a.week - b.week)
          .map(({ week, kg, bcs, foodGoal, target }) =>
            visit(after(week), kg / 10, { bcs, foodGoal, targetWeightKg: target }),
          );
        const decision = { decidedOn: START, kcalPerDay: 900, known: { runningKcalPerDay: 0 } };
        const foodDecisions = fed ? [decision] : [];
        const day = visits.at(-1)!.day;
        const whole = assess({ dog: grownDog, visits, foodDecisions, day })!;
        const part = weightCourse({ dog: grownDog, visits, foodDecisions, day });
        expect(part).toEqual(whole.offCorridor ?? whole.drift);
      }),
      { seed: 1, numRuns: 300 },
    );
  });
});
