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

const LAST = days(ramp).at(-1)!;
const goalOn = (of: Ramp, day: string): Ramp => ({ ...of, goalReachedOn: day });
const resumed = (of: Ramp): Ramp => ({ ...of, request: { ...of.request, resume: {} as never } });
const anew = (startDay: string): Ramp => buildRamp({ ...ramp.request, startDay });
const kinds = (...of: Parameters<typeof programmeCourses>) =>
  programmeCourses(...of).map(({ end }) => end.kind);

describe('where one programme ends and the next begins', () => {
  const later = addDays(LAST, 10);
  const late = version(2, anew(later), addDays(LAST, 5));
  const now = addDays(later, 20);

  it('is a plan built anew once the last outing is past, in whatever order they are kept', () => {
    const courses = programmeCourses([late, first], [], RUNNING, now);
    expect(courses.map(({ end }) => end.kind)).toEqual(['not told', 'under way']);
    expect(courses[0]!.end).toMatchObject({ day: LAST });
    expect(courses[1]!.startedOn).toBe(days(late.ramp)[0]);
    // A plan resumed goes on.
    expect(kinds([first, { ...late, ramp: resumed(late.ramp) }], [], RUNNING, now)).toHaveLength(1);
  });

  it('is one built anew before that only where the goal was met', () => {
    const soon = version(2, anew(addDays(GOAL, 3)), addDays(GOAL, 1));
    const early = { ...first, ramp: goalOn(ramp, addDays(GOAL, -9)) };
    const plans = [early, { ...soon, madeOn: addDays(GOAL, -5) }];
    expect(kinds(plans, [], RUNNING, addDays(GOAL, 9))).toEqual(['under way']);
    const met = done(days(ramp));
    expect(kinds(plans, met, RUNNING, addDays(GOAL, 9))).toEqual(['reached', 'under way']);
  });

  it('takes nothing of the second for the first', () => {
    const told = done(days(late.ramp).slice(0, 3));
    const stoppedNow = { kind: 'stopped', since: now, reasons: [] } as unknown as typeof RUNNING;
    const courses = programmeCourses([first, late], told, stoppedNow, now);
    expect(courses.map(({ end }) => end)).toEqual([
      { kind: 'not told', day: LAST },
      { kind: 'stopped', day: now, reasons: [] },
    ]);
  });

  it('is every stop, and a stop alone begins none', () => {
    const { results, day, plan } = stopped();
    const again = version(4, resumed(anew(addDays(day, 21))), addDays(day, 20));
    const twice = [first, plan, { ...plan, version: 3 }];
    expect(kinds(twice, results, RUNNING, addDays(day, 10))).toEqual(['stopped']);
    expect(kinds([...twice, again], results, RUNNING, addDays(day, 60))).toEqual([
      'stopped',
      'under way',
    ]);
    expect(kinds([plan], results, RUNNING, addDays(day, 10))).toEqual([]);
  });

  it('is no plan without outings that was not stopped, nor a review that left outings', () => {
    const empty = version(2, { ...resumed(ramp), weeks: [] }, addDays(START, 20));
    const [course, ...more] = programmeCourses([first, empty], [], RUNNING, addDays(START, 30));
    expect(more).toEqual([]);
    expect(course!.end).toEqual({ kind: 'not told', day: addDays(START, 20) });
    const review = { decision: 'stop', reasons: [] };
    const left = version(2, resumed(anew(addDays(START, 21))), addDays(START, 20), review);
    expect(kinds([first, left], [], RUNNING, addDays(START, 30))).toEqual(['under way']);
  });

  it('is counted from the day of the first outing on', () => {
    const [begins] = days(ramp);
    expect(kinds([first], [], RUNNING, begins!)).toEqual(['under way']);
    const never = version(2, { ...ramp, weeks: [] }, addDays(START, -2), {
      decision: 'stop',
      reasons: [],
    });
    expect(kinds([first, never], [], RUNNING, addDays(START, 9))).toEqual([]);
  });
});

describe('a goal', () => {
  it('is met from its day on, by the first outing told as done', () => {
    const at = days(ramp).length - 4;
    const [before, goal] = days(ramp).slice(at - 1);
    const early = { ...first, ramp: goalOn(ramp, goal!) };
    const told = done([...days(ramp)].reverse());
    const on = (day: string) => programmeCourses([early], told, RUNNING, day)[0]!.end;
    expect(on(before!)).toEqual({ kind: 'under way' });
    expect(on(goal!)).toEqual({ kind: 'reached', day: goal });
    expect(on(addDays(LAST, 30))).toEqual({ kind: 'reached', day: goal });
    // Nothing told of the day itself: the next outing done meets it.
    const later = programmeCourses([early], done(days(ramp).slice(at + 1)), RUNNING, LAST);
    expect(later[0]!.end).toEqual({ kind: 'reached', day: days(ramp)[at + 1] });
  });

  it('is that of the version in force', () => {
    const early = { ...first, ramp: goalOn(ramp, addDays(GOAL, -9)) };
    const moved = version(2, resumed(ramp), addDays(START, 20));
    const at = (day: string) =>
      programmeCourses([early, moved], done([day]), RUNNING, day).map(({ end }) => end);
    expect(at(addDays(GOAL, -5))).toEqual([{ kind: 'under way' }]);
    expect(at(GOAL)).toEqual([{ kind: 'reached', day: GOAL }]);
    // The goal that was met before the plan was changed stays met.
    const after = version(2, { ...resumed(ramp), weeks: [] }, addDays(GOAL, -8));
    const met = done([addDays(GOAL, -9)]);
    expect(kinds([early, after], met, RUNNING, addDays(GOAL, -7))).toEqual(['reached']);
  });

  it('is planned by the last version made up to the first outing, or by none', () => {
    const [begins] = days(ramp);
    const planned = (...plans: readonly ReturnType<typeof version>[]) =>
      programmeCourses(plans, [], RUNNING, begins!)[0]!.plannedDays;
    const by = (count: number) => resumed(goalOn(ramp, addDays(begins!, count)));
    expect(planned(first, version(2, by(50), begins!))).toBe(50);
    expect(planned(first, version(2, by(50), addDays(begins!, 1)))).not.toBe(50);
    expect(planned(version(1, by(40), addDays(begins!, 1)))).toBe(40);
    const none = { ...ramp, goalReachedOn: null, earliestGoalDay: null, earliestEventDay: null };
    expect(planned(version(1, none, START))).toBeNull();
  });
});

describe('a programme that does not go on', () => {
  const on = addDays(START, 20);
  const end = (present: object) =>
    programmeCourses([first], [], present as typeof RUNNING, on)[0]!.end;

  it('waits where something is to be settled', () => {
    expect(end({ kind: 'waiting', for: 'vet', reasons: [] })).toEqual({ kind: 'waiting' });
  });

  it('was stopped on the day its first reason names, else when it was seen', () => {
    const stop = (reasons: readonly object[]) => end({ kind: 'stopped', since: on, reasons });
    const reason = (params: object) => ({ code: 'review-stop-sign', params });
    expect(stop([])).toMatchObject({ kind: 'stopped', day: on });
    expect(stop([reason({})])).toMatchObject({ day: on });
    expect(stop([reason({ day: 7 })])).toMatchObject({ day: on });
    expect(stop([reason({ day: '2025-03-10' })])).toMatchObject({ day: '2025-03-10' });
  });
});
