import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  causeCodesOf,
  CAUSES,
  defaultRules,
  type RuleChanges,
  type RuleId,
} from '../../../core/training.ts';
import * as named from './named.ts';

const ids = defaultRules().map(({ id }) => id as RuleId);

function run<T>(arbitrary: fc.Arbitrary<T>, take: (input: T) => void, numRuns: number): void {
  fc.assert(fc.property(arbitrary, take), { seed: 1, numRuns });
}

/** What was said under the rules of a broad run: rule by rule, the codes that named it. */
function namedBy(): ReadonlyMap<string, ReadonlySet<string>> {
  const found = new Map<string, Set<string>>();
  const take = (said: readonly named.Said[]): void => {
    for (const { code, rules = [] } of said) {
      for (const id of rules) found.set(id, (found.get(id) ?? new Set()).add(code));
    }
  };
  run(named.screenings, (input) => take(named.screeningSays(input)), 5000);
  run(named.airs, (input) => take(named.heatSays(input)), 2000);
  run(named.gaits, (input) => take(named.gaitSays(input)), 1000);
  run(named.plans, (input) => take(named.planSays(input)), 60);
  run(named.edits, (input) => take(named.editSays(input)), 240);
  run(named.reviews, (input) => take(named.reviewSays(input)), 120);
  for (const days of [7, 12, 25, 40]) take(named.withBreak(days));
  for (const said of named.chosen()) take(said);
  return found;
}

describe('reasons and figures name the rules behind them', () => {
  const found = namedBy();

  it('and no rule that there is not', () => {
    expect([...found.keys()].filter((id) => !ids.includes(id as RuleId))).toEqual([]);
  });

  it.each(ids)('%s, in every way the rule’s page tells of and in no other', (id) => {
    expect([...(found.get(id) ?? [])].sort()).toEqual([...causeCodesOf(id)].sort());
  });

  it('in kinds that each have their words, and none without a rule', () => {
    const used = new Set(ids.flatMap((id) => causeCodesOf(id)));
    expect(Object.keys(CAUSES).filter((code) => !used.has(code as never))).toEqual([]);
    const texts = Object.values(CAUSES).map(({ place, text }) => `${place}: ${text}`);
    expect(new Set(texts).size).toBe(texts.length);
  });
});

/** The texts of reasons by code, under rules and with one of them put back as published. */
function told<T>(
  says: (input: readonly [T, RuleChanges]) => readonly named.Said[],
  input: T,
  rules: RuleChanges,
): void {
  const before = new Map(says([input, rules]).map((said) => [said.code, said]));
  for (const id of Object.keys(rules) as RuleId[]) {
    const { [id]: _, ...fewer } = rules;
    for (const { code, text } of says([input, fewer])) {
      const said = before.get(code);
      if (said === undefined || said.text === text) continue;
      expect(said.rules, `${code}: ${said.text}`).toContain(id);
    }
  }
}

describe('a rule whose change changes what a reason says is named by that reason', () => {
  it('in the screening', () => {
    run(
      named.screenings,
      ([record, rules]) => told((given) => named.screeningSays([...given]), record, rules),
      2000,
    );
  });
});
