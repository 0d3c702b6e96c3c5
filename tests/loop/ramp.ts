import { addDays, daysBetween, type IsoDay } from '../../core/day.ts';
import {
  buildRamp,
  reviewRamp,
  START_LEVELS,
  type Ramp,
  type SessionResult,
  type StartLevel,
} from '../../core/training.ts';
import { random, type Random } from '../calibration/random.ts';
import { markdownTable } from '../support/readmeTable.ts';

// Lives of dogs and owners: what is missed, shortened, held back by heat, holidays, stiffness,
// illness. All of it invented, and the same for both plans; a life is one draw of the seed.

const GOAL_MIN = 30;
const MOST_DAYS = 7 * 104;
const FIRST: Readonly<Record<StartLevel, number>> = {
  conditioned: 6,
  unconditioned: 4,
  'post-injury': 2,
};

interface Life {
  readonly start: StartLevel;
  readonly sessionsPerWeek: number;
  readonly startDay: IsoDay;
  readonly away: ReadonlySet<IsoDay>;
  readonly reviewEvery: number;
  /** What comes of a day's session, the same whatever was planned. */
  readonly told: (day: IsoDay, minutes: number) => SessionResult;
}

interface Run {
  readonly day: IsoDay;
  readonly minutes: number;
}

/** What one plan made of one life. */
interface Outcome {
  /** Weeks to the first run of 30 min; null where it was not reached in two years. */
  readonly weeks: number | null;
  readonly runs: readonly Run[];
  /** Plans drawn up that never reach the goal, stops apart. */
  readonly withoutGoal: number;
}

export interface RampRow {
  readonly reached: number;
  readonly medianWeeks: number;
  readonly overCap: number;
  readonly longestStall: number;
  readonly withoutGoal: number;
}

function lifeOf(seed: number): Life {
  const source = random(seed * 104_729 + 7);
  const draw = (): number => source.uniform(0, 1);
  const startDay = addDays('2026-01-05', Math.floor(draw() * 52) * 7);
  const away = new Set<IsoDay>();
  for (let from = 30; from < MOST_DAYS; from += 60 + Math.floor(draw() * 120)) {
    const days = 2 + Math.floor(draw() * 14);
    for (let day = 0; day < days; day += 1) away.add(addDays(startDay, from + day));
  }
  const salt = Math.floor(draw() * 1e6);
  return {
    start: START_LEVELS[Math.floor(draw() * START_LEVELS.length)]!,
    sessionsPerWeek: 2 + Math.floor(draw() * 2),
    startDay,
    away,
    reviewEvery: 14 + 7 * Math.floor(draw() * 2),
    told: (day, minutes) => toldOf(day, minutes, away, random(salt + daysBetween(startDay, day))),
  };
}

/** Summer days hold one run in four back, to half its minutes. */
function toldOf(
  day: IsoDay,
  minutes: number,
  away: ReadonlySet<IsoDay>,
  draw: Random,
): SessionResult {
  if (away.has(day)) return { day, outcome: 'missed' };
  const month = Number(day.slice(5, 7));
  const [chance, stiff] = [draw.uniform(0, 1), draw.uniform(0, 1)];
  if (month >= 6 && month <= 8 && chance < 0.25) {
    return { day, outcome: 'held', runMinutes: Math.floor(minutes / 2), nextDay: 'normal' };
  }
  if (chance < 0.33) return { day, outcome: 'missed' };
  const nextDay =
    stiff < 0.006
      ? 'stiffness over 24 h'
      : stiff < 0.03
        ? 'mild stiffness gone within 24 h'
        : 'normal';
  if (chance < 0.38) {
    return { day, outcome: 'shortened', runMinutes: Math.floor(minutes / 2), nextDay };
  }
  return { day, outcome: 'done', nextDay };
}

const minutesOf = ({ outcome, runMinutes }: SessionResult, planned: number): number =>
  outcome === 'missed' ? 0 : (runMinutes ?? (outcome === 'done' ? planned : 0));

/** The life under core's plan, reviewed every two or three weeks. */
export function underCore(life: Life): Outcome {
  const { start, sessionsPerWeek, startDay } = life;
  let ramp: Ramp = buildRamp({
    startDay,
    start,
    sessionsPerWeek,
    goal: { continuousMinutes: GOAL_MIN },
  });
  const told = new Map<IsoDay, SessionResult>();
  const runs: Run[] = [];
  let withoutGoal = Number(ramp.goalReachedOn === null);
  for (let at = life.reviewEvery; at < MOST_DAYS; at += life.reviewEvery) {
    const day = addDays(startDay, at);
    const results: SessionResult[] = [];
    for (const session of ramp.weeks.flatMap(({ sessions }) => sessions)) {
      if (session.day >= day) break;
      const known = told.get(session.day);
      const result = known ?? life.told(session.day, session.runMinutes);
      results.push(result);
      if (known !== undefined) continue;
      told.set(session.day, result);
      const minutes = minutesOf(result, session.runMinutes);
      if (minutes > 0) runs.push({ day: session.day, minutes });
      if (session.kind === 'continuous' && minutes >= GOAL_MIN) {
        return { weeks: daysBetween(startDay, session.day) / 7, runs, withoutGoal };
      }
    }
    const stopped = ramp.weeks.length === 0;
    // A stopped dog is seen and cleared by the vet before the next visit.
    const cleared = stopped ? { clearedByVetOn: day } : {};
    const review = reviewRamp({ ramp, day, results, ...cleared });
    ramp = review.ramp;
    if (review.decision !== 'stop' && ramp.goalReachedOn === null) withoutGoal += 1;
  }
  return { weeks: null, runs, withoutGoal };
}

/** The same life under a printed table: 10 % more every week, whatever happens. */
export function underTable(life: Life): Outcome {
  const runs: Run[] = [];
  const gaps = life.sessionsPerWeek === 3 ? [0, 2, 4] : [0, 3];
  for (let week = 0; week < MOST_DAYS / 7; week += 1) {
    const planned = Math.min(GOAL_MIN, FIRST[life.start] * 1.1 ** week);
    for (const gap of gaps) {
      const day = addDays(life.startDay, week * 7 + gap);
      const minutes = minutesOf(life.told(day, planned), planned);
      if (minutes > 0) runs.push({ day, minutes });
      if (minutes >= GOAL_MIN) return { weeks: week + gap / 7, runs, withoutGoal: 0 };
    }
  }
  return { weeks: null, runs, withoutGoal: 0 };
}

/** Runs over 10 % or 2 min more than the longest of the 30 days before, the first apart. */
function overCap(runs: readonly Run[], first: number): number {
  return runs.filter(({ day, minutes }) => {
    const before = runs.filter((run) => run.day < day && daysBetween(run.day, day) <= 30);
    const longest = Math.max(0, ...before.map((run) => run.minutes));
    return minutes > Math.max(first, longest * 1.1, longest + 2) + 1e-9;
  }).length;
}

/** The longest time without a new longest run, weeks. */
function stall(runs: readonly Run[]): number {
  let [longest, since, most] = [0, runs[0]?.day ?? '', 0];
  for (const { day, minutes } of runs) {
    if (minutes <= longest) continue;
    most = Math.max(most, daysBetween(since, day) / 7);
    [longest, since] = [minutes, day];
  }
  return most;
}

export function playLives(under: (life: Life) => Outcome, lives: number, seed: number): RampRow {
  const all = Array.from({ length: lives }, (_, index) => {
    const life = lifeOf(seed * 1_000_003 + index);
    return { life, outcome: under(life) };
  });
  const weeks = all.flatMap(({ outcome }) => outcome.weeks ?? []).sort((a, b) => a - b);
  const sum = (of: (entry: (typeof all)[number]) => number): number =>
    all.reduce((total, entry) => total + of(entry), 0);
  const sessions = sum(({ outcome }) => outcome.runs.length);
  const over = sum(({ life, outcome }) => overCap(outcome.runs, FIRST[life.start]));
  return {
    reached: (100 * weeks.length) / lives,
    medianWeeks: weeks[Math.floor(weeks.length / 2)] ?? NaN,
    overCap: (100 * over) / sessions,
    longestStall: Math.max(...all.map(({ outcome }) => stall(outcome.runs))),
    withoutGoal: sum(({ outcome }) => outcome.withoutGoal),
  };
}

/** The table of the README: the same lives under core's plan and under a table of 10 % a week. */
export function rampTable(lives: number, seed: number): string {
  const heads = [
    'plan',
    'reached 30 min in two years, %',
    'weeks to it, median',
    'sessions over the 30-day cap, %',
    'longest stall, weeks',
    'plans without a goal',
  ];
  const rows = (
    [
      ['core', underCore],
      ['10 % a week', underTable],
    ] as const
  ).map(([name, under]) => {
    const row = playLives(under, lives, seed);
    return [
      name,
      row.reached.toFixed(1),
      row.medianWeeks.toFixed(1),
      row.overCap.toFixed(2),
      row.longestStall.toFixed(1),
      String(row.withoutGoal),
    ];
  });
  return markdownTable(heads, rows);
}
