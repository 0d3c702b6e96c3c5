import { describe, expect, it } from 'vitest';
import { buildRamp, checkRamp, type Ramp } from '../../../core/index.ts';

const START = '2026-03-02';
const request = (start: 'conditioned' | 'unconditioned' | 'post-injury', minutes: number) => ({
  startDay: START,
  start,
  sessionsPerWeek: 3,
  goal: { continuousMinutes: minutes },
});
const tooLong = (ramp: Ramp) => checkRamp(ramp).filter(({ code }) => code === 'first-run-too-long');

describe('the first run without a break', () => {
  it.each(['conditioned', 'unconditioned', 'post-injury'] as const)(
    'is never too long as the plan is built: %s',
    (start) => {
      for (let minutes = 5; minutes <= 60; minutes += 5) {
        expect(tooLong(buildRamp(request(start, minutes)))).toEqual([]);
      }
    },
  );

  it('is caught where a hand edit makes it longer than the fullest session of bouts', () => {
    const ramp = buildRamp(request('conditioned', 40));
    const index = ramp.weeks.findIndex(({ sessions }) =>
      sessions.some(({ kind }) => kind === 'continuous'),
    );
    const bouts = ramp.weeks
      .slice(0, index + 1)
      .flatMap(({ sessions }) => sessions)
      .filter(({ kind }) => kind === 'bouts');
    const fullest = Math.max(...bouts.map(({ runMinutes }) => runMinutes));
    const weeks = ramp.weeks.map((week, at) =>
      at !== index
        ? week
        : {
            ...week,
            edited: true,
            sessions: week.sessions.map((session) =>
              session.kind === 'continuous'
                ? { ...session, runMinutes: fullest + 1, runMin: fullest + 1 }
                : session,
            ),
          },
    );
    const [found] = tooLong({ ...ramp, weeks });
    expect(found).toMatchObject({ weekIndex: index, gravity: 'breach' });
    expect(found!.params['limit']).toBeCloseTo(fullest, 6);
    expect(found!.text).toContain('min without a break');
  });
});
