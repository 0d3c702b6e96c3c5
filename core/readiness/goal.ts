import { OWN } from '../origin.ts';
import { READINESS_RULES, readinessRuleValues } from '../rules/readiness.ts';
import type { RuleChanges } from '../rules/all.ts';
import { changeNote } from '../rules/rule.ts';
import { found, underRule, type Found } from './reason.ts';
import type { ScreeningInput, ScreeningReason } from './types.ts';

const SHORT = 'goal-limit';
const LONG = 'goal-long';

/**
 * A goal beyond what this dog may be trained for, in minutes without a break: 30 for a short nose and
 * from body condition 6, 90 for every dog without the vet's written yes (D). They close no gate: the
 * dog may run, but not so far.
 */
export function goalReasons(input: ScreeningInput, rules?: RuleChanges): Found[] {
  if (input.goalMinutes === undefined) return [];
  const minutes = Math.round(input.goalMinutes * 10) / 10;
  return [...shortGoal(input, minutes, rules), ...longGoal(input, minutes, rules)];
}

function shortGoal(
  { shortNosed, bcs = 0 }: ScreeningInput,
  minutes: number,
  rules?: RuleChanges,
): Found[] {
  const { goalShortMinutes: limit, goalHeavyFromBcs } = readinessRuleValues(rules);
  const heavy = bcs >= goalHeavyFromBcs;
  if (minutes <= limit || (shortNosed !== true && !heavy)) return [];
  const rule = READINESS_RULES.goalShortMinutes;
  const why = [
    ...(shortNosed === true ? ['a short nose'] : []),
    ...(heavy ? [`body condition ${bcs} of 9`] : []),
  ].join(' and ');
  const text = `The goal of ${minutes} min without a break is over ${limit} min, the most with ${why}${changeNote(rule, limit)}.`;
  const lighter = `; more once the body condition is ${goalHeavyFromBcs - 1} or lower`;
  const change = `A goal of at most ${limit} min${shortNosed === true ? '' : lighter}.`;
  const provenance = underRule(rule, limit, OWN, ['goalHeavyFromBcs']);
  const params = { minutes, limit };
  return [found({ code: SHORT, gate: 'note', text, change, params }, provenance)];
}

function longGoal(
  { longRunClearance }: ScreeningInput,
  minutes: number,
  rules?: RuleChanges,
): Found[] {
  const { goalLongMinutes: limit } = readinessRuleValues(rules);
  if (minutes <= limit || longRunClearance === true) return [];
  const rule = READINESS_RULES.goalLongMinutes;
  const text = `The goal of ${minutes} min without a break is over ${limit} min: it needs the vet’s written yes${changeNote(rule, limit)}.`;
  const change = `A goal of at most ${limit} min, or the vet’s written yes to longer runs.`;
  const params = { minutes, limit };
  return [found({ code: LONG, gate: 'note', text, change, params }, underRule(rule, limit, OWN))];
}

/**
 * Limits of the goal that a written reason sets aside; over the longest only a vet says yes.
 * @example isGoalSetAside('goal-long') // => false
 */
export const isGoalSetAside = (code: string): boolean => code === SHORT;

/**
 * The limits of the goal that stand open: with one of them no plan is made anew.
 * @example
 * openGoalLimits(screenForRunning({ ...sample.ready, goalMinutes: 100 }).reasons)[0]?.code
 *   // => 'goal-long'
 */
export function openGoalLimits(reasons: readonly ScreeningReason[]): ScreeningReason[] {
  return reasons.filter(
    ({ code, overriddenBecause }) =>
      (code === SHORT || code === LONG) && overriddenBecause === null,
  );
}
