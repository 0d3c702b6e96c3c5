import { describe, expect, it } from 'vitest';
import { asResult, plannedSessions, reviewRamp, type RampSession } from '../../../core/index.ts';
import PlanPage from '../../../renderer/pages/PlanPage.vue';
import { isUnplanned, runDaysOf } from '../../../renderer/runs/runDays.ts';
import { doneByWeek, outcomeOnly } from '../../../renderer/plans/timeline.ts';
import type { OutingRead } from '../../../electron/contract/calls/runs.ts';
import { openOwn } from '../../service/support/desk.ts';
import { dogOf, seenWithPlan } from '../../service/support/records.ts';
import { comesTrue, deskClient, mountAtDesk, press, shows } from '../support/atDesk.ts';
import '../support/charts.ts';

async function planned() {
  const desk = await openOwn();
  const { id: dogId } = await dogOf(desk, 'Dana Owner', 'Rusk');
  const { plan } = await seenWithPlan(desk, dogId, '2026-03-02');
  desk.setDay('2026-03-20');
  return { desk, dogId, plan: plan!, sessions: plannedSessions([plan!]) };
}

/** An outing with one run of so many minutes, as a track tells it. */
function outingOf(day: string, minutes: number): OutingRead {
  const seconds = minutes * 60;
  const distanceM = seconds * 2.5;
  return {
    day,
    startsAt: '07:30',
    speeds: { everyS: 60, mps: Array.from({ length: minutes }, () => 2.5) },
    outing: {
      seconds,
      movingSeconds: seconds,
      distanceKm: distanceM / 1000,
      runKm: distanceM / 1000,
      climbM: 40,
      bouts: [{ kind: 'run', fromS: 0, seconds, distanceM }],
      runMinutes: minutes,
      longestRunMinutes: minutes,
      runSpeedMps: 2.5,
      splitMps: 2,
      gapSeconds: 0,
      droppedPoints: 0,
    },
  };
}

const mild = 'mild stiffness gone within 24 h' as const;

/** An outing run as planned. */
function outingInBouts({ day, repeats, runMin, walkMin, runMinutes }: RampSession): OutingRead {
  const read = outingOf(day, runMinutes);
  const bouts = Array.from({ length: repeats }, (_, at) => ({
    kind: 'run' as const,
    fromS: at * (runMin + walkMin) * 60,
    seconds: runMin * 60,
    distanceM: runMin * 150,
  }));
  return { ...read, outing: { ...read.outing, bouts, longestRunMinutes: runMin } };
}

describe('tracks of a day', () => {
  it('are added up, keep what was told of the next day, and correct the rest', async () => {
    const { sessions } = await planned();
    const { day } = sessions[0]!;
    const told = { ...outcomeOnly(day, 'done'), nextDay: 'normal', note: 'wet' } as const;
    const [run] = runDaysOf([outingOf(day, 2), outingOf(day, 1)], sessions, [
      { ...told, signs: [] },
    ]);
    expect(run!.planned).toEqual(sessions[0]);
    expect(run!.proposed).toMatchObject({
      nextDay: 'normal',
      note: 'wet',
      runMinutes: 3,
      longestRunMinutes: 2,
      runKm: 0.45,
      climbedM: 80,
      outcome: 'shortened',
    });
  });

  it('leave the plan where ticks would: bouts of an outing count together for the cap', async () => {
    const { plan } = await planned();
    const due = plan.ramp.weeks.slice(0, 4).flatMap((week) => week.sessions);
    const [tracked] = runDaysOf([outingInBouts(due[0]!)], due, []);
    expect(tracked!.proposed).toMatchObject({
      outcome: 'done',
      longestRunMinutes: due[0]!.runMinutes,
    });
    const told = (byTrack: boolean) =>
      due.map((session, at) => ({
        ...outcomeOnly(session.day, 'done'),
        ...(byTrack ? runDaysOf([outingInBouts(session)], due, [])[0]!.proposed : {}),
        nextDay: at === due.length - 1 ? mild : ('normal' as const),
        runMinutes: session.runMinutes,
      }));
    const [ticked, read] = [told(false), told(true)].map(
      (results) => reviewRamp({ ramp: plan.ramp, results: results.map(asResult) }).ramp,
    );
    expect(read!.goalReachedOn).toBe(ticked!.goalReachedOn);
  });

  it('that was not planned is a run of its own, and a load of its week', async () => {
    const { plan, sessions } = await planned();
    const day = '2026-03-08';
    expect(sessions.some((session) => session.day === day)).toBe(false);
    const [run] = runDaysOf([outingOf(day, 12)], sessions, []);
    expect(run).toMatchObject({ planned: null, proposed: { outcome: 'done', runMinutes: 12 } });
    expect(isUnplanned(run!.proposed, sessions)).toBe(true);
    expect([...doneByWeek(plan.ramp.weeks, [run!.proposed]).values()]).toEqual([12]);
  });
});

describe('a table that came back', () => {
  it('is looked at row by row and kept as a whole', async () => {
    const { desk, dogId, sessions } = await planned();
    const [first, second] = sessions;
    const rows = [`${first!.day},x,yes,,1,wet`, `${second!.day},x,maybe,,,`];
    let content = ['Day,What,Done,Minutes,Next,Notes', ...rows].join('\n');
    const client = deskClient(desk, () => ({ name: 'runs.csv', content }));
    const { wrapper } = await mountAtDesk(PlanPage, client, { dogId });
    await shows(wrapper, 'Tracks and tables that came back');
    await press(wrapper, 'Choose a track or table…');
    await shows(wrapper, /2 rows, 1 refused.*Line 3.*Done must be yes, partly, no or held back/s);
    expect(wrapper.text()).not.toContain('Keep 1 result');
    content = content.replace('maybe', 'partly');
    await press(wrapper, 'Choose a track or table…');
    await shows(wrapper, '2 rows, 0 refused');
    await press(wrapper, 'Keep 2 results');
    await comesTrue(async () => {
      const { sessions: kept } = await desk.ok('dogs/file', { dogId });
      expect(kept).toMatchObject([
        { day: first!.day, outcome: 'done', nextDay: 'normal', note: 'wet' },
        { day: second!.day, outcome: 'shortened' },
      ]);
    });
  });
});
