import type { IsoDay } from '../day.ts';
import type { Provenance, Reason } from '../figure.ts';
import { RAMP_RULES, type RampRuleId } from '../rules/ramp.ts';
import { changeNote, provenanceOf, type Rule } from '../rules/rule.ts';
import { breakGrounds } from './breakRules.ts';
import { EPSILON, weekCap } from './load.ts';
import { BOUT_RULE, CAP_RULE, type Setting } from './request.ts';
import type { FilledWeek } from './search.ts';
import { lacksEasyWeek, MOST_WEEKS, type Rhythm } from './slots.ts';
import type { RuleCollision, StartLevel } from './types.ts';

interface Dates {
  readonly goalReachedOn: IsoDay | null;
  readonly reached: IsoDay | null;
  readonly earliestEventDay: IsoDay | null;
}

const COUNTED: Provenance = { evidence: 'C', mark: 'C', sources: ['arithmetic'] };

/** Why the plan looks as it does. A rule the practice changed is named. */
export function reasonsFor(
  setting: Setting,
  rhythm: Rhythm,
  weeks: readonly FilledWeek[],
  dates: Dates,
): Reason[] {
  const { request } = setting;
  return [
    ...(dates.goalReachedOn === null ? [outOfReach(setting, dates)] : []),
    ...longGoal(setting),
    ...noEasyWeek(setting),
    capReason(setting),
    recoveryReason(setting),
    ...(setting.startDay === request.startDay ? [] : [notBefore(setting.startDay)]),
    ...daysReasons(setting, rhythm),
    ...breakReasons(setting, weeks),
    ...changedReasons(setting),
  ];
}

function capReason({ request, rules, capPercent }: Setting): Reason {
  const rule: Rule = RAMP_RULES[CAP_RULE[request.start]];
  const howSure = capPercent === rule.value ? ` ${rule.note}` : '';
  return {
    code: 'weekly-cap',
    text: `Run-minutes rise by at most ${capPercent} % over the highest earlier week${changeNote(rule, capPercent)}. While that week is under ${rules.shortWeekMinutes} min, a step of ${rules.smallStepMinutes} min is allowed.${howSure}`,
    params: { capPercent },
    ...provenanceOf(rule, capPercent, ['shortWeekMinutes', 'smallStepMinutes']),
  };
}

function recoveryReason({ rules }: Setting): Reason {
  const { recoveryEvery, recoveryPercent } = rules;
  const changed = recoveryEvery !== RAMP_RULES.recoveryEvery.value;
  const rule: Rule = changed ? RAMP_RULES.recoveryEvery : RAMP_RULES.recoveryPercent;
  const value = changed ? recoveryEvery : recoveryPercent;
  const other: RampRuleId = changed ? 'recoveryPercent' : 'recoveryEvery';
  return {
    code: 'recovery-weeks',
    text: `One week in ${recoveryEvery} is a recovery week of ${recoveryPercent} % of the week before${changeNote(rule, value)}.`,
    params: { every: recoveryEvery, percent: recoveryPercent },
    ...provenanceOf(rule, value, [other]),
  };
}

/** Goals over this are asked about (D). */
const LONG_GOAL_MIN = 90;
const OWN: Provenance = { evidence: 'D', mark: 'D', sources: ['ownDecision'] };

function longGoal({ goal }: Setting): Reason[] {
  if (goal <= LONG_GOAL_MIN) return [];
  const minutes = Math.round(goal);
  const text = `The goal of ${minutes} min without a break is long: over ${LONG_GOAL_MIN} min, talk it over with the owner and the vet, with heat, water and rest in mind.`;
  const change = `A goal of at most ${LONG_GOAL_MIN} min.`;
  return [{ code: 'long-goal', text, params: { minutes }, change, ...OWN }];
}

function noEasyWeek(setting: Setting): Reason[] {
  const { eventDay } = setting.request;
  if (eventDay === undefined || !lacksEasyWeek(setting, eventDay)) return [];
  const text = `The event on ${eventDay} is less than two weeks away: there is no easy week before it. The plan holds only the first week of a start, its lightest.`;
  return [{ code: 'no-easy-week', text, params: { day: eventDay }, ...OWN }];
}

function notBefore(day: IsoDay): Reason {
  return {
    code: 'not-before',
    text: `Running does not begin before ${day}.`,
    params: { day },
    evidence: 'D',
    mark: 'CP',
    sources: ['commonPractice'],
  };
}

function daysReasons({ request }: Setting, rhythm: Rhythm): Reason[] {
  if (request.sessionsPerWeek === 4 && rhythm.sessions === 3) {
    const text =
      'Seven days hold four running days only every other week when no two follow one another; the weeks between have three.';
    return [{ code: 'four-a-week', text, params: {}, ...COUNTED }];
  }
  if (rhythm.sessions >= request.sessionsPerWeek) return [];
  const { sessions } = rhythm;
  return [
    {
      code: 'fewer-days',
      text: `The days the owner can run hold only ${sessions} running days in some weeks, ${request.sessionsPerWeek} were asked for: no two may follow one another.`,
      params: { sessions, asked: request.sessionsPerWeek },
      ...COUNTED,
      change: 'Another day of the week on which the owner can run.',
    },
  ];
}

function breakReasons({ rules }: Setting, weeks: readonly FilledWeek[]): Reason[] {
  return weeks.flatMap(({ slot }): Reason[] => {
    const back = slot.return;
    if (back.kind === 'none' || back.kind === 'repeat') return [];
    const { provenance, note } = breakGrounds(back, rules);
    const params = { week: slot.number, days: back.missedDays };
    const begun = `Week ${slot.number} comes after ${back.missedDays} days without running:`;
    if (back.kind === 'restart') {
      const text = `${begun} the walk base has to be passed again, and the plan begins anew.`;
      return [{ code: 'break-restart', text, params, ...provenance }];
    }
    const { percent } = back;
    const text = `${begun} ${percent} % less than before${note}.`;
    return [{ code: 'break-less', text, params: { ...params, percent }, ...provenance }];
  });
}

/** Rules of other starts do not bite and are not named; cap and recovery have their own reason. */
function bites(id: RampRuleId, start: StartLevel): boolean {
  if (id === 'recoveryEvery' || id === 'recoveryPercent') return false;
  if (Object.values(CAP_RULE).includes(id)) return false;
  return !Object.values(BOUT_RULE).includes(id) || BOUT_RULE[start] === id;
}

function changedReasons({ request, rules }: Setting): Reason[] {
  return Object.values(RAMP_RULES as Readonly<Record<RampRuleId, Rule>>)
    .filter(({ id, value }) => rules[id as RampRuleId] !== value)
    .filter(({ id }) => bites(id as RampRuleId, request.start))
    .map((rule) => {
      const value = rules[rule.id as RampRuleId];
      return {
        code: 'rule-changed',
        text: `${rule.name}: ${value} ${rule.unit}${changeNote(rule, value)}.`,
        params: { rule: rule.id, value, published: rule.value },
        ...provenanceOf(rule, value),
      };
    });
}

function outOfReach({ request }: Setting, { earliestEventDay }: Dates): Reason {
  const { eventDay } = request;
  const text =
    eventDay === undefined || earliestEventDay === null
      ? `The goal is not reached within ${MOST_WEEKS} weeks under these rules.`
      : `The goal cannot be reached by ${eventDay} inside the caps; ${earliestEventDay} is the earliest day for it.`;
  return {
    code: 'goal-out-of-reach',
    text,
    params: { eventDay: eventDay ?? '', earliestEventDay: earliestEventDay ?? '' },
    ...COUNTED,
    change: 'A later day, a shorter goal, or a start from a better base.',
  };
}

/**
 * Rules whose values exclude each other: the load stops growing although the goal is not met,
 * because what the cap allows is smaller than the next bout.
 */
export function collisionsOf(
  setting: Setting,
  weeks: readonly FilledWeek[],
  reached: IsoDay | null,
): RuleCollision[] {
  if (reached !== null || weeks.length < MOST_WEEKS) return [];
  const half = weeks[Math.floor(weeks.length / 2)]!.after;
  const last = weeks.at(-1)!.after;
  if (last.peak > half.peak + EPSILON) return [];
  const cap = weekCap(last.peak, setting.capPercent, setting.rules);
  const room = Number((cap - last.peak).toFixed(2));
  const step = setting.path[last.stepIndex];
  if (step === undefined) return [];
  return [
    {
      rules: [CAP_RULE[setting.request.start], 'smallStepMinutes', 'boutsPerSession'],
      text: `From ${last.peak} run-minutes a week the cap leaves room for ${room} min more, less than one bout of ${step.runMin} min, and a longer bout needs more minutes a week. The load cannot grow: raise the weekly rise or the small step.`,
    },
  ];
}
