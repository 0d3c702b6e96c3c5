import { RAMP_RULES, type RampRuleId, type RampRuleValues } from '../rules/ramp.ts';
import { changeNote, type Rule } from '../rules/rule.ts';
import { provenanceOf } from '../rules/provenance.ts';
import type { Provenance } from '../figure.ts';
import type { Return } from './slots.ts';

/** A break that asks for something. */
export type Break = Exclude<Return, { readonly kind: 'none' }>;

/** The rule that decides what a break asks for, and the one that says how long such a break is. */
function rulesOf(back: Break, rules: RampRuleValues): readonly [RampRuleId, ...RampRuleId[]] {
  if (back.kind === 'repeat') return ['breakRepeatDays'];
  if (back.kind === 'restart') return ['breakLongDays'];
  const short = back.missedDays <= rules.breakShortDays;
  return short ? ['breakShortPercent', 'breakShortDays'] : ['breakLongPercent', 'breakLongDays'];
}

/** Where the answer to a break comes from, and " (set by the practice; …)" where that is changed. */
export function breakGrounds(
  back: Break,
  rules: RampRuleValues,
): { readonly provenance: Provenance; readonly note: string } {
  const [id, ...others] = rulesOf(back, rules);
  const rule: Rule = RAMP_RULES[id];
  return {
    provenance: provenanceOf(rule, rules[id], others),
    note: changeNote(rule, rules[id]),
  };
}
