import { describe, expect, it } from 'vitest';
import { buildRamp, rationByWeek, runningCost, type AssessedRunning } from '../../../core/index.ts';
import { plannedRunning, runsDone } from '../../../core/assess/running.ts';
import { addDays } from '../../../core/day.ts';
import { DAY, on, ramp, request, told } from './dogOnPlan.ts';

const KG = 27;
const paced = buildRamp({ ...request, paceMinPerKm: 7 });
const plan = { ramp: paced, climbM: 30 };
const sessions = paced.weeks.flatMap((week) => week.sessions);
const last = sessions.at(-1)!;
const cost = (distanceKm: number, climbM: number): number =>
  runningCost({ weightKg: KG, distanceKm, climbM }).mid;
const running = (day: string, results: Parameters<typeof plannedRunning>[1] = []) =>
  plannedRunning(plan, results, KG, day)!;
const climbed = (day: string, climbedM: number | null) => ({
  ...told(day),
  runMinutes: 5,
  climbedM,
});

describe('the running of a plan, for the food', () => {
  it('is each week what its outings cost at the owner’s pace, the planned climb in it', () => {
    const { weeks, climb } = running(DAY);
    expect(climb).toEqual({ metres: 30, recorded: 0 });
    expect(weeks.map(({ week }) => week)).toEqual(paced.weeks.map(({ number }) => number));
    for (const [index, { kcalPerWeek }] of weeks.entries()) {
      const km = paced.weeks[index]!.sessions.map(({ runMinutes }) => runMinutes / 7);
      const sum = km.reduce((kcal, each) => kcal + cost(each, 30), 0);
      // Plans give distances in whole tenths of a kilometre.
      expect(Math.abs(kcalPerWeek - sum)).toBeLessThan(cost(0.05, 0) * km.length + 1e-6);
    }
  });

  it('is not known without a plan or a pace; outings without one cost nothing beside the others', () => {
    expect(plannedRunning(null, [], KG, DAY)).toBeNull();
    expect(plannedRunning(undefined, [], KG, DAY)).toBeNull();
    expect(plannedRunning({ ramp, climbM: 30 }, [], KG, DAY)).toBeNull();
    const [first, second] = paced.weeks;
    const [one, ...others] = first!.sessions;
    const weeks = [{ ...first!, sessions: [{ ...one!, distanceKm: null }, ...others] }, second!];
    const some = plannedRunning({ ramp: { weeks }, climbM: null }, [], KG, DAY)!;
    expect(some.weeks.map(({ runningDays }) => runningDays)).toEqual([2, 3]);
    expect(some.climb.metres).toBe(0);
    const unpaced = { ...first!, sessions: [{ ...one!, distanceKm: null }] };
    const later = plannedRunning(
      { ramp: { weeks: [unpaced, second!] }, climbM: null },
      [],
      KG,
      DAY,
    );
    expect(later!.weeks.map(({ runningDays }) => runningDays)).toEqual([0, 3]);
  });

  it('stands in the week of the day, in the first one before it begins, in none after the last', () => {
    const week = (day: string) => running(day).current?.week ?? null;
    expect(week(on(-10))).toBe(1);
    expect(week(on(6))).toBe(1);
    expect(week(on(7))).toBe(2);
    const end = addDays(paced.weeks.at(-1)!.startDay, 6);
    expect(week(end)).toBe(paced.weeks.length);
    expect(week(addDays(end, 1))).toBeNull();
  });

  it('climbs what was climbed lately, once two outings of the last 28 days tell it', () => {
    const at = on(40);
    const climb = (...results: ReturnType<typeof climbed>[]) => running(at, results).climb;
    const two = [climbed(on(38), 100), climbed(on(40), 0)];
    expect(climb(...two)).toEqual({ metres: 50, recorded: 2 });
    expect(climb(...two, climbed(on(36), null))).toEqual({ metres: 50, recorded: 2 });
    expect(climb(two[0]!)).toEqual({ metres: 30, recorded: 0 });
    expect(climb(two[0]!, climbed(on(12), 20))).toEqual({ metres: 60, recorded: 2 });
    expect(climb(two[0]!, climbed(on(11), 20)).recorded).toBe(0);
    expect(climb(two[0]!, climbed(on(41), 20)).recorded).toBe(0);
    const steeper = running(at, [climbed(on(38), 100), climbed(on(40), 100)]);
    expect(steeper.weeks[0]!.kcalPerWeek).toBeGreaterThan(running(at).weeks[0]!.kcalPerWeek);
  });
});

describe('the runs that were done', () => {
  const done = (
    changes: Parameters<typeof told>[1],
    day = last.day,
    of: typeof plan | null = plan,
  ) =>
    runsDone(
      of,
      [told(day, changes)].map(({ runMinutes, ...rest }) => ({
        ...rest,
        ...(runMinutes === null ? {} : { runMinutes }),
      })),
      KG,
    );
  const whole = cost(last.distanceKm!, 30);

  it('cost what was planned, in the part that was run', () => {
    expect(done({})).toEqual([{ day: last.day, kcal: whole }]);
    const [half] = done({ outcome: 'shortened' });
    expect(half!.kcal).toBeCloseTo(whole / 2, 9);
    const [timed] = done({ outcome: 'shortened', runMinutes: last.runMinutes / 4 });
    expect(timed!.kcal).toBeCloseTo(whole / 4, 9);
    expect(done({ runMinutes: 1.5 * last.runMinutes })[0]!.kcal).toBeCloseTo(1.5 * whole, 9);
  });

  it('are none where nothing was run, was planned, or has a pace', () => {
    expect(done({ outcome: 'missed' })).toEqual([]);
    expect(done({ outcome: 'held' })).toEqual([]);
    expect(done({}, on(1))).toEqual([]);
    expect(done({}, last.day, null)).toEqual([]);
    expect(done({}, last.day, { ramp, climbM: 30 })).toEqual([]);
  });

  it('cost the distance and climb they were recorded with, planned or not', () => {
    const kcal = (changes: Parameters<typeof told>[1], day?: string, of?: typeof plan | null) =>
      done(changes, day, of)[0]!.kcal;
    expect(kcal({ runKm: 3, climbedM: 80 })).toBeCloseTo(cost(3, 80), 9);
    expect(kcal({ runKm: 3 })).toBeCloseTo(cost(3, 30), 9);
    expect(kcal({ runKm: 3, outcome: 'shortened' }, on(1))).toBeCloseTo(cost(3, 30), 9);
    expect(kcal({ runKm: 3 }, on(1), null)).toBeCloseTo(cost(3, 0), 9);
    expect(
      runsDone(
        { ramp: paced, climbM: null },
        [told(last.day)].map(({ day, outcome }) => ({ day, outcome })),
        KG,
      ),
    ).toEqual([{ day: last.day, kcal: cost(last.distanceKm!, 0) }]);
  });
});

describe('a ration that follows the plan', () => {
  const ration = { kcalPerDay: 900, runningKcalPerDay: 12 };

  it('differs from week to week by that week’s running alone, eight weeks from the present one on', () => {
    const now = running(on(8));
    const weeks = rationByWeek(ration, now);
    expect(weeks.map(({ week }) => week)).toEqual([2, 3, 4, 5, 6, 7, 8, 9]);
    for (const { week, kcalPerDay } of weeks) {
      const spent = now.weeks.find((each) => each.week === week)!.kcalPerDay;
      expect(kcalPerDay - spent).toBeCloseTo(900 - 12, 9);
    }
    expect(rationByWeek(ration, running(DAY))).toHaveLength(8);
  });

  it('is told only where a plan is under way and a week differs by 1 kcal a day', () => {
    expect(rationByWeek(ration, null)).toEqual([]);
    expect(rationByWeek(ration, { ...running(DAY), current: null })).toEqual([]);
    const real = running(DAY);
    const within = (...kcal: number[]): AssessedRunning => {
      const weeks = kcal.map((kcalPerDay, index) => ({ ...real.weeks[index]!, kcalPerDay }));
      return { ...real, weeks, current: weeks[0]! };
    };
    expect(rationByWeek(ration, within(12, 12.5, 11.5))).toEqual([]);
    expect(rationByWeek(ration, within(12, 13))).toHaveLength(2);
    expect(rationByWeek(ration, within(12, 11))).toHaveLength(2);
  });
});
