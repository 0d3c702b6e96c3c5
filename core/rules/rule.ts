import { ArgumentError, inRange } from '../check.ts';
import { from, type Origin } from '../origin.ts';
import { marked } from '../quantityText.ts';

/** A number the practice may change inside its range; everything else about it is fixed. */
export interface Rule extends Origin {
  readonly id: string;
  readonly name: string;
  /** The value as published or as we chose it; "as published" in the settings goes back to it. */
  readonly value: number;
  readonly unit: string;
  readonly min: number;
  readonly max: number;
  /** Its amounts are marked. */
  readonly note: string;
  /** True where a part of one makes no sense: a recovery week every 3.5 weeks would be one in seven. */
  readonly whole?: boolean;
  /** True where the value is a difference downwards, not a place on the scale of its unit. */
  readonly shift?: boolean;
}

/** Rules by id. */
export type RuleTable = Readonly<Record<string, Rule>>;

/** A rule as a table writes it down: under its id, with its range from the least to the most. */
type Written = Omit<Rule, 'id' | 'min' | 'max'> & { readonly range: readonly [number, number] };

/** The rules of one subject, in the order the settings show them. */
export function ruleTable<const Id extends string>(
  table: Readonly<Record<Id, Written>>,
): { readonly [K in Id]: Rule & { readonly id: K } } {
  const rules = Object.entries<Written>(table).map(([id, { range, ...rule }]) => {
    const [min, max] = range;
    return [id, { id, min, max, ...rule }];
  });
  return Object.fromEntries(rules) as { readonly [K in Id]: Rule & { readonly id: K } };
}

/**
 * The values of one table, with the practice's `changes` over them. Ids of other tables are passed
 * over, so that one set of changes serves every function.
 * @throws RangeError naming the rule, its unit and range when a change lies outside it.
 */
export function valuesOf<T extends RuleTable>(
  table: T,
  changes: Readonly<Record<string, number | undefined>> = {},
): Readonly<Record<keyof T, number>> {
  const values = Object.values(table).map((rule): [string, number] => {
    const changed = Object.hasOwn(changes, rule.id) ? changes[rule.id] : undefined;
    if (changed === undefined) return [rule.id, rule.value];
    return [rule.id, inRange(rule.id, changed, rule.unit, rule)];
  });
  return Object.fromEntries(values) as Readonly<Record<keyof T, number>>;
}

/** Rules there were once: a change of one that a practice or a plan has kept says nothing more. */
const RETIRED: ReadonlySet<string> = new Set(['heatHumidFromC']);

/** @throws RangeError naming the first id that no table knows or knew. */
export function knownIds(table: RuleTable, changes: Readonly<Record<string, unknown>>): void {
  for (const id of Object.keys(changes)) {
    if (Object.hasOwn(table, id) || RETIRED.has(id)) continue;
    throw new ArgumentError(id, '', undefined, `${id} is not a rule`);
  }
}

/**
 * Where the number in force comes from: the rule's own provenance, or, once the practice changed
 * it, the practice's decision (evidence D), whatever stood behind the published value.
 */
export function originOf(rule: Rule, value: number): Origin {
  if (value === rule.value) {
    return { evidence: rule.evidence, mark: rule.mark, sources: rule.sources };
  }
  return from('D', 'D', 'practiceSetting');
}

/** A number in a sentence: what was typed in °F or lb has no end of digits in °C or kg. */
export const spelled = (value: number): string => String(Number(value.toFixed(2)));

/** A value of a rule as sentences spell it: "20 %", "{3 °C lower}" for a shift. */
export function written(rule: Pick<Rule, 'unit' | 'shift'>, value: number): string {
  return marked(spelled(value), `${rule.unit}${rule.shift === true ? ' lower' : ''}`);
}

/** " (set by the practice; as published 20 %)" for a changed rule, else nothing. */
export function changeNote(rule: Rule, value: number): string {
  if (value === rule.value) return '';
  return ` (set by the practice; as published ${written(rule, rule.value)})`;
}
