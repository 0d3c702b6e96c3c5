import { EPSILON, sessionCap, weekCap } from './load.ts';
import { firstBouts } from './path.ts';
import type { Setting } from './request.ts';
import {
  boutSession,
  continuousSession,
  continuousWeek,
  longestOf,
  minutesOf,
  withEfforts,
  type SessionPlan,
} from './sessions.ts';
import { Frontier, type Week } from './frontier.ts';

/** One building week of an undisturbed plan. */
export interface Rung {
  readonly sessions: readonly SessionPlan[];
  readonly minutes: number;
  /** Run-minutes of its longest session. */
  readonly longest: number;
  /** Where its last session stands on the bout path; the path's length = continuous. */
  readonly stepIndex: number;
}

/**
 * The building weeks from the start to the goal, as few as the rules allow. A plan climbs it a
 * rung a week; life holds it on a rung or takes it down some. So more days off can never mean more.
 */
export interface Ladder {
  readonly rungs: readonly Rung[];
  /** False where the rules' values leave no way to the goal. */
  readonly reachesGoal: boolean;
}

/** A rung by its place; the first or last one for places below or above the ladder. */
export const rungAt = ({ rungs }: Ladder, place: number): Rung =>
  rungs[Math.min(Math.max(0, place), rungs.length - 1)]!;

/** Building weeks a ladder has at most; three years are no plan any more (D). */
const MOST_RUNGS = 156;
/** So many weeks without getting farther mean that the rules leave no way. */
const STALL_RUNGS = 52;
/** Sessions a week whose ladder bounds that of fewer ones. */
const USUAL_SESSIONS = 3;
/** Sessions as alike as this, where that costs no week (D). */
const ALIKE_PERCENT = 75;

const kept = new Map<string, Ladder>();
/** Enough for a day of typing at one desk. */
const MOST_KEPT = 256;

/**
 * The shortest ladder for so many sessions a week. Exact: every week that keeps the rules is
 * followed, but for those that another one covers (`Frontier`).
 *
 * Fewer sessions a week never climb faster than three: the ladder of three bounds theirs.
 */
export function ladderOf(setting: Setting, sessions: number): Ladder {
  if (setting.programme === 'walking') return walkingLadder(setting, sessions);
  const { start, rules, capPercent, goal } = setting;
  const near = Math.min(goal, SEARCHED_TO_MIN);
  const key = JSON.stringify([start, rules, capPercent, near, sessions]);
  const known = kept.get(key) ?? mostAlike({ ...setting, goal: near }, sessions);
  kept.set(key, known);
  if (kept.size > MOST_KEPT) kept.delete(kept.keys().next().value!);
  return extended(setting, sessions, known);
}

/**
 * Up to this run without a break the ladder is searched for; beyond it there is one way on, the
 * longest run that session and week allow.
 */
const SEARCHED_TO_MIN = 30;

/** Goes on from a ladder's last week by the longest runs that the rules allow. */
function extended(setting: Setting, sessions: number, { rungs, reachesGoal }: Ladder): Ladder {
  const list = [...rungs];
  if (!reachesGoal) return { rungs, reachesGoal };
  while (list.at(-1)!.longest < setting.goal - EPSILON && list.length < MOST_RUNGS) {
    const peak = Math.max(...list.map(({ minutes }) => minutes));
    const rung = longestAfter(setting, sessions, list.at(-1)!, peak);
    const last = list.at(-1)!;
    if (rung === null || (rung.longest <= last.longest && rung.minutes <= peak + EPSILON)) break;
    list.push(rung);
  }
  return { rungs: list, reachesGoal: list.at(-1)!.longest >= setting.goal - EPSILON };
}

function longestAfter(
  { rules, capPercent, goal, path }: Setting,
  sessions: number,
  last: Rung,
  peak: number,
): Rung | null {
  const top = Math.floor(
    Math.min(Math.ceil(goal - EPSILON), sessionCap(last.longest, rules)) + EPSILON,
  );
  for (let longest = top; longest >= last.longest; longest -= 1) {
    const week = fullestWithin(
      continuousWeek(longest, sessions, rules),
      weekCap(peak, capPercent, rules),
    );
    if (week === null) continue;
    const plans = withEfforts(week.map(continuousSession));
    return { sessions: plans, minutes: minutesOf(plans), longest, stepIndex: path.length };
  }
  return null;
}

function mostAlike(setting: Setting, sessions: number): Ladder {
  const shortest = search(setting, sessions);
  const leastSharePercent = Math.max(ALIKE_PERCENT, setting.rules.leastSharePercent);
  const rules = { ...setting.rules, leastSharePercent };
  const alike = search({ ...setting, rules }, sessions);
  const asShort = alike.rungs.length === shortest.rungs.length;
  return asShort && alike.reachesGoal ? alike : shortest;
}

function walkingLadder({ goal, walkMinutesNow, rules }: Setting, sessions: number): Ladder {
  const rungs: Rung[] = [];
  for (let minutes = Math.min(walkMinutesNow, goal); ; minutes += rules.walkStepMinutes) {
    const longest = Math.min(minutes, goal);
    const walk: SessionPlan = { ...continuousSession(longest), kind: 'walk' };
    const plans = Array.from({ length: sessions }, () => walk);
    rungs.push({ sessions: plans, minutes: longest * sessions, longest, stepIndex: 0 });
    if (longest >= goal) return { rungs, reachesGoal: true };
  }
}

function search(setting: Setting, sessions: number): Ladder {
  const bound = sessions < USUAL_SESSIONS ? boundOf(ladderOf(setting, USUAL_SESSIONS)) : [];
  let level: readonly Week[] = [firstWeek(setting, sessions)];
  let best = level[0]!;
  let progressed = 0;
  for (let index = 1; index < MOST_RUNGS; index += 1) {
    const next = new Frontier(setting.rules.sessionsPerStep, bound[index]);
    for (const week of level) addFollowing(setting, sessions, week, next);
    level = next.weeks();
    const met = level.filter((week) => meetsGoal(setting, week));
    if (met.length > 0) {
      const fullest = met.reduce((a, b) => (b.minutes > a.minutes ? b : a));
      return { rungs: rungsTo(setting, fullest), reachesGoal: true };
    }
    const farthest = level.reduce(farther, best);
    if (farthest !== best) progressed = index;
    if (index - progressed >= STALL_RUNGS) break;
    best = farthest;
  }
  return { rungs: rungsTo(setting, best), reachesGoal: false };
}

/** The farthest that a ladder has come by each of its rungs. */
function boundOf({ rungs }: Ladder): { longest: number; step: number }[] {
  let longest = 0;
  return rungs.map((rung) => {
    longest = Math.max(longest, rung.longest);
    return { longest, step: rung.stepIndex };
  });
}

function farther(a: Week, b: Week): Week {
  if (a.step !== b.step) return b.step > a.step ? b : a;
  if (a.longest !== b.longest) return b.longest > a.longest ? b : a;
  return b.minutes > a.minutes + EPSILON ? b : a;
}

const meetsGoal = ({ goal, path }: Setting, { steps, counts }: Week): boolean =>
  steps.some((step, index) => step === path.length && counts[index]! >= goal - EPSILON);

function rungsTo({ path }: Setting, week: Week): Rung[] {
  const rungs: Rung[] = [];
  for (let at: Week | null = week; at !== null; at = at.parent) {
    const { steps, counts } = at;
    const plans = steps.map((step, index) => {
      const bout = path[step];
      const count = counts[index]!;
      return bout === undefined ? continuousSession(count) : boutSession(bout, count);
    });
    const sessions = withEfforts(plans);
    const [minutes, longest] = [minutesOf(sessions), longestOf(sessions)];
    rungs.unshift({ sessions, minutes, longest, stepIndex: at.step });
  }
  return rungs;
}

function firstWeek({ start, path, rules }: Setting, sessions: number): Week {
  const bouts = firstBouts(start, rules);
  const each = bouts * path[0]!.runMin;
  const minutes = each * sessions;
  return {
    steps: Array.from({ length: sessions }, () => 0),
    counts: Array.from({ length: sessions }, () => bouts),
    step: 0,
    clean: sessions,
    minutes,
    longest: each,
    least: each,
    peak: minutes,
    fullest: each,
    total: minutes,
    parent: null,
  };
}

/** Adds every week that may follow on another to the next level. */
function addFollowing(setting: Setting, count: number, week: Week, next: Frontier): void {
  const { path, rules } = setting;
  const last = path.length - 1;
  const mayRun = week.step > last || (week.step === last && week.clean >= rules.sessionsPerStep);
  if (mayRun) addContinuous(setting, count, week, next);
  if (week.step <= last) new Drafting(setting, count, week, next).from(0, week.step, week.clean);
}

/** Whole weeks without a break; the first is no longer than the fullest session of bouts was. */
function addContinuous(setting: Setting, count: number, week: Week, next: Frontier): void {
  const { rules, path, goal, capPercent } = setting;
  const first = week.step < path.length;
  const cap = Math.min(sessionCap(week.longest, rules), first ? week.fullest : Infinity);
  const { leastContinuousMinutes: least } = rules;
  const top = Math.max(Math.floor(Math.min(Math.ceil(goal - EPSILON), cap) + EPSILON), least);
  const steps = Array.from({ length: count }, () => path.length);
  const limit = weekCap(week.peak, capPercent, rules);
  for (let longest = top; longest >= (first ? least : week.longest); longest -= 1) {
    const counts = fullestWithin(continuousWeek(longest, count, rules), limit);
    if (counts !== null) next.add(week, { steps, counts, minutes: counts, clean: count, bouts: 0 });
  }
}

/** The week as it is, or with a minute less in as many of its other runs as it takes to fit. */
function fullestWithin(week: readonly number[], limit: number): readonly number[] | null {
  for (let fewer = 0; fewer < week.length; fewer += 1) {
    const shorter = week.map((minutes, index) => minutes - (index >= week.length - fewer ? 1 : 0));
    if (shorter.reduce((a, b) => a + b, 0) <= limit + EPSILON) return shorter;
  }
  return null;
}

/** Puts weeks of bouts together, session by session; their ends may run without a break. */
class Drafting {
  readonly #steps: number[] = [];
  readonly #counts: number[] = [];
  readonly #minutes: number[] = [];
  readonly #setting: Setting;
  readonly #count: number;
  readonly #week: Week;
  readonly #next: Frontier;
  readonly #limit: number;
  readonly #share: number;

  constructor(setting: Setting, count: number, week: Week, next: Frontier) {
    this.#setting = setting;
    this.#count = count;
    this.#week = week;
    this.#next = next;
    this.#limit = weekCap(week.peak, setting.capPercent, setting.rules) + EPSILON;
    this.#share = setting.rules.leastSharePercent / 100;
  }

  /** The sessions from `at` on: on the present step, or on the one after once that is done. */
  from(at: number, step: number, clean: number): void {
    if (at === this.#count) {
      const [steps, counts, minutes] = [this.#steps, this.#counts, this.#minutes];
      const last = this.#setting.path.length;
      const bouts = Math.max(0, ...minutes.filter((_, index) => steps[index]! < last));
      this.#next.add(this.#week, { steps, counts, minutes, clean, bouts });
      return;
    }
    const { path, rules } = this.#setting;
    this.#on(at, step, clean + 1);
    if (step < path.length && clean >= rules.sessionsPerStep) {
      this.#on(at, step + 1, 1);
    }
  }

  #on(at: number, step: number, clean: number): void {
    const { path } = this.#setting;
    const bout = path[step];
    const minutes = this.#minutes.slice(0, at);
    const longest = Math.max(this.#week.longest, ...minutes);
    const cap = sessionCap(longest, this.#setting.rules) + EPSILON;
    const left = this.#limit - minutes.reduce((a, b) => a + b, 0);
    const [low, high] = [Math.min(Infinity, ...minutes), Math.max(0, ...minutes)];
    for (const count of bout === undefined ? this.#runs(at, cap) : this.#bouts(at, step)) {
      const each = bout === undefined ? count : count * bout.runMin;
      if (each > cap || each > left || low < each * this.#share - EPSILON) break;
      if (each < high * this.#share - EPSILON) continue;
      this.#steps[at] = step;
      this.#counts[at] = count;
      this.#minutes[at] = each;
      this.from(at + 1, step, clean);
    }
  }

  /** On one step a week's sessions do not get shorter. */
  #bouts(at: number, step: number): number[] {
    const { boutsPerSession, mostBouts } = this.#setting.rules;
    const same = at > 0 && this.#steps[at - 1] === step;
    const least = Math.max(boutsPerSession, same ? this.#counts[at - 1]! : 0);
    return Array.from({ length: Math.max(0, mostBouts - least + 1) }, (_, index) => least + index);
  }

  /** The first runs without a break, alike, no longer than the fullest session of bouts. */
  #runs(at: number, cap: number): number[] {
    const { path, rules, goal } = this.#setting;
    if (this.#steps[at - 1] === path.length) return [this.#counts[at - 1]!];
    const fullest = Math.max(this.#week.fullest, ...this.#minutes.slice(0, at));
    const most = Math.min(fullest, rules.equalUntilMinutes, Math.ceil(goal - EPSILON), cap);
    return [Math.max(rules.leastContinuousMinutes, Math.floor(most))];
  }
}
