import { describe, expect, it } from 'vitest';
import {
  buildRamp,
  checkRamp,
  diffRamps,
  editRamp,
  type RampEdit,
} from '../../../core/training.ts';

const ramp = buildRamp({
  startDay: '2026-03-02',
  start: 'conditioned',
  sessionsPerWeek: 3,
  goal: { continuousMinutes: 30 },
  weekdays: [0, 2, 4],
  daysOut: ['2026-04-15'],
});
const codesOf = (edits: RampEdit[], eventRamp = ramp) =>
  checkRamp(editRamp(eventRamp, edits)).map(({ code }) => code);
const day = (week: number, session: number): string => ramp.weeks[week]!.sessions[session]!.day;

describe('edits by hand are checked against the rules', () => {
  it('finds nothing in the plan as it was made', () => {
    expect(checkRamp(ramp)).toEqual([]);
  });

  it('a week over its cap, with the limit and how sure we are', () => {
    const [breach] = checkRamp(editRamp(ramp, [{ kind: 'week', number: 2, runMinutes: 24 }]));
    expect(breach).toMatchObject({
      code: 'over-cap',
      weekIndex: 1,
      gravity: 'breach',
      evidence: 'D',
      sources: ['frandsen2025', 'buist2008', 'nielsen2014', 'ownDecision'],
      keptBecause: null,
    });
    expect(breach!.params['limit']).toBeCloseTo(21.6, 9);
  });

  it('a rise of over 30 % in two weeks, as a note', () => {
    const notes = (runMinutes: number) =>
      checkRamp(editRamp(ramp, [{ kind: 'week', number: 3, runMinutes }]))
        .filter(({ code }) => code === 'two-week-rise')
        .map(({ gravity, weekIndex }) => [gravity, weekIndex]);
    expect(notes(24)).toEqual([['note', 2]]);
    expect(notes(23)).toEqual([]);
  });

  it('a recovery week that is none', () => {
    expect(codesOf([{ kind: 'week', number: 4, runMinutes: 25 }])).toContain('recovery-missing');
  });

  it('two running days in a row', () => {
    const edit: RampEdit = { kind: 'change', day: day(0, 1), to: { day: '2026-03-03' } };
    expect(codesOf([edit])).toEqual(expect.arrayContaining(['consecutive-days', 'weekday']));
  });

  it('a day out, and a day on which the owner cannot run', () => {
    const edit: RampEdit = { kind: 'change', day: day(6, 1), to: { day: '2026-04-15' } };
    expect(codesOf([edit])).toContain('day-out');
  });

  it('a skipped step of the bout path', () => {
    const edit: RampEdit = {
      kind: 'change',
      day: day(1, 0),
      to: { repeats: 2, runMin: 3, walkMin: 2 },
    };
    expect(codesOf([edit])).toContain('bout-path');
  });

  it('a step taken after one session only', () => {
    const fewer: RampEdit[] = [
      { kind: 'remove', day: day(0, 1) },
      { kind: 'remove', day: day(0, 2) },
      { kind: 'change', day: day(1, 0), to: { repeats: 1, runMin: 2, walkMin: 2 } },
    ];
    expect(codesOf(fewer)).toContain('step-too-soon');
  });

  it('a long run that no easy one follows', () => {
    const last = ramp.weeks.length - 1;
    const edit: RampEdit = { kind: 'change', day: day(last, 1), to: { runMin: 26 } };
    expect(codesOf([edit])).toContain('longest-not-followed-by-easy');
  });

  it('days before the plan, on the eve of the event, and an event week that is not easy', () => {
    const event = buildRamp({ ...ramp.request, daysOut: [], eventDay: '2026-06-06' });
    const week = event.weeks.at(-1)!;
    const eve: RampEdit = {
      kind: 'change',
      day: week.sessions.at(-1)!.day,
      to: { day: '2026-06-05' },
    };
    expect(codesOf([eve], event)).toContain('after-event');
    const hard: RampEdit = { kind: 'week', number: week.number, runMinutes: 67.5 };
    expect(codesOf([hard], event)).toContain('event-week-not-easy');
  });

  it('keeps a breach with a written reason, and only with one', () => {
    const edited = editRamp(ramp, [{ kind: 'week', number: 2, runMinutes: 24 }]);
    const kept = { code: 'over-cap', weekIndex: 1 } as const;
    expect(checkRamp(edited, [{ ...kept, reason: ' ' }])[0]!.keptBecause).toBeNull();
    const [breach] = checkRamp(edited, [{ ...kept, reason: 'Ran more before the pause.' }]);
    expect(breach!.keptBecause).toBe('Ran more before the pause.');
  });

  it('adds weeks, limits and the goal day up again', () => {
    const edited = editRamp(ramp, [{ kind: 'remove', day: ramp.goalReachedOn! }]);
    expect(edited.goalReachedOn).toBeNull();
    expect(edited.weeks.at(-1)!.runMinutes).toBe(22 + 22);
    const lower = editRamp(ramp, [{ kind: 'week', number: 2, runMinutes: 18 }]);
    expect(lower.weeks[2]!.capMinutes).toBe(21);
    expect(ramp.weeks[1]!.runMinutes).toBe(21);
  });

  it('adds a session, marks it, and leaves the given plan as it was', () => {
    const session = {
      day: '2026-03-08',
      kind: 'bouts',
      repeats: 2,
      runMin: 1,
      walkMin: 2,
    } as const;
    const edited = editRamp(ramp, [{ kind: 'add', session }]);
    expect(edited.weeks[0]!.sessions.at(-1)).toMatchObject({ day: '2026-03-08', edited: true });
    expect(ramp.weeks[0]!.sessions).toHaveLength(3);
    expect(() => editRamp(edited, [{ kind: 'add', session }])).toThrow(RangeError);
    expect(() => editRamp(ramp, [{ kind: 'remove', day: '2026-03-03' }])).toThrow(/2026-03-03/);
  });
});

describe('an edit by hand', () => {
  const first = ramp.weeks[0]!;
  const last = ramp.weeks.at(-1)!;

  it('makes a session with all that the others have', () => {
    const run = {
      day: '2026-03-08',
      kind: 'continuous',
      repeats: 4,
      runMin: 5,
      walkMin: 3,
    } as const;
    const paced = { ...ramp, request: { ...ramp.request, paceMinPerKm: 5 } };
    const added = editRamp(paced, [{ kind: 'add', session: run }]).weeks[0]!.sessions.at(-1)!;
    // Without a break there is one run and no walk.
    expect(added).toMatchObject({
      kind: 'continuous',
      repeats: 1,
      walkMin: 0,
      runMinutes: 5,
      distanceKm: 1,
      effort: 'medium',
      warmUpMin: 10,
      coolDownMin: 10,
      focus: null,
    });
    expect(added).not.toHaveProperty('dose');
    const eased = editRamp(ramp, [
      { kind: 'change', day: last.sessions[0]!.day, to: { runMin: 20 } },
    ]);
    expect(last.sessions[0]!.effort).toBe('long');
    expect(eased.weeks.at(-1)!.sessions[0]).toMatchObject({
      effort: 'long',
      runMin: 20,
      repeats: 1,
    });
  });

  it('keeps what a session holds that is new, and how much of it', () => {
    const pulled = buildRamp({ ...ramp.request, laterStages: ['pull', 'hills'] });
    for (const stage of ['pull', 'hills'] as const) {
      const session = pulled.weeks.find((week) => week.stage === stage)!.sessions[0]!;
      const edits: RampEdit[] = [{ kind: 'change', day: session.day, to: { runMin: 25 } }];
      const edited = editRamp(pulled, edits).weeks.flatMap(({ sessions }) => sessions);
      const { focus, dose, surface } = session;
      expect(edited.find(({ day: at }) => at === session.day)).toMatchObject({
        focus: stage,
        dose,
        surface: stage === 'hills' ? 'soft-hilly' : 'soft-trail',
        runMinutes: 25,
      });
      expect([focus, surface === 'soft-hilly']).toEqual([stage, stage === 'hills']);
    }
  });

  it('touches its own week alone, and says so', () => {
    const edited = editRamp(ramp, [{ kind: 'week', number: 2, runMinutes: 18 }]);
    expect(edited.weeks.map((week) => week.edited === true)).toEqual(
      ramp.weeks.map(({ number }) => number === 2),
    );
    expect(edited.weeks[1]!.sessions.every((session) => session.edited === true)).toBe(true);
    expect(edited.weeks[0]!.sessions).toEqual(first.sessions);
    const removed = editRamp(ramp, [{ kind: 'remove', day: day(0, 1) }]);
    expect(removed.weeks[0]).toMatchObject({ edited: true, runMinutes: 12 });
    expect(removed.weeks[1]).not.toHaveProperty('edited');
  });

  it('adds up steps and limits, a week emptied by hand too', () => {
    const to = { repeats: 2, runMin: 2, walkMin: 2 };
    const mixed = editRamp(ramp, [{ kind: 'change', day: day(1, 2), to }]).weeks[1]!;
    expect(mixed).toMatchObject({
      step: '1 min run, 2 min walk, then 2 min run, 2 min walk',
      stepIndex: 1,
      runMinutes: 17,
      capMinutes: 21,
    });
    const before = editRamp(ramp, [{ kind: 'change', day: day(1, 0), to }]).weeks[1]!;
    expect(before.step).toBe(mixed.step);
    const none = [0, 1, 2].map((at): RampEdit => ({ kind: 'remove', day: day(0, at) }));
    const emptied = editRamp(ramp, none);
    expect(emptied.weeks[0]).toMatchObject({ sessions: [], runMinutes: 0, step: first.step });
    expect(() => editRamp(emptied, [{ kind: 'week', number: 1, runMinutes: 18 }])).toThrow(
      'number must be that of a week with sessions, but is 1',
    );
    expect(() => editRamp(ramp, [{ kind: 'week', number: 99, runMinutes: 18 }])).toThrow('is 99');
  });

  it('names what it refuses', () => {
    const refused = (edit: RampEdit, text: string) => {
      expect(() => editRamp(ramp, [edit])).toThrow(RangeError);
      expect(() => editRamp(ramp, [edit])).toThrow(text);
    };
    const change = (to: object): RampEdit => ({ kind: 'change', day: day(0, 0), to });
    refused(change({ day: '2026-02-28' }), 'day must not lie before the first week');
    refused(change({ day: '2026-02-30' }), 'day');
    refused(change({ day: day(0, 1) }), 'day must be free');
    refused(change({ repeats: 41 }), 'repeats');
    refused(change({ runMin: 0.4 }), 'runMin');
    refused(change({ walkMin: 31 }), 'walkMin');
    refused({ kind: 'week', number: 1, runMinutes: 961 }, 'runMinutes');
  });

  it('of a plan with an event tells what is within reach now', () => {
    expect(editRamp(ramp, []).withinReach).toBeNull();
    const event = buildRamp({ ...ramp.request, daysOut: [], eventDay: '2026-06-06' });
    const longest = event.withinReach!.continuousMinutes;
    const at = event.weeks.flatMap(({ sessions }) => sessions).find((s) => s.runMin === longest)!;
    const less: RampEdit = { kind: 'change', day: at.day, to: { runMin: longest - 10 } };
    expect(editRamp(event, [less]).withinReach!.continuousMinutes).toBeLessThan(longest);
    expect(last.sessions[0]!.runMin).toBe(30);
  });

  it('of walks has no limit to show but what they hold', () => {
    const walks = buildRamp({ ...ramp.request, programme: 'walking', daysOut: [] });
    const { number, sessions } = walks.weeks[1]!;
    const edit: RampEdit = { kind: 'change', day: sessions[0]!.day, to: { runMin: 40 } };
    const week = editRamp(walks, [edit]).weeks[number - 1]!;
    expect(week).toMatchObject({ runMinutes: 70, capMinutes: 70, step: 'brisk walk' });
    expect(week.sessions[0]).toMatchObject({ kind: 'walk', warmUpMin: 0, coolDownMin: 0 });
    expect(week.sessions[0]!.distanceKm).toBeNull();
  });
});

describe('the difference of two versions', () => {
  it('is empty between a plan and itself', () => {
    expect(diffRamps(ramp, ramp).sessions).toEqual([]);
  });

  it('names what was moved, changed and removed, and the weeks', () => {
    const edited = editRamp(ramp, [
      { kind: 'change', day: day(0, 2), to: { day: '2026-03-07' } },
      { kind: 'change', day: day(1, 0), to: { repeats: 5 } },
      { kind: 'remove', day: day(1, 2) },
    ]);
    const diff = diffRamps(ramp, edited);
    expect(diff.sessions.map(({ kind, day: on }) => [kind, on])).toEqual([
      ['moved', '2026-03-07'],
      ['changed', day(1, 0)],
      ['removed', day(1, 2)],
    ]);
    expect(diff.sessions[0]!.fromDay).toBe(day(0, 2));
    expect(diff.weeks[1]).toEqual({ startDay: '2026-03-09', before: 21, after: 12 });
  });
});
