import { computed } from 'vue';
import type { RuleInForce } from '../../core/index.ts';
import { usePractice } from '../stores/practice.ts';
import { ruleNumber, ruleValue } from './ruleText.ts';

type RuleUnit = Pick<RuleInForce, 'unit' | 'shift'>;

/** Values of rules as text in the open practice's units. */
export function useRuleText() {
  const practice = usePractice();
  return computed(() => {
    const { choices } = practice;
    return {
      /** "18 °C" or "64.4 °F". */
      value: (rule: RuleUnit, value: number) => ruleValue(rule, value, choices),
      /** "−5 to 23 °C". */
      range: (rule: RuleUnit & Pick<RuleInForce, 'min' | 'max'>) =>
        `${ruleNumber(rule, rule.min, choices)} to ${ruleValue(rule, rule.max, choices)}`,
    };
  });
}
