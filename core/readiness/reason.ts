import type { Provenance } from '../figure.ts';
import { saying } from '../quantityText.ts';
import type { RuleId } from '../rules/all.ts';
import { type Rule } from '../rules/rule.ts';
import { provenanceOf } from '../rules/provenance.ts';
import type { Gate, ScreeningReason } from './types.ts';

/** A reason before overrides are looked at. */
export type Found = Omit<ScreeningReason, 'overriddenBecause' | 'unseen'>;

export interface FoundText {
  readonly code: string;
  readonly gate: Gate;
  /** Its amounts are marked. */
  readonly text: string;
  /** What would change it. */
  readonly change?: string;
  readonly params?: Found['params'];
}

export function found(text: FoundText, provenance: Provenance): Found {
  return { ...text, ...saying(text.text), params: text.params ?? {}, ...provenance };
}

/**
 * The `published` provenance while the rule stands as published, else the practice's own; either
 * names the rule and the `others` that decided with it.
 */
export function underRule(
  rule: Rule,
  value: number,
  published: Provenance,
  others: readonly RuleId[] = [],
): Provenance {
  const inForce = provenanceOf(rule, value, others);
  return value === rule.value ? { ...inForce, ...published } : inForce;
}
