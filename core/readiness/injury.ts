import { OWN, PRACTICE } from '../origin.ts';
import { monthsBetween } from '../day.ts';
import type { RuleChanges } from '../rules/all.ts';
import { GAIT_RULES, gaitRuleValues } from '../rules/gait.ts';
import { READINESS_RULES, readinessRuleValues } from '../rules/readiness.ts';
import { changeNote, spelled, type Rule } from '../rules/rule.ts';
import { found, underRule, type Found } from './reason.ts';
import type { Injury } from './record.ts';
import type { ScreeningInput } from './types.ts';

type Told = Pick<ScreeningInput, 'day' | 'injuries' | 'surgery'>;

/** Without a day, or without today, nobody can say that it is long ago: it counts as recent (D). */
function isRecent({ day: then }: Injury, { day }: Told, rules?: RuleChanges): boolean {
  if (then === null || day === undefined) return true;
  return monthsBetween(then, day) < readinessRuleValues(rules).afterInjuryMonths;
}

/** Surgery that is known only from the question of its clearance: nobody told its day. */
const isWithoutDay = ({ surgery = 'none', injuries = [] }: Told): boolean =>
  surgery !== 'none' && !injuries.some(({ kind }) => kind === 'surgery');

/**
 * True where the dog starts as after an injury: within the months of the rule after the day of an
 * injury or surgery, while a clearance is asked for, or where the day is not known. A surgery longer
 * ago is history (D).
 */
export function isAfterInjury(told: Told, rules?: RuleChanges): boolean {
  if (told.surgery === 'not cleared' || isWithoutDay(told)) return true;
  return (told.injuries ?? []).some((injury) => isRecent(injury, told, rules));
}

/** Surgery without its clearance, and how long an injury counts (CP; the months are D). */
export function injuryReasons(input: ScreeningInput, rules?: RuleChanges): Found[] {
  const { injuries = [] } = input;
  const recent = injuries.filter((injury) => isRecent(injury, input, rules));
  return [
    ...notCleared(input, recent),
    ...(recent.length > 0 ? [afterInjury(recent, rules)] : []),
    ...dayMissing(input),
    ...thinnerThigh(input, rules),
  ];
}

function notCleared({ surgery = 'none' }: Told, recent: readonly Injury[]): Found[] {
  const operated = recent.some(({ kind }) => kind === 'surgery');
  if (surgery === 'cleared in writing' || (surgery === 'none' && !operated)) return [];
  const text = 'Surgery in the history without a written clearance.';
  const change = 'The surgeon or treating vet clears the dog in writing.';
  return [found({ code: 'surgery', gate: 'vet first', text, change }, PRACTICE)];
}

function afterInjury(recent: readonly Injury[], rules?: RuleChanges): Found {
  const rule = READINESS_RULES.afterInjuryMonths;
  const months = readinessRuleValues(rules).afterInjuryMonths;
  const all = recent.map(
    ({ kind, structure, side, day }) =>
      `${kind}, ${structure}, ${side}, ${day === null ? 'day not known' : day}`,
  );
  const text = `For ${spelled(months)} months the dog starts as after an injury${changeNote(rule, months)}: ${all.join('; ')}.`;
  return found(
    { code: 'after-injury', gate: 'note', text, params: { months } },
    underRule(rule, months, OWN),
  );
}

/** Names which of both lacks its day: the other may stand beside it with one. */
function dayMissing(input: ScreeningInput): Found[] {
  const undated = (input.injuries ?? []).filter(({ day }) => day === null);
  const kinds = new Set(undated.map(({ kind }) => kind));
  if (isWithoutDay(input)) kinds.add('surgery');
  if (kinds.size === 0) return [];
  const told = [...kinds].map((kind) => (kind === 'surgery' ? 'a surgery' : 'an injury'));
  const text = `The day of ${told.join(' and of ')} is not recorded: it counts as recent.`;
  const change = 'Record structure, side and day.';
  return [found({ code: 'injury-day-missing', gate: 'note', text, change }, OWN)];
}

/** After an injury a thigh thinner by the error of the tape or more is said (D). */
function thinnerThigh(input: ScreeningInput, rules?: RuleChanges): Found[] {
  const { thighGirthCm, injuries = [], surgery = 'none' } = input;
  if (thighGirthCm === undefined || (injuries.length === 0 && surgery === 'none')) return [];
  const { leftHind, rightHind } = thighGirthCm;
  const rule: Rule = GAIT_RULES.girthErrorCm;
  const error = gaitRuleValues(rules).girthErrorCm;
  const less = Math.abs(leftHind - rightHind);
  if (less < error - 1e-9) return [];
  const side = leftHind < rightHind ? 'left' : 'right';
  const text = `The ${side} thigh is {${spelled(less)} cm} thinner after injury or surgery${changeNote(rule, error)}.`;
  const change = 'Strength first on that side; measure again, the same way.';
  return [
    found(
      { code: 'thigh-thinner', gate: 'note', text, change, params: { side, lessCm: less } },
      underRule(rule, error, OWN),
    ),
  ];
}
