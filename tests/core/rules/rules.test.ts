import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { source } from '../../../core/sources.ts';
import {
  buildRamp,
  changedRules,
  defaultRules,
  gaitChanges,
  withRules,
  type RuleChanges,
} from '../../../core/training.ts';
import { evenly, holds } from '../../support/laws.ts';

const ids = defaultRules().map(({ id }) => id);

describe('the rules as published', () => {
  it('carry name, unit, range, evidence and a source that is registered', () => {
    for (const rule of defaultRules()) {
      expect(rule.name, rule.id).not.toBe('');
      expect(rule.note, rule.id).not.toBe('');
      expect(rule.value, rule.id).toBeGreaterThanOrEqual(rule.min);
      expect(rule.value, rule.id).toBeLessThanOrEqual(rule.max);
      expect(rule.changed, rule.id).toBe(false);
      expect(rule.sources.length, rule.id).toBeGreaterThan(0);
      for (const id of rule.sources) expect(source(id).short).not.toBe('');
    }
  });

  it('have an id each', () => {
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('rest no rule on memory alone without saying so', () => {
    const fromMemory = defaultRules().filter(({ mark }) => mark === 'M');
    for (const { sources } of fromMemory) {
      expect(sources.some((id) => source(id).caveat?.includes('memory'))).toBe(true);
    }
  });
});

describe('a practice’s own values', () => {
  it('are taken inside the range, and say what was published', () => {
    holds(
      fc.property(fc.constantFrom(...defaultRules()), evenly(0, 1), (rule, at) => {
        const value = rule.min + at * (rule.max - rule.min);
        fc.pre(value !== rule.published);
        const set = withRules({ [rule.id]: value }).find(({ id }) => id === rule.id)!;
        expect(set).toMatchObject({ value, published: rule.value, changed: true, evidence: 'D' });
        expect(set.sources).toEqual(['practiceSetting']);
        expect(set.note.replaceAll('{', '')).toContain(`as published ${rule.value}`);
        expect(changedRules({ [rule.id]: value } as RuleChanges).map(({ id }) => id)).toEqual([
          rule.id,
        ]);
      }),
      { seed: 1, numRuns: 300 },
    );
  });

  it('are refused outside the range, by name', () => {
    for (const { id, min, max } of defaultRules()) {
      for (const value of [min - 1, max + 1, Number.NaN]) {
        expect(() => withRules({ [id]: value }), id).toThrow(RangeError);
        expect(() => withRules({ [id]: value }), id).toThrow(id);
      }
    }
    expect(() => withRules({ noSuchRule: 1 } as RuleChanges)).toThrow(/noSuchRule/);
  });

  it('serve every function at once, each taking its own', () => {
    const rules: RuleChanges = { recoveryPercent: 60, froudeCanterLow: 1.5 };
    const ramp = buildRamp({
      startDay: '2026-03-02',
      start: 'conditioned',
      sessionsPerWeek: 3,
      goal: { continuousMinutes: 20 },
      rules,
    });
    expect(ramp.rules.recoveryPercent).toBe(60);
    const { canterSpeed } = gaitChanges({ heightM: 0.5, rules });
    expect(canterSpeed.low).toBeCloseTo(Math.sqrt(1.5 * 9.80665 * 0.5), 9);
    expect(canterSpeed.figure.sources).toEqual(['practiceSetting']);
  });
});
