import { describe, expect, it } from 'vitest';
import { addDays } from '../../../core/day.ts';
import { buildRamp, checkRamp, reviewRamp, type Ramp } from '../../../core/training.ts';
import { followed } from './histories.ts';

const startDay = '2026-03-02';
const build = (days: number): Ramp =>
  buildRamp({
    startDay,
    start: 'conditioned',
    sessionsPerWeek: 3,
    goal: { continuousMinutes: 30 },
    eventDay: addDays(startDay, days),
  });
const codes = ({ reasons }: Ramp): string[] => reasons.map(({ code }) => code);
const minutesFrom = (ramp: Ramp, day: string): number =>
  ramp.weeks
    .flatMap(({ sessions }) => sessions)
    .filter((session) => session.day >= day)
    .reduce((sum, { runMinutes }) => sum + runMinutes, 0);

describe('an event soon after the first day', () => {
  it.each([7, 8, 9, 10, 11, 12, 13])('says why there is no easy week: %i days', (days) => {
    const ramp = build(days);
    expect(codes(ramp)).toContain('no-easy-week');
    // The lightest week there is, and none that rises over it.
    for (const { runMinutes } of ramp.weeks) expect(runMinutes).toBeLessThanOrEqual(18);
    expect(checkRamp(ramp)).toEqual([]);
  });

  it.each([14, 15, 20, 21, 60])('has its easy week from two weeks on: %i days', (days) => {
    const ramp = build(days);
    expect(codes(ramp)).not.toContain('no-easy-week');
    expect(minutesFrom(ramp, addDays(startDay, days - 7))).toBeLessThanOrEqual(
      0.7 * Math.max(...ramp.weeks.map(({ runMinutes }) => runMinutes)) + 1e-9,
    );
  });
});

describe('a plan reviewed close to its event', () => {
  const ramp = build(56);
  const eventDay = addDays(startDay, 56);

  it.each([2, 5, 6, 7, 9, 11, 13])('keeps the last seven days easy: %i days before', (left) => {
    const day = addDays(eventDay, -left);
    const count = ramp.weeks.flatMap(({ sessions }) => sessions).filter((s) => s.day < day).length;
    const results = followed(ramp, count);
    const rules = { stageWeeks: 4 };
    // Rules that changed make a new layout, as a hold or a step back does.
    const { ramp: next } = reviewRamp({ ramp, results, day, rules });
    const last = results.map((result) => result.day);
    const before = ramp.weeks
      .filter(({ recovery, easyBeforeEvent }) => !recovery && !easyBeforeEvent)
      // A week with one session missed counts as run.
      .filter(
        ({ sessions }) => sessions.filter((session) => !last.includes(session.day)).length <= 1,
      )
      .at(-1)!.runMinutes;
    expect(codes(next)).not.toContain('no-easy-week');
    expect(next.weeks.every(({ easyBeforeEvent }) => easyBeforeEvent)).toBe(true);
    const easyFrom = addDays(eventDay, -7);
    expect(minutesFrom(next, easyFrom)).toBeLessThanOrEqual(0.7 * before + 1e-9);
    expect(checkRamp(next)).toEqual([]);
  });
});
