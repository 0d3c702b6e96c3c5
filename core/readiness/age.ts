import { inRange, weightInRange } from '../check.ts';
import type { RuleChanges } from '../rules/all.ts';
import { READINESS_RULES, readinessRuleValues, type ReadinessRuleId } from '../rules/readiness.ts';

/** Published values, for what does not follow the practice's own age rule (feeding for growth). */
export const AGE_SMALL_MONTHS = READINESS_RULES.ageSmallMonths.value;
export const AGE_LARGE_MONTHS = READINESS_RULES.ageLargeMonths.value;
export const LARGE_FROM_KG = READINESS_RULES.largeFromKg.value;

export interface AgeGate {
  /** Below this age the dog walks only. */
  readonly requiredMonths: number;
  /** Below this age waiting is advised; never under `requiredMonths`. */
  readonly advisedMonths: number;
}

/**
 * The lowest age for running in harness, months, by expected adult weight in kg (0.1–150), with the
 * practice's `rules` in force. As published: 12, from 20 kg 18 (CP; sport rules, S), from 40 kg up
 * to 24 advised (D), 6 more advised after neutering before 12 months, at most 24 (D, after
 * Salmeri et al. 1991, S).
 * @throws RangeError when a number or a changed rule is out of range.
 * @example
 * ageGate(30) // => { requiredMonths: 18, advisedMonths: 18 }
 * ageGate(30, 8) // => { requiredMonths: 18, advisedMonths: 24 }
 */
export function ageGate(
  adultWeightKg: number,
  neuteredAtMonths?: number,
  rules?: RuleChanges,
): AgeGate {
  weightInRange('adultWeightKg', adultWeightKg);
  const values = readinessRuleValues(rules);
  const large = adultWeightKg >= values.largeFromKg;
  const giant = adultWeightKg >= values.giantFromKg;
  const requiredMonths = large ? values.ageLargeMonths : values.ageSmallMonths;
  const most = Math.max(requiredMonths, values.ageGiantAdvisedMonths);
  const advisedMonths = giant ? most : requiredMonths;
  if (neuteredAtMonths === undefined) return { requiredMonths, advisedMonths };
  inRange('neuteredAtMonths', neuteredAtMonths, 'months', { min: 1, max: 240 });
  if (neuteredAtMonths >= values.earlyNeuterBeforeMonths) return { requiredMonths, advisedMonths };
  const later = Math.min(most, requiredMonths + values.earlyNeuterExtraMonths);
  return { requiredMonths, advisedMonths: Math.max(advisedMonths, later) };
}

/**
 * The rules that ask this dog to wait longer than it must: very large, neutered early, or both.
 * @example adviceRules(45) // => ['giantFromKg', 'ageGiantAdvisedMonths']
 */
export function adviceRules(
  adultWeightKg: number,
  neuteredAtMonths?: number,
  rules?: RuleChanges,
): ReadinessRuleId[] {
  const values = readinessRuleValues(rules);
  const { requiredMonths, advisedMonths } = ageGate(adultWeightKg, neuteredAtMonths, rules);
  const giant = adultWeightKg >= values.giantFromKg;
  const extra = requiredMonths + values.earlyNeuterExtraMonths;
  const early = neuteredAtMonths !== undefined && neuteredAtMonths < values.earlyNeuterBeforeMonths;
  return [
    ...(giant ? (['giantFromKg', 'ageGiantAdvisedMonths'] as const) : []),
    ...(early ? (['earlyNeuterBeforeMonths', 'earlyNeuterExtraMonths'] as const) : []),
    ...(early && !giant && extra > advisedMonths ? (['ageGiantAdvisedMonths'] as const) : []),
  ];
}

/**
 * Expected life span in years by adult weight and nose, for "senior = last quarter of it": medians
 * of 12.7 years in small and 11.9 in large dogs, of 9.8 in French Bulldogs.
 *
 * That small is under 10 kg, that every short-nosed dog is taken as the one breed that was told of,
 * and 10 years from 40 kg on are our own cautious lines (D): a dog counts as old rather too soon.
 * @example
 * expectedLifeYears(8) // => 12.7
 * expectedLifeYears(8, true) // => 9.8
 * Source: McMillan et al. 2024 (S, from a summary).
 */
export function expectedLifeYears(adultWeightKg: number, shortNosed = false): number {
  const bySize = adultWeightKg < 10 ? 12.7 : adultWeightKg < 40 ? 11.9 : 10;
  return shortNosed ? Math.min(9.8, bySize) : bySize;
}

/**
 * True in the last quarter of the expected life span (AAHA 2019 life stages).
 * @example isSenior(110, 30) // => true
 */
export function isSenior(
  ageMonths: number,
  adultWeightKg: number,
  rules?: RuleChanges,
  shortNosed = false,
): boolean {
  const { seniorFromPercent } = readinessRuleValues(rules);
  const months = expectedLifeYears(adultWeightKg, shortNosed) * 12;
  return ageMonths >= (months * seniorFromPercent) / 100;
}
