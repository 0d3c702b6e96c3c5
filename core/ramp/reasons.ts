import type { IsoDay } from '../day.ts';
import type { Provenance, Reason } from '../figure.ts';
import { from, OWN, PRACTICE } from '../origin.ts';
import { READINESS_RULES, readinessRuleValues } from '../rules/readiness.ts';
import { RAMP_RULES, type RampRuleId } from '../rules/ramp.ts';
import { changeNote, type Rule } from '../rules/rule.ts';
import { provenanceOf } from '../rules/provenance.ts';
import { breakGrounds } from './breakRules.ts';
import { BOUT_RULE, CAP_RULE, type Setting } from './request.ts';
import type { FilledWeek } from './course.ts';
import { lacksEasyWeek, MOST_WEEKS, type Rhythm } from './slots.ts';
import type { StartLevel } from './types.ts';

interface Dates {
  readonly goalReachedOn: IsoDay | null;
  readonly reached: IsoDay | null;
  readonly earliestEventDay: IsoDay | null;
}

const COUNTED: Provenance = from('C', 'C', 'arithmetic');

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
    ...loadReasons(setting),
    ...(setting.startDay === request.startDay ? [] : [notBefore(setting.startDay)]),
    ...daysReasons(setting, rhythm),
    ...breakReasons(setting, weeks),
    ...changedReasons(setting),
  ];
}

function loadReasons(setting: Setting): Reason[] {
  if (setting.programme === 'walking') return [walkingReason(setting)];
  return [
    sessionReason(setting),
    capReason(setting),
    recoveryReason(setting),
    ...paceReason(setting),
  ];
}

function walkingReason({ rules, walkMinutesNow, goal }: Setting): Reason {
  const rule: Rule = RAMP_RULES.walkStepMinutes;
  return {
    code: 'walking-programme',
    text: `Brisk walks on ${rules.walkDays} days a week, from ${Math.min(walkMinutesNow, goal)} min, ${rules.walkStepMinutes} min longer each week up to ${goal} min${changeNote(rule, rules.walkStepMinutes)}. Two such walks in the last week, sound and clear the next day, are the walk base.`,
    params: { from: Math.min(walkMinutesNow, goal), step: rules.walkStepMinutes, to: goal },
    ...provenanceOf(rule, rules.walkStepMinutes, ['walkDays', 'walkFirstMinutes']),
  };
}

function sessionReason({ rules }: Setting): Reason {
  const rule: Rule = RAMP_RULES.sessionRisePercent;
  const percent = rules.sessionRisePercent;
  const { sessionStepMinutes: step, sessionWindowDays: days } = rules;
  return {
    code: 'session-cap',
    text: `No session is more than ${percent} % or ${step} min, whichever is more, over the longest run of the last ${days} days${changeNote(rule, percent)}. ${rule.note}`,
    params: { percent, step, days },
    ...provenanceOf(rule, percent, ['sessionStepMinutes', 'sessionWindowDays']),
  };
}

function paceReason({ request, start }: Setting): Reason[] {
  const { ownerMinutes } = request;
  if (ownerMinutes === undefined) return [];
  const lower = start !== request.start;
  const text = lower
    ? `The owner runs ${ownerMinutes} min without a break today: the plan starts lower than the dog alone would.`
    : `The owner runs ${ownerMinutes} min without a break today: the dog sets the start.`;
  return [
    { code: 'owner-start', text, params: { minutes: ownerMinutes, lower: Number(lower) }, ...OWN },
  ];
}

function capReason({ start, rules, capPercent }: Setting): Reason {
  const rule: Rule = RAMP_RULES[CAP_RULE[start]];
  const howSure = capPercent === rule.value ? ` ${rule.note}` : '';
  return {
    code: 'weekly-cap',
    text: `Run-minutes rise by at most ${capPercent} % over the highest whole week so far${changeNote(rule, capPercent)}. While that week is under ${rules.shortWeekMinutes} min, a step of ${rules.smallStepMinutes} min is allowed.${howSure}`,
    params: { capPercent },
    ...provenanceOf(rule, capPercent, ['shortWeekMinutes', 'smallStepMinutes']),
  };
}

function recoveryReason({ rules }: Setting): Reason {
  const { recoveryEvery, recoveryPercent } = rules;
  const changed = recoveryEvery !== RAMP_RULES.recoveryEvery.value;
  const rule: Rule = changed ? RAMP_RULES.recoveryEvery : RAMP_RULES.recoveryPercent;
  const value = changed ? recoveryEvery : recoveryPercent;
  const others: RampRuleId[] = [
    changed ? 'recoveryPercent' : 'recoveryEvery',
    'recoverySkipPercent',
  ];
  return {
    code: 'recovery-weeks',
    text: `One week in ${recoveryEvery} is an easy week of ${recoveryPercent} % of the highest week${changeNote(rule, value)}, unless the week before was light already.`,
    params: { every: recoveryEvery, percent: recoveryPercent },
    ...provenanceOf(rule, value, others),
  };
}

function longGoal({ goal, request }: Setting): Reason[] {
  const { goalLongMinutes: limit } = readinessRuleValues(request.rules);
  if (goal <= limit) return [];
  const rule: Rule = READINESS_RULES.goalLongMinutes;
  const minutes = Math.round(goal);
  const text = `The goal of ${minutes} min without a break is long: over ${limit} min${changeNote(rule, limit)}, talk it over with the owner and the vet, with heat, water and rest in mind.`;
  const change = `A goal of at most ${limit} min.`;
  return [{ code: 'long-goal', text, params: { minutes }, change, ...provenanceOf(rule, limit) }];
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
    ...PRACTICE,
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

function breakReasons({ rules, programme }: Setting, weeks: readonly FilledWeek[]): Reason[] {
  return weeks.flatMap(({ slot }): Reason[] => {
    const back = slot.return;
    if (back.kind === 'none' || back.kind === 'repeat') return [];
    const { provenance, note } = breakGrounds(back, rules);
    const params = { week: slot.number, days: back.missedDays };
    const what = programme === 'walking' ? 'brisk walks' : 'running';
    const begun = `Week ${slot.number} comes after ${back.missedDays} days without ${what}:`;
    if (back.kind === 'restart' && programme === 'walking') {
      return [{ code: 'break-anew', text: `${begun} they begin anew.`, params, ...provenance }];
    }
    if (back.kind === 'restart') {
      const text = `${begun} the walk base has to be passed again, and the plan begins anew.`;
      return [{ code: 'break-restart', text, params, ...provenance }];
    }
    const { percent } = back;
    const text = `${begun} ${percent} % less than before${note}.`;
    return [{ code: 'break-less', text, params: { ...params, percent }, ...provenance }];
  });
}

/** These have a reason of their own that names them. */
const NAMED_ELSEWHERE: ReadonlySet<RampRuleId> = new Set([
  'sessionRisePercent',
  'sessionStepMinutes',
  'sessionWindowDays',
  'walkDays',
  'walkFirstMinutes',
  'walkStepMinutes',
]);

/** Rules of other starts do not bite and are not named; cap and recovery have their own reason. */
function bites(id: RampRuleId, start: StartLevel): boolean {
  if (id === 'recoveryEvery' || id === 'recoveryPercent') return false;
  if (NAMED_ELSEWHERE.has(id) || Object.values(CAP_RULE).includes(id)) return false;
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
