import { describe, expect, it } from 'vitest';
import { addDays, buildRamp } from '../../../core/index.ts';
import { dayNumber } from '../../../core/day.ts';
import type { LineSeries } from '../../../renderer/chart/spec.ts';
import {
  sessionsCharts,
  sessionsRun,
  sessionsTable,
} from '../../../renderer/plans/sessionsChart.ts';
import { outcomeOnly } from '../../../renderer/plans/timeline.ts';
import { DEFAULT_CHOICES, shownWith } from '../../../renderer/units/shown.ts';

const shown = shownWith(DEFAULT_CHOICES);
const ramp = buildRamp({
  startDay: '2026-03-02',
  start: 'conditioned',
  sessionsPerWeek: 3,
  goal: { continuousMinutes: 30 },
});
const sessions = ramp.weeks.flatMap((week) => week.sessions);
const told = (at: number, more = {}) => ({
  ...outcomeOnly(sessions[at]!.day, 'done'),
  nextDay: 'normal' as const,
  ...more,
});
const drawn = (count: number) =>
  sessionsRun(
    sessions,
    sessions.slice(0, count).map((_, at) => told(at)),
    ramp.rules,
  );

describe('the sessions that were run', () => {
  it('stand under the cap of what was run in the 30 days before', () => {
    const [first, second, third] = sessionsRun(
      sessions,
      [told(1, { runMinutes: 20 }), told(0, { runMinutes: 4 }), told(2)],
      ramp.rules,
    );
    expect(first).toMatchObject({ day: sessions[0]!.day, done: 4, cap: null });
    // 2 min over the 4; then 10 % over the 20.
    expect(second!.cap).toBeCloseTo(6);
    expect(third!.cap).toBeCloseTo(22);
  });

  it('count with the longest outing of a day, and unplanned ones with the others', () => {
    const day = addDays(sessions[0]!.day, 1);
    const own = { ...outcomeOnly(day, 'done'), runMinutes: 40, longestRunMinutes: 30 };
    const runs = sessionsRun(sessions, [told(0), own, told(1)], ramp.rules);
    expect(runs[1]).toMatchObject({ planned: null, done: 40 });
    expect(runs[2]!.cap).toBeCloseTo(33);
  });

  it.each([1, 2, 12, 36])('are drawn where they were, %i of them', (count) => {
    const runs = drawn(count);
    const [minutes, strip] = sessionsCharts(runs, shown);
    const [done, planned] = minutes!.series as LineSeries[];
    expect(done!.points.map(({ x, y }) => [x, y])).toEqual(
      sessions.slice(0, count).map(({ day, runMinutes }) => [dayNumber(day), runMinutes]),
    );
    expect(planned!.points).toHaveLength(count);
    expect((strip!.series[0] as LineSeries).points.every(({ y }) => y === 0)).toBe(true);
    expect(sessionsTable(runs).rows).toHaveLength(count);
  });

  it('show a bad next day in a shape of its own, a sign to stop highest, and nothing where not told', () => {
    const runs = sessionsRun(
      sessions,
      [
        told(0, { nextDay: 'stiffness over 24 h' }),
        told(1, { signs: ['lameness'] }),
        told(2, { nextDay: null }),
      ],
      ramp.rules,
    );
    const { series, y } = sessionsCharts(runs, shown)[1]!;
    const [stiff, lame, untold] = (series[0] as LineSeries).points;
    expect(stiff).toMatchObject({ y: 2, shape: 'triangle' });
    expect(y.words!(2)).toBe('over 24 h');
    expect(lame!.y!).toBeGreaterThan(stiff!.y!);
    expect(lame!.text).toMatch(/: Lame, Normal$/);
    expect(untold).toMatchObject({ y: null, text: '' });
  });
});
