import { describe, expect, it } from 'vitest';
import {
  addDays,
  buildRamp,
  programmeCourses,
  reviewRamp,
  type PresentProgramme,
  type Ramp,
  type Reason,
} from '../../../core/index.ts';

const START = '2025-03-03';
const ramp = buildRamp({
  startDay: START,
  start: 'conditioned',
  sessionsPerWeek: 3,
  goal: { continuousMinutes: 20 },
});
const GOAL = ramp.goalReachedOn!;
const days = (of: Ramp) => of.weeks.flatMap(({ sessions }) => sessions.map(({ day }) => day));
const version = (
  number: number,
  of: Ramp,
  madeOn: string,
  review: { decision: string; reasons: readonly Reason[] } | null = null,
) => ({ version: number, ramp: of, madeOn, review });
const RUNNING = { kind: 'running' } as PresentProgramme<{ version: number }>;
const done = (of: readonly string[]) => of.map((day) => ({ day, outcome: 'done' as const }));

const first = version(1, ramp, addDays(START, -3));

/** Stopped for lameness on the fourth outing, and reviewed on the day after. */
function stopped() {
  const told = days(ramp).slice(0, 4);
  const results = told.map((day, index) => ({
    day,
    outcome: 'done' as const,
    nextDay: 'normal' as const,
    signs: index === 3 ? (['lameness'] as const) : [],
  }));
  const day = addDays(told[3]!, 1);
  const review = reviewRamp({ ramp, results, day });
  return { results, day, plan: version(2, review.ramp, day, review) };
}

describe('the programmes of a dog', () => {
  it('has none before the first outing', () => {
    expect(programmeCourses([first], [], RUNNING, addDays(days(ramp)[0]!, -1))).toEqual([]);
  });

  it('is under way until the goal was told of, not until its day', () => {
    const [course] = programmeCourses([first], done(days(ramp).slice(0, 3)), RUNNING, GOAL);
    expect(course).toMatchObject({ startedOn: days(ramp)[0], end: { kind: 'under way' } });
    const [met] = programmeCourses([first], done(days(ramp)), RUNNING, addDays(GOAL, 1));
    expect(met!.end).toEqual({ kind: 'reached', day: GOAL });
    const shortened = [{ day: GOAL, outcome: 'shortened' as const }];
    expect(programmeCourses([first], shortened, RUNNING, GOAL)[0]!.end.kind).toBe('under way');
  });

  it('names the days to the goal as the plan stood when it began', () => {
    const later = version(2, { ...ramp, goalReachedOn: addDays(GOAL, 30) }, addDays(START, 14));
    const resumed = {
      ...later,
      ramp: { ...later.ramp, request: { ...ramp.request, resume: {} as never } },
    };
    const [course, ...more] = programmeCourses([first, resumed], [], RUNNING, addDays(START, 15));
    expect(more).toEqual([]);
    const planned = Math.round((Date.parse(GOAL) - Date.parse(days(ramp)[0]!)) / 86_400_000);
    expect(course!.plannedDays).toBe(planned);
  });

  it('ends where a version stopped it, and begins anew with the next plan', () => {
    const { results, day, plan } = stopped();
    const again = buildRamp({ ...ramp.request, startDay: addDays(day, 21), start: 'post-injury' });
    const plans = [first, plan, version(3, again, addDays(day, 20))];
    const courses = programmeCourses(plans, results, RUNNING, addDays(day, 40));
    expect(courses.map(({ end }) => end.kind)).toEqual(['stopped', 'under way']);
    expect(courses[0]!.end).toMatchObject({ day });
    expect(courses[1]!.startedOn >= addDays(day, 21)).toBe(true);
  });

  it('counts a stop that was told and not reviewed yet, on the day of its outing', () => {
    const { results, day, plan } = stopped();
    const present = {
      kind: 'stopped',
      since: addDays(day, 5),
      reasons: plan.review!.reasons,
    } as unknown as PresentProgramme<{ version: number }>;
    const [course] = programmeCourses([first], results, present, addDays(day, 5));
    expect(course!.end).toMatchObject({ kind: 'stopped', day: addDays(day, -1) });
  });

  it('says that nothing was told once the last outing is past', () => {
    const end = days(ramp).at(-1)!;
    const finished = { kind: 'finished' } as PresentProgramme<{ version: number }>;
    const [course] = programmeCourses([first], [], finished, addDays(end, 10));
    expect(course!.end).toEqual({ kind: 'not told', day: end });
  });

  it('does not count walking programmes', () => {
    const walking = { ...ramp, request: { ...ramp.request, programme: 'walking' as const } };
    expect(programmeCourses([version(1, walking, START)], [], RUNNING, GOAL)).toEqual([]);
  });
});
