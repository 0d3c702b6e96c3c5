import type { RuleGroup } from '../../core/index.ts';

export const GROUP_WORDS: Readonly<Record<RuleGroup, string>> = {
  readiness: 'Ready to run',
  ramp: 'Running plan',
  heat: 'Heat',
  gait: 'Gait and measurement',
};

/** A rule's value with its unit. */
export function ruleValue(value: number, unit: string): string {
  if (unit === '') return String(value);
  return unit === '%' || unit.startsWith('°') ? `${value}\u202f${unit}` : `${value}\u00a0${unit}`;
}

/** Where a rule stands on the page of all rules: the id of its line there. */
export const ruleAnchor = (id: string): string => `rule-${id}`;
