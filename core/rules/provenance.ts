import type { Provenance } from '../figure.ts';
import type { RuleId } from './all.ts';
import { originOf, type Rule } from './rule.ts';

/** The origin of a reason or figure that a rule decided, with the rule and the `others` beside it. */
export function provenanceOf(
  rule: Rule,
  value: number,
  others: readonly RuleId[] = [],
): Provenance {
  return { ...originOf(rule, value), rules: [rule.id as RuleId, ...others] };
}
