import { GAIT_RULES } from './gait.ts';
import { HEAT_RULES } from './heat.ts';
import { RAMP_RULES } from './ramp.ts';
import { READINESS_RULES } from './readiness.ts';
import { changeNote, knownIds, originOf, valuesOf, type Rule, type RuleTable } from './rule.ts';

/** The rules by the subject they belong to, in the order the settings show them. */
export const RULE_GROUPS = {
  readiness: READINESS_RULES,
  ramp: RAMP_RULES,
  heat: HEAT_RULES,
  gait: GAIT_RULES,
} as const satisfies Record<string, RuleTable>;

export type RuleGroup = keyof typeof RULE_GROUPS;

const RULES = { ...READINESS_RULES, ...RAMP_RULES, ...HEAT_RULES, ...GAIT_RULES } as const;

export type RuleId = keyof typeof RULES;

/** What a practice changed, by rule id. Plain JSON, kept with its settings. */
export type RuleChanges = Partial<Record<RuleId, number>>;

/** A rule as it stands in this practice. */
export interface RuleInForce extends Rule {
  readonly group: RuleGroup;
  /** The value as published; `value` is the one in force. */
  readonly published: number;
  readonly changed: boolean;
}

/**
 * Every rule with its value as published.
 * @example defaultRules().find(({ id }) => id === 'capConditioned')?.value // => 20
 */
export function defaultRules(): readonly RuleInForce[] {
  return withRules({});
}

/**
 * Every rule with the practice's changes over it. A changed rule carries the practice as its
 * source, and a note with the published value.
 * @throws RangeError naming the rule when it is unknown or the value lies outside its range.
 * @example withRules({ capConditioned: 10 }).find(({ id }) => id === 'capConditioned')
 *   // => { value: 10, published: 20, changed: true, sources: ['practiceSetting'], … }
 */
export function withRules(changes: RuleChanges): readonly RuleInForce[] {
  knownIds(RULES, changes);
  const values: Readonly<Record<string, number>> = valuesOf(RULES, changes);
  return (Object.keys(RULE_GROUPS) as RuleGroup[]).flatMap((group) =>
    Object.values(RULE_GROUPS[group] as RuleTable).map((rule) => {
      const value = values[rule.id]!;
      return {
        ...rule,
        ...originOf(rule, value),
        group,
        value,
        published: rule.value,
        changed: value !== rule.value,
        note: `${rule.note}${changeNote(rule, value)}`,
      };
    }),
  );
}

/**
 * The rules a practice changed, with both values.
 * @example changedRules({ capConditioned: 10 }).map(({ id }) => id) // => ['capConditioned']
 */
export function changedRules(changes: RuleChanges): readonly RuleInForce[] {
  return withRules(changes).filter(({ changed }) => changed);
}
