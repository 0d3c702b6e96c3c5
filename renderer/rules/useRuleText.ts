import { computed, type ComputedRef } from 'vue';
import type { RuleInForce } from '../../core/index.ts';
import { usePractice } from '../stores/practice.ts';
import { ruleNumber, ruleValue } from './ruleText.ts';

type RuleUnit = Pick<RuleInForce, 'unit' | 'shift'>;

export interface RuleText {
  /** "18 °C" or "64.4 °F". */
  value(rule: RuleUnit, value: number): string;
  /** "−5 to 23 °C". */
  range(rule: Pick<RuleInForce, 'unit' | 'shift' | 'min' | 'max'>): string;
}

/** Values of rules as text in the open practice's units. */
export function useRuleText(): ComputedRef<RuleText> {
  const practice = usePractice();
  return computed(() => {
    const { choices } = practice;
    return {
      value: (rule, value) => ruleValue(rule, value, choices),
      range: (rule) =>
        `${ruleNumber(rule, rule.min, choices)} to ${ruleValue(rule, rule.max, choices)}`,
    };
  });
}
