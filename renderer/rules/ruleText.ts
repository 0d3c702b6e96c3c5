import { grouped } from '../../core/quantityText.ts';
import { defaultRules, type RuleGroup, type RuleInForce } from '../../core/index.ts';
import { fromBase, unitsOf, type Dimension } from '../units/dimensions.ts';
import type { ShownChoices } from '../units/shown.ts';

export const GROUP_WORDS: Readonly<Record<RuleGroup, string>> = {
  readiness: 'Ready to run',
  ramp: 'Running plan',
  heat: 'Heat',
  gait: 'Gait and measurement',
};

/** A rule's note as published; where it is shown, what the practice changed stands beside it. */
export const publishedNote = ({ id }: Pick<RuleInForce, 'id'>): string =>
  defaultRules().find((rule) => rule.id === id)?.note ?? '';

/** What a rule is counted in: kept in core's unit, shown and typed in the practice's. */
type RuleUnit = Pick<RuleInForce, 'unit' | 'shift'>;

const DIMENSIONS: Readonly<Record<string, Dimension>> = {
  kg: 'weight',
  cm: 'girth',
  min: 'minutes',
  months: 'months',
  '%': 'percent',
  '°': 'degrees',
};

/** The quantity a rule's value is; a plain count where its unit is words. */
export function ruleDimension({ unit, shift }: RuleUnit): Dimension {
  if (unit === '°C') return shift === true ? 'temperatureShift' : 'temperature';
  return DIMENSIONS[unit] ?? 'count';
}

/** A rule's value in the unit the practice reads, without trailing zeros. */
export function ruleNumber(rule: RuleUnit, value: number, choices: ShownChoices): string {
  const unit = unitsOf(ruleDimension(rule), choices)[0];
  const own = unit.factor === 1 && unit.zero === 0;
  // As it is kept, or to the tenth of the unit it is converted to.
  const text = String(Number(fromBase(value, unit).toFixed(own ? 2 : 1)));
  return grouped(text.replace('-', '\u2212'));
}

/** A rule's value with its unit: "64.4 °F", "2 bouts a session". */
export function ruleValue(rule: RuleUnit, value: number, choices: ShownChoices): string {
  const name = unitsOf(ruleDimension(rule), choices)[0].name || rule.unit;
  const number = ruleNumber(rule, value, choices);
  if (name === '') return number;
  const space = name === '%' || name.startsWith('°') ? '\u202f' : '\u00a0';
  return `${number}${space}${name}`;
}

/** Where a rule stands on the page of all rules: the id of its line there. */
export const ruleAnchor = (id: string): string => `rule-${id}`;
