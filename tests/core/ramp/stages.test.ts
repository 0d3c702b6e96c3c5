import { describe, expect, it } from 'vitest';
import { buildRamp, type RampRequest } from '../../../core/training.ts';

const build = (laterStages: RampRequest['laterStages'], continuousMinutes = 30) =>
  buildRamp({
    startDay: '2026-03-02',
    start: 'conditioned',
    sessionsPerWeek: 3,
    goal: { continuousMinutes },
    ...(laterStages === undefined ? {} : { laterStages }),
  });

describe('later stages', () => {
  // Pull 5 min, 5 min more a week; hills 4 × 1 min; speed 4 × 20 s: our own choice (D).
  it('say how much of the new thing', () => {
    const doses = build(['pull', 'hills', 'speed']).weeks.flatMap(({ recovery, sessions }) =>
      recovery ? [] : sessions.flatMap(({ focus, dose }) => (focus === null ? [] : [dose])),
    );
    const [hill, fast] = [
      { times: 4, seconds: 60 },
      { times: 4, seconds: 20 },
    ];
    expect(doses.slice(0, 3)).toEqual([5, 10, 15].map((min) => ({ times: 1, seconds: min * 60 })));
    expect(doses.slice(3)).toEqual([hill, hill, hill, fast, fast, fast]);
  });

  it('come as time, pull, hills, speed, in whatever order they were asked for', () => {
    const { stages } = build(['speed', 'hills', 'pull']);
    expect(stages.map(({ id }) => id)).toEqual(['time', 'pull', 'hills', 'speed']);
    expect(build(['speed', 'pull', 'pull']).stages.map(({ id }) => id)).toEqual([
      'time',
      'pull',
      'speed',
    ]);
  });

  // Goals that end before, in and after a recovery week.
  it.each([10, 15, 20, 25, 30, 40, 50, 60])(
    'bring nothing new in a recovery week: %d min',
    (goal) => {
      const { weeks } = build(['pull', 'hills', 'speed'], goal);
      const seen = new Set<string>(['time']);
      for (const { recovery, stage, sessions } of weeks) {
        if (recovery) expect(seen).toContain(stage);
        if (!recovery) seen.add(stage);
        const focus = sessions.map((session) => session.focus).filter((entry) => entry !== null);
        expect(focus).toEqual(stage === 'time' ? [] : [stage]);
      }
      expect([...seen]).toEqual(['time', 'pull', 'hills', 'speed']);
      for (const stage of ['pull', 'hills', 'speed']) {
        const building = weeks.filter((week) => week.stage === stage && !week.recovery);
        expect(building).toHaveLength(3);
      }
    },
  );
});
