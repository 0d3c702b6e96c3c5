import { ArgumentError, inRange, oneOf, wholeInRange } from '../check.ts';
import { dayNumber, daysBetween, type IsoDay, type Weekday } from '../day.ts';
import { rampRuleValues, type RampRuleId, type RampRuleValues } from '../rules/ramp.ts';
import { boutPath, type BoutStep } from './path.ts';
import type { Availability } from './schedule.ts';
import {
  PROGRAMMES,
  START_LEVELS,
  type Programme,
  type RampGoal,
  type RampRequest,
  type StageId,
  type StartLevel,
} from './types.ts';

/** One change at a time: first time, then pull, then hills, then speed. */
const STAGES = ['pull', 'hills', 'speed'] as const;
const GOAL_MIN = { min: 1, max: 240 } as const;
const EVERY_DAY: readonly Weekday[] = [0, 1, 2, 3, 4, 5, 6];
export const CAP_PERCENT = { min: 5, max: 30 } as const;
const OWNER_MIN = { min: 0, max: 600 } as const;
const WALK_MIN = { min: 1, max: 240 } as const;
const PACE = { min: 2, max: 20 } as const;

/** The rule that gives the weekly rise of a start. */
export const CAP_RULE: Readonly<Record<StartLevel, RampRuleId>> = {
  conditioned: 'capConditioned',
  unconditioned: 'capUnconditioned',
  'post-injury': 'capPostInjury',
};
/** Which rule sets the bouts of a first session. */
export const BOUT_RULE: Readonly<Record<StartLevel, RampRuleId>> = {
  conditioned: 'boutsConditioned',
  unconditioned: 'boutsUnconditioned',
  'post-injury': 'boutsPostInjury',
};

/** A request, checked, with everything that was left open filled in. */
export interface Setting {
  readonly request: RampRequest;
  readonly programme: Programme;
  readonly rules: RampRuleValues;
  /** The lower start of dog and owner. */
  readonly start: StartLevel;
  /** A walking programme: minutes of its first walks. */
  readonly walkMinutesNow: number;
  readonly capPercent: number;
  readonly path: readonly BoutStep[];
  /** Minutes without a break that meet the goal. */
  readonly goal: number;
  /** The owner's pace in min/km, where known. */
  readonly pace: number | null;
  readonly availability: Availability;
  /** The first day of the plan: not before the age gate. */
  readonly startDay: IsoDay;
}

/** An owner who runs less than this without a break starts as an unconditioned dog does (D). */
const OWNER_NOVICE_UNDER_MIN = 10;

/** How the owner comes to the plan; null where it is not told, or the goal is run already. */
export function ownerStart({ ownerMinutes, goal }: RampRequest): StartLevel | null {
  if (ownerMinutes === undefined || ownerMinutes >= goalMinutes(goal)) return null;
  return ownerMinutes < OWNER_NOVICE_UNDER_MIN ? 'unconditioned' : 'conditioned';
}

/** `START_LEVELS` goes from the highest start to the lowest. */
function lowerStart(dog: StartLevel, owner: StartLevel | null): StartLevel {
  if (owner === null) return dog;
  return START_LEVELS.indexOf(owner) > START_LEVELS.indexOf(dog) ? owner : dog;
}

/**
 * Minutes without a break that meet the goal.
 * @example goalMinutes({ distanceKm: 5, paceMinPerKm: 6 }) // => 30
 */
export function goalMinutes(goal: RampGoal): number {
  return 'continuousMinutes' in goal ? goal.continuousMinutes : goal.distanceKm * goal.paceMinPerKm;
}

/**
 * Checks a request.
 * @throws RangeError naming the argument, its unit and range.
 */
export function settingOf(request: RampRequest): Setting {
  const rules = rampRuleValues(request.rules);
  dayNumber(request.startDay, 'startDay');
  oneOf('start', request.start, START_LEVELS);
  const programme = oneOf('programme', request.programme ?? 'running', PROGRAMMES);
  if (programme === 'running') {
    wholeInRange('sessionsPerWeek', request.sessionsPerWeek, 'a week', { min: 2, max: 4 });
  }
  if (request.capPercent !== undefined) {
    inRange('capPercent', request.capPercent, '%', CAP_PERCENT);
  }
  checkGoal(request);
  const startDay = startOf(request);
  checkEvent(request, startDay);
  for (const stage of request.laterStages ?? []) oneOf('laterStages', stage, STAGES);
  const { goal, ownerMinutes, walkMinutesNow } = request;
  if (ownerMinutes !== undefined) inRange('ownerMinutes', ownerMinutes, 'min', OWNER_MIN);
  if (walkMinutesNow !== undefined) inRange('walkMinutesNow', walkMinutesNow, 'min', WALK_MIN);
  const start = lowerStart(request.start, ownerStart(request));
  const pace = 'paceMinPerKm' in goal ? goal.paceMinPerKm : (request.paceMinPerKm ?? null);
  return {
    request,
    programme,
    rules,
    start,
    walkMinutesNow: Math.floor(walkMinutesNow ?? rules.walkFirstMinutes),
    capPercent: request.capPercent ?? rules[CAP_RULE[start]],
    path: programme === 'walking' ? [] : boutPath(start),
    goal: goalMinutes(goal),
    pace,
    availability: availabilityOf(request),
    startDay,
  };
}

function checkGoal({ goal, paceMinPerKm }: RampRequest): void {
  if (typeof goal !== 'object' || goal === null) {
    throw new ArgumentError('goal', '', undefined, 'goal must be minutes or a distance at a pace');
  }
  if ('continuousMinutes' in goal) {
    inRange('continuousMinutes', goal.continuousMinutes, 'min', GOAL_MIN);
  } else {
    inRange('distanceKm', goal.distanceKm, 'km', { min: 0.2, max: 100 });
    inRange('paceMinPerKm', goal.paceMinPerKm, 'min per km', PACE);
    checkDistanceMinutes(goalMinutes(goal));
  }
  if (paceMinPerKm !== undefined) inRange('paceMinPerKm', paceMinPerKm, 'min per km', PACE);
}

/** A distance goal holds no more minutes than one in minutes. */
function checkDistanceMinutes(minutes: number): void {
  if (minutes >= GOAL_MIN.min && minutes <= GOAL_MIN.max) return;
  const text = `distanceKm × paceMinPerKm must be from ${GOAL_MIN.min} to ${GOAL_MIN.max} min, but is ${minutes} min`;
  throw new ArgumentError('distanceKm', 'km', GOAL_MIN, text);
}

/** The later stages asked for, each once, in the order in which they are added. */
export function stagesInOrder({ laterStages = [] }: RampRequest): StageId[] {
  return STAGES.filter((stage) => laterStages.includes(stage));
}

function startOf({ startDay, notBeforeDay }: RampRequest): IsoDay {
  if (notBeforeDay === undefined) return startDay;
  dayNumber(notBeforeDay, 'notBeforeDay');
  return notBeforeDay > startDay ? notBeforeDay : startDay;
}

function checkEvent(request: RampRequest, startDay: IsoDay): void {
  const { eventDay, laterStages = [] } = request;
  if (eventDay === undefined) return;
  dayNumber(eventDay, 'eventDay');
  if (laterStages.length > 0) {
    const text = 'laterStages must be left out of a plan with an eventDay: the event comes first';
    throw new ArgumentError('laterStages', '', undefined, text);
  }
  // A reviewed plan may be picked up in the last days before its event.
  const least = request.resume === undefined ? 7 : 0;
  if (daysBetween(startDay, eventDay) >= least) return;
  throw new ArgumentError(
    'eventDay',
    'YYYY-MM-DD',
    undefined,
    `eventDay must be at least ${least} days after the first day of the plan, ${startDay}, but is ${eventDay}`,
  );
}

function availabilityOf({ weekdays = EVERY_DAY, daysOut = [] }: RampRequest): Availability {
  for (const day of weekdays) wholeInRange('weekdays', day, 'of 0 to 6', { min: 0, max: 6 });
  return { weekdays, out: new Set(daysOut.map((day) => dayNumber(day, 'daysOut'))) };
}
