import { describe, expect, it } from 'vitest';
import { buildRamp, plannedSessions, plannedWeeks, type Ramp } from '../../../core/index.ts';
import type { Plan } from '../../../electron/contract/contract.ts';
import { answerOf, resultText } from '../../../renderer/plans/sessionKeys.ts';
import {
  askedOf,
  doneByWeek,
  minutesDone,
  outcomeOnly,
  toldSessions,
} from '../../../renderer/plans/timeline.ts';

const rampFrom = (startDay: string): Ramp =>
  buildRamp({
    startDay,
    start: 'unconditioned',
    sessionsPerWeek: 3,
    goal: { continuousMinutes: 20 },
  });
const planOf = (version: number, ramp: Ramp): Plan => ({
  id: String(version),
  dogId: 'd',
  visitId: null,
  version,
  madeOn: ramp.request.startDay,
  current: false,
  origin: 'built',
  request: {} as Plan['request'],
  ramp,
  review: null,
  keptBreaches: [],
  note: '',
  author: '',
  createdAt: '',
});
const first = rampFrom('2025-01-06');
const second = rampFrom('2025-01-23');

describe('the sessions over all versions', () => {
  const plans = [planOf(1, first), planOf(2, second)];
  const days = plannedSessions(plans).map(({ day }) => day);

  it('are those of each version until the next one begins', () => {
    const before = first.weeks.flatMap((week) => week.sessions).filter((s) => s.day < '2025-01-23');
    const after = second.weeks.flatMap((week) => week.sessions);
    expect(days).toEqual([...before, ...after].map(({ day }) => day));
  });
  it('are no longer planned after a stop', () => {
    const stopped = { ...planOf(3, { ...second, weeks: [] }), madeOn: '2025-01-20' };
    expect(
      plannedSessions([planOf(1, first), stopped]).every(({ day }) => day < '2025-01-20'),
    ).toBe(true);
  });
  it('count only what is left of a week that was broken off', () => {
    const cut = plannedWeeks(plans).find(({ startDay }) => startDay === '2025-01-20');
    const kept = cut?.sessions.reduce((sum, { runMinutes }) => sum + runMinutes, 0);
    expect(cut?.sessions.every(({ day }) => day < '2025-01-23')).toBe(true);
    expect(cut?.runMinutes).toBe(kept);
  });
});

describe('what is asked', () => {
  const session = first.weeks[0]!.sessions[0]!;
  const done = outcomeOnly(session.day, 'done');

  it('is how it went, from the day itself on', () => {
    expect(askedOf({ session, result: null }, session.day)).toBe('outcome');
    expect(askedOf({ session, result: null }, '2025-01-01')).toBeNull();
  });
  it('is the next day, once there was one, and not of a session that was missed', () => {
    expect(askedOf({ session, result: done }, session.day)).toBeNull();
    expect(askedOf({ session, result: done }, '2025-02-01')).toBe('next day');
    expect(askedOf({ session, result: { ...done, nextDay: 'normal' } }, '2025-02-01')).toBeNull();
    const missed = outcomeOnly(session.day, 'missed');
    expect(askedOf({ session, result: missed }, '2025-02-01')).toBeNull();
  });
  it('reaches back two months, further only for what was told', () => {
    const sessions = first.weeks.flatMap((week) => week.sessions);
    const late = toldSessions(sessions, [done], '2025-09-01');
    expect(late.map((entry) => entry.session.day)).toEqual([session.day]);
  });
});

describe('an answer by one key', () => {
  const session = first.weeks[0]!.sessions[0]!;
  it('is an outcome first, then a next day', () => {
    const done = answerOf({ session, result: null }, 'outcome', 'd');
    expect(done).toEqual(outcomeOnly(session.day, 'done'));
    expect(answerOf({ session, result: done }, 'next day', '2')?.nextDay).toBe(
      'mild stiffness gone within 24 h',
    );
  });
  it('is nothing for a key that is not asked for', () => {
    expect(answerOf({ session, result: null }, 'outcome', '1')).toBeNull();
    expect(answerOf({ session, result: null }, 'next day', '1')).toBeNull();
    expect(answerOf({ session, result: outcomeOnly(session.day, 'done') }, null, 'd')).toBeNull();
  });
  it('reads as words', () => {
    const result = { ...outcomeOnly('2025-01-06', 'shortened'), runMinutes: 2 };
    expect(resultText({ ...result, signs: ['lameness'] })).toBe('Shortened at 2\u00a0min, lame');
  });
});

describe('minutes done', () => {
  const [a, b] = first.weeks[0]!.sessions;
  it('are those planned when done, none when missed, unknown when shortened without a time', () => {
    expect(minutesDone(a!, outcomeOnly(a!.day, 'done'))).toBe(a!.runMinutes);
    expect(minutesDone(a!, outcomeOnly(a!.day, 'missed'))).toBe(0);
    expect(minutesDone(a!, outcomeOnly(a!.day, 'shortened'))).toBeNull();
  });
  it('add up over the week', () => {
    const results = [
      outcomeOnly(a!.day, 'done'),
      { ...outcomeOnly(b!.day, 'shortened'), runMinutes: 1.5 },
    ];
    expect(doneByWeek(first.weeks, results).get('2025-01-06')).toBe(a!.runMinutes + 1.5);
  });
});
