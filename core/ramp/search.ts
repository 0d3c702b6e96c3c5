import { EPSILON } from './load.ts';
import type { Setting } from './request.ts';
import { isReviewed, type Rhythm, type Slot } from './slots.ts';
import {
  afterBuilding,
  afterGiven,
  afterReviewed,
  buildChoices,
  continuousOf,
  firstChoice,
  firstState,
  FRESH,
  givenChoice,
  isGiven,
  limitOf,
  startsAnew,
  type Choice,
  type RampState,
} from './state.ts';

/** What stays the same while a plan is searched for. */
export interface Search {
  readonly setting: Setting;
  readonly rhythm: Rhythm;
  readonly slots: readonly Slot[];
  /** Weeks in which the goal can be met; those after it are easy. */
  readonly deadline: number;
}

/** A week with its load. */
export interface FilledWeek {
  readonly slot: Slot;
  readonly choice: Choice | null;
  /** The most run-minutes the rules allowed. */
  readonly cap: number;
  readonly after: RampState;
}

interface Option {
  readonly choice: Choice | null;
  readonly cap: number;
  readonly after: RampState;
}

/** Every way to fill the week that can matter: for each step, as much as the week holds. */
function optionsOf(search: Search, state: RampState, index: number): Option[] {
  const { setting, rhythm, slots } = search;
  const slot = slots[index]!;
  const count = slot.days.length;
  if (count === 0) return [{ choice: null, cap: 0, after: state }];
  const reviewed = isReviewed(setting, slots, index);
  const cap = limitOf(setting, state, slot, reviewed);
  if (reviewed) return [reviewedOption(search, state, cap, count)];
  if (startsAnew(state, slot)) {
    const choice = firstChoice(setting, count);
    return [{ choice, cap, after: afterBuilding(setting, FRESH, choice, count) }];
  }
  if (isGiven(state, slot)) {
    const choice = givenChoice(setting, rhythm, state, cap, count);
    return [{ choice, cap, after: afterGiven(state, slot, choice.minutes) }];
  }
  return buildChoices(setting, rhythm, state, slot, cap).map((choice) => ({
    choice,
    cap,
    after: afterBuilding(setting, state, choice, count),
  }));
}

/** The first week of a reviewed plan holds what the review set. */
function reviewedOption(search: Search, state: RampState, cap: number, count: number): Option {
  const { setting, rhythm } = search;
  const choice = givenChoice(setting, rhythm, state, cap, count);
  return { choice, cap, after: afterReviewed(setting, state, choice, count) };
}

/** True where `a` can do whatever `b` can. */
function dominates(a: RampState, b: RampState): boolean {
  return (
    a.stepIndex === b.stepIndex &&
    a.peak >= b.peak - EPSILON &&
    a.previous >= b.previous - EPSILON &&
    a.sessionsOnStep >= b.sessionsOnStep &&
    a.longest >= b.longest - EPSILON &&
    a.fullest >= b.fullest - EPSILON
  );
}

function addUndominated(states: RampState[], state: RampState): RampState[] {
  if (states.some((other) => dominates(other, state))) return states;
  return [...states.filter((other) => !dominates(state, other)), state];
}

const GOAL_SCORE = 1e9;

/**
 * The best that can still come of `state` at the week `from`: the sooner the goal is met the
 * better; where it is not met by the deadline, the longest run, or how far on the bout path.
 *
 * Exact over the choices the rules leave: a higher earlier week never forbids what a lower one
 * allows, so that for each step only the fullest weeks need to be followed.
 */
function bestFrom(search: Search, state: RampState, from: number): number {
  const { goal } = search.setting;
  let states = [state];
  for (let index = from; index < search.deadline; index += 1) {
    let next: RampState[] = [];
    for (const before of states) {
      for (const { after } of optionsOf(search, before, index)) {
        if (after.longest >= goal - EPSILON) return GOAL_SCORE - index;
        next = addUndominated(next, after);
      }
    }
    states = next;
  }
  return Math.max(...states.map(endScore));
}

/** Half minutes of the longest run, or the place on the bout path. */
function endScore({ longest, stepIndex, peak }: RampState): number {
  if (longest > 0) return 1e6 + Math.floor(longest * 2 + EPSILON);
  return stepIndex * 1e3 + Math.min(peak, 999);
}

/** Longest runs in whole, even or half minutes read better; taken only where they cost no time. */
const GRIDS_MIN = [2, 1, 0.5] as const;

function rounded(search: Search, state: RampState, index: number, exact: Option): Option[] {
  const { setting, slots } = search;
  const { choice, cap } = exact;
  if (choice?.kind !== 'continuous' || choice.amount >= setting.goal - EPSILON) return [];
  if (isGiven(state, slots[index]!)) return [];
  const count = slots[index]!.days.length;
  return GRIDS_MIN.map((grid) => Math.floor(choice.amount / grid + EPSILON) * grid)
    .filter((longest) => longest > state.longest + EPSILON && longest < choice.amount)
    .map((longest) => {
      const even = continuousOf(setting, count, longest);
      return { choice: even, cap, after: afterBuilding(setting, state, even, count) };
    });
}

/**
 * The first option, in order of preference, that still comes to `target`. Good weeks add up: one
 * option at least of every week on the way does.
 */
function pick(search: Search, state: RampState, index: number, target: number): Option {
  const options = optionsOf(search, state, index);
  const { goal } = search.setting;
  if (index >= search.deadline || state.longest >= goal - EPSILON) return options[0]!;
  const even = options.flatMap((option) => rounded(search, state, index, option));
  const candidates = [...even, ...options];
  const last = candidates.at(-1)!;
  if (candidates.length === 1) return last;
  const reaches = ({ after }: Option): boolean => {
    const met = after.longest >= goal - EPSILON;
    return (met ? GOAL_SCORE - index : bestFrom(search, after, index + 1)) >= target - EPSILON;
  };
  return candidates.slice(0, -1).find(reaches) ?? last;
}

/**
 * Fills the weeks so that the goal is met as early as the rules allow; among ways that meet it in
 * the same week, goes on along the bout path as soon as it may, and prefers round minutes.
 */
export function fillWeeks(search: Search, stopAtGoal: boolean): FilledWeek[] {
  const weeks: FilledWeek[] = [];
  let state = firstState(search.setting.request);
  const target = bestFrom(search, state, 0);
  for (let index = 0; index < search.slots.length; index += 1) {
    const { choice, cap, after } = pick(search, state, index, target);
    weeks.push({ slot: search.slots[index]!, choice, cap, after });
    state = after;
    if (stopAtGoal && state.longest >= search.setting.goal - EPSILON) break;
  }
  return weeks;
}
