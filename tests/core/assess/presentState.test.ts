import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildRamp, STOP_SIGNS, type Ramp, type ToldResult } from '../../../core/index.ts';
import { holds } from '../../support/laws.ts';
import {
  DAY,
  decided,
  doneBefore,
  lastDay,
  on,
  plan,
  ramp,
  request,
  resultsOf,
  seen,
  sessions,
  standing,
  tellings,
  told,
  walks,
} from './dogOnPlan.ts';

const SOUND = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 };
const LAME = { lamenessTrot: { ...SOUND, leftHind: 2 } };
const codes = (list: readonly { readonly code: string }[]) => list.map(({ code }) => code);
const STOP = [
  { code: 'review-stop-sign', text: '', params: {}, evidence: 'D', mark: 'D', sources: [] },
] as const;
/** The version that is kept where running was stopped. */
const stopped = plan({
  version: 2,
  madeOn: on(8),
  ramp: { ...ramp, weeks: [] },
  visitId: 'visit-2',
  review: { decision: 'stop', reasons: STOP },
});

describe('the programme', () => {
  it('is none without a plan', () => {
    const state = standing(on(3), { plans: [] });
    expect(state.programme).toEqual({ kind: 'none' });
    expect([state.review, state.outings, state.soFar, state.goal, state.planEndsOn]).toEqual(
      Array(5).fill(null),
    );
  });

  it('announces the next outing, today’s among them, and the week of today', () => {
    const early = standing(on(-1), {
      visits: [seen(1, on(-3))],
      plans: [plan({ madeOn: on(-3) })],
    });
    expect(early.programme).toMatchObject({ kind: 'running', week: null, next: { day: DAY } });
    expect(early.review).toBeNull();
    const now = standing(sessions[4]!.day, { results: doneBefore(sessions[4]!.day) });
    expect(now.programme).toMatchObject({
      kind: 'running',
      week: { number: 2 },
      lastWeek: ramp.weeks.length,
      next: { day: sessions[4]!.day },
    });
    expect(now.review?.decision).toBe('progress');
  });

  it('is finished on the day after its last outing, once all was told', () => {
    const results = [...doneBefore(lastDay), told(lastDay)];
    expect(standing(lastDay, { results }).programme).toMatchObject({ next: { day: lastDay } });
    expect(standing(on(61), { results }).programme.kind).toBe('finished');
  });

  it('waits for the vet by what a visit found, naming what is open and no more', () => {
    const visits = [seen(1, DAY), seen(2, on(2), LAME)];
    const state = standing(on(3), { visits });
    expect(state.programme).toMatchObject({ kind: 'waiting', for: 'vet' });
    if (state.programme.kind !== 'waiting') return;
    expect(codes(state.programme.reasons)).toEqual(['lameness-trot']);
    expect(state.mayRun).toBe('vet first');
    expect(state.review?.decision).toBe('stop');
    expect(state.due.map(({ what }) => what)).toEqual(['weigh']);
  });

  it('leaves a reason that was set aside in writing out of what it waits for', () => {
    const open = { walkBase: 'failed', signs: ['joint-effusion'] } as const;
    const reason = 'Seen by the vet on Monday, who allows it.';
    const overrides = [{ code: 'sign-joint-effusion', reason }];
    const reasonsOf = (facts: Parameters<typeof seen>[2]) => {
      const { programme } = standing(on(3), { visits: [seen(1, DAY, facts)] });
      return programme.kind === 'waiting' ? codes(programme.reasons) : [];
    };
    expect(reasonsOf(open)).toEqual(['sign-joint-effusion', 'walk-base']);
    expect(reasonsOf({ ...open, overrides })).toEqual(['walk-base']);
  });

  it('of runs waits for the end of walking only; one of walks goes on', () => {
    const visits = [seen(1, DAY, { walkBase: 'failed' })];
    expect(standing(on(3), { visits }).programme).toMatchObject({
      kind: 'waiting',
      for: 'walking',
    });
    const walking = standing(on(3), { visits, plans: [plan({ ramp: walks })] });
    expect(walking.programme.kind).toBe('walking');
    expect(walking.mayRun).toBe('walking only');
  });

  it('is not sent walking by what a follow-up did not look at', () => {
    const visits = [seen(1, DAY), seen(2, on(2), { signsAsked: false })];
    const state = standing(on(3), { visits });
    expect(state).toMatchObject({ mayRun: 'ready to start', programme: { kind: 'running' } });
    expect(codes(state.screening.reasons)).not.toContain('signs-not-asked');
    const without = standing(on(3), { visits, plans: [] });
    expect(without.mayRun).toBe('walking only');
    expect(codes(without.screening.reasons)).toContain('signs-not-asked');
  });

  it.each(STOP_SIGNS)(
    'stops at %s that was told, for the vet, before anything else is said',
    (sign) => {
      const state = standing(on(3), { results: [told(DAY, { signs: [sign] })] });
      expect(state.programme).toMatchObject({ kind: 'stopped', since: on(3) });
      expect(state).toMatchObject({ mayRun: 'vet first', planEndsOn: lastDay });
      expect(state.screening.recommendedStart).toBeNull();
      expect(state.screening.reasons[0]).toMatchObject({
        code: 'review-stop-sign',
        gate: 'vet first',
        unseen: false,
        overriddenBecause: null,
      });
    },
  );

  it('that was stopped stays so since that day, for the reasons given then', () => {
    const plans = [plan({ current: false }), stopped];
    const visits = [seen(1, DAY), seen(2, on(8))];
    const state = standing(on(20), { plans, visits });
    expect(state.programme).toMatchObject({ kind: 'stopped', since: on(8), reasons: STOP });
    expect(state).toMatchObject({ mayRun: 'vet first', planEndsOn: null });
    expect(state.soFar?.planned).toBe(sessions.filter(({ day }) => day < on(8)).length);
  });

  it('without a week is finished where nobody stopped it', () => {
    const review = { decision: 'progress', reasons: [] };
    const over = { ...stopped, review };
    const plans = [plan({ current: false }), over];
    const visits = [seen(1, DAY), seen(2, on(8))];
    expect(standing(on(9), { plans, visits, results: doneBefore(on(8)) }).programme.kind).toBe(
      'finished',
    );
  });

  it('waits for the walk base after a break of over 28 days, after its last day for what is untold', () => {
    const long = buildRamp({ ...request, goal: { continuousMinutes: 60 } });
    const results = doneBefore(on(3));
    const away = standing(on(45), { plans: [plan({ ramp: long })], results });
    expect(away.programme).toMatchObject({ kind: 'waiting', for: 'walk base' });
    expect(away.mayRun).toBe('walking only');
    expect(away.screening).toMatchObject({ recommendedStart: null });
    expect(away.screening.reasons[0]).toMatchObject({ gate: 'walking only' });
    const untold = standing(on(120), { results });
    expect(untold.programme).toMatchObject({ kind: 'waiting', for: 'outings' });
    expect(untold.mayRun).toBe('walking only');
    const missed = sessions.map(({ day }) => told(day, { outcome: 'missed', nextDay: null }));
    expect(standing(on(120), { results: missed }).programme).toMatchObject({ for: 'walk base' });
  });
});

describe('what a review of the plan in force takes', () => {
  const later = plan({ version: 2, madeOn: on(1), visitId: 'visit-2' });

  it('is the last visit, until a version was made at it or since', () => {
    // A sign told at the visit that keeps nobody from running by itself.
    const ill = { wellSince: on(2) };
    const decision = (plans = [plan()]) =>
      codes(
        standing(on(3), { plans, visits: [seen(1, DAY), seen(2, on(2), ill)] }).review!.reasons,
      );
    expect(decision()).toContain('review-illness');
    const before = { ...plan({ current: false }), ramp };
    expect(decision([before, { ...later, madeOn: on(2) }])).not.toContain('review-illness');
    expect(decision([before, { ...later, madeOn: on(3), visitId: null }])).not.toContain(
      'review-illness',
    );
    expect(decision([before, { ...later, madeOn: on(2), visitId: null }])).toContain(
      'review-illness',
    );
  });

  it('is nothing before the plan begins, or of a later day', () => {
    const visits = [seen(1, on(-3))];
    const plans = [plan({ madeOn: on(-3) })];
    expect(standing(on(-1), { plans, visits }).review).toBeNull();
    expect(standing(DAY, { plans, visits }).review).not.toBeNull();
    expect(standing(on(3), { plans: [plan({ madeOn: on(4) })] }).review).toBeNull();
    const ahead = told(sessions[3]!.day, { signs: ['lameness'] });
    expect(standing(on(3), { results: [ahead] }).programme.kind).toBe('running');
  });
});

describe('the ration, the goal and the days that are due', () => {
  it('is fed the latest decision, and says whether it is of the last visit', () => {
    const visits = [seen(1, DAY), seen(2, on(14))];
    const first = decided(DAY, 'visit-1');
    const second = decided(on(14), 'visit-2', 1000);
    const at = (day: string, foodDecisions = [first, second]) =>
      standing(day, { visits, foodDecisions });
    expect(at(on(13), [])).toMatchObject({ ration: null, decidedAtLastVisit: false });
    expect(at(on(13))).toMatchObject({ ration: first, decidedAtLastVisit: true });
    expect(at(on(14))).toMatchObject({ ration: second, decidedAtLastVisit: true });
    expect(at(on(14), [first])).toMatchObject({ ration: first, decidedAtLastVisit: false });
  });

  it('reaches the goal on its day', () => {
    const day = ramp.goalReachedOn!;
    expect(standing(day).goal).toEqual({ day, reached: true });
    expect(standing(sessions.at(-3)!.day).goal).toEqual({ day, reached: false });
    const short: Ramp = {
      ...ramp,
      goalReachedOn: null,
      earliestGoalDay: on(90),
      earliestEventDay: on(99),
    };
    const goal = (of: Ramp) => standing(on(3), { plans: [plan({ ramp: of })] }).goal;
    expect(goal(short)).toEqual({ day: on(90), reached: false });
    const event = { ...short, request: { ...request, eventDay: on(40) } };
    expect(goal(event)).toEqual({ day: on(99), reached: false });
  });

  it('names what is due in order of days: weighing, next and last outing, end of consent', () => {
    const visits = [
      seen(1, DAY, {
        consent: { given: true, vet: 'Dr Example', day: DAY, scope: 'Running', expiryDay: on(10) },
      }),
    ];
    const due = (day: string, results: ToldResult[] = []) =>
      standing(day, { visits, results }).due.map((each) => [each.what, each.day]);
    expect(due(on(9), doneBefore(on(9)))).toEqual([
      ['outing', on(9)],
      ['consent ends', on(10)],
      ['weigh', on(28)],
      ['last outing', lastDay],
    ]);
    expect(due(on(10), doneBefore(on(10))).map(([what]) => what)).toContain('consent ends');
    expect(due(on(11), doneBefore(on(11))).map(([what]) => what)).not.toContain('consent ends');
    // The last outing is told once.
    expect(due(lastDay, doneBefore(lastDay)).filter(([, day]) => day === lastDay)).toEqual([
      ['outing', lastDay],
    ]);
  });
});

describe('a present state', () => {
  it('agrees with itself, whatever was told and found', () => {
    const findings = fc.constantFrom(
      {},
      LAME,
      { walkBase: 'failed' },
      { signsAsked: false },
      { signs: ['cough'] },
    );
    const drawn = fc.record({
      list: tellings,
      signs: fc.array(fc.constantFrom(...STOP_SIGNS), { maxLength: 1 }),
      after: fc.integer({ min: 0, max: 100 }),
      at: fc.integer({ min: 0, max: 60 }),
      found: findings,
      walking: fc.boolean(),
    });
    holds(
      fc.property(drawn, ({ list, signs, after, at, found, walking }) => {
        const results = resultsOf(
          list.map((each, index) => each && (index === 2 ? { ...each, signs } : each)),
        );
        const visits = [seen(1, DAY), seen(2, on(at), found as Parameters<typeof seen>[2])];
        const plans = [plan(walking ? { ramp: walks } : {})];
        const { programme, mayRun, screening, due } = standing(on(after), {
          visits,
          plans,
          results: walking ? [] : results,
        });
        expect(screening.outcome).toBe(mayRun);
        const open = screening.reasons.filter(
          ({ overriddenBecause }) => overriddenBecause === null,
        );
        expect(mayRun === 'vet first').toBe(open.some(({ gate }) => gate === 'vet first'));
        expect(mayRun === 'ready to start').toBe(open.every(({ gate }) => gate === 'note'));
        if (mayRun !== 'ready to start') expect(screening.recommendedStart).toBeNull();
        if (programme.kind === 'stopped') expect(mayRun).toBe('vet first');
        if (programme.kind === 'waiting') expect(mayRun).not.toBe('ready to start');
        if (programme.kind === 'running') expect(mayRun).toBe('ready to start');
        const announces = programme.kind === 'running' || programme.kind === 'walking';
        const outing = due.find(({ what }) => what === 'outing')?.day ?? null;
        expect(outing).toBe(announces ? (programme.next?.day ?? null) : null);
        if (outing !== null) expect(outing >= on(after)).toBe(true);
        const days = due.map(({ day }) => day);
        expect(days).toEqual([...days].sort());
      }),
      { seed: 1, numRuns: 60 },
    );
  });
});
