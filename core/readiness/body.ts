import type { Provenance } from '../figure.ts';
import type { RuleChanges, RuleId } from '../rules/all.ts';
import { READINESS_RULES, readinessRuleValues } from '../rules/readiness.ts';
import { changeNote, type Rule } from '../rules/rule.ts';
import { adviceRules, ageGate, isSenior } from './age.ts';
import { found, OWN, PRACTICE, underRule, type Found } from './reason.ts';
import type { ScreeningInput } from './types.ts';

const GROWTH: Provenance = {
  evidence: 'C',
  mark: 'CP',
  sources: ['commonPractice', 'sportRules', 'hart2020', 'plateClosure'],
};
const ADVICE: Provenance = { evidence: 'D', mark: 'D', sources: ['ownDecision', 'salmeri1991'] };
const SENIOR: Provenance = {
  evidence: 'D',
  mark: 'CP',
  sources: ['commonPractice', 'aahaLifeStages'],
};

/** The adult weight the age gate counts with, kg; where none is known the later age counts. */
export function gateWeightKg({ adultWeightKg, weightKg }: ScreeningInput): number {
  return adultWeightKg ?? weightKg ?? READINESS_RULES.giantFromKg.value;
}

/** Body condition: not scored, too high, too low (CP; not scored D). */
export function conditionReasons({ bcs }: ScreeningInput, rules?: RuleChanges): Found[] {
  const { bcsWalkOnlyFrom, bcsVetUpTo } = readinessRuleValues(rules);
  if (bcs === undefined) {
    const text = 'Body condition has not been scored.';
    const change = 'Score the dog from 1 to 9.';
    return [found({ code: 'bcs-missing', gate: 'walking only', text, change }, OWN)];
  }
  if (bcs >= bcsWalkOnlyFrom) {
    const rule = READINESS_RULES.bcsWalkOnlyFrom;
    const mostBcs = bcsWalkOnlyFrom - 1;
    const text = `Body condition ${bcs} of 9: running would load joints and heart too much${changeNote(rule, bcsWalkOnlyFrom)}.`;
    const change = `Body condition ${mostBcs} or lower.`;
    return [
      found(
        { code: 'bcs-high', gate: 'walking only', text, change, params: { bcs, mostBcs } },
        underRule(rule, bcsWalkOnlyFrom, PRACTICE),
      ),
    ];
  }
  if (bcs > bcsVetUpTo) return [];
  const rule = READINESS_RULES.bcsVetUpTo;
  const text = `Body condition ${bcs} of 9: too thin; the cause has to be found${changeNote(rule, bcsVetUpTo)}.`;
  const change = 'The vet finds the cause and the dog gains weight.';
  return [
    found(
      { code: 'bcs-low', gate: 'vet first', text, change, params: { bcs } },
      underRule(rule, bcsVetUpTo, PRACTICE),
    ),
  ];
}

/** Age: not known, too young, better to wait, senior (C, CP and D as each reason says). */
export function ageReasons(
  input: ScreeningInput,
  ageMonths: number | null,
  rules?: RuleChanges,
): Found[] {
  if (ageMonths === null) {
    const text = 'The age is not known.';
    const change = 'Enter the day of birth, or an estimate of it by the vet.';
    return [found({ code: 'age-missing', gate: 'walking only', text, change }, OWN)];
  }
  const gate = ageGate(gateWeightKg(input), input.neuteredAtMonths, rules);
  if (input.radiographicClearance !== true) {
    if (ageMonths < gate.requiredMonths) return [tooYoung(input, ageMonths, gate, rules)];
    if (ageMonths < gate.advisedMonths) {
      const by = adviceRules(gateWeightKg(input), input.neuteredAtMonths, rules);
      return [betterWait(ageMonths, gate, by)];
    }
  }
  return isSenior(ageMonths, gateWeightKg(input), rules) ? [senior(ageMonths, gate)] : [];
}

type GateMonths = ReturnType<typeof ageGate>;

/** The age rule that counts for this dog. */
function ageRule(input: ScreeningInput, rules?: RuleChanges): Rule {
  const large = gateWeightKg(input) >= readinessRuleValues(rules).largeFromKg;
  return large ? READINESS_RULES.ageLargeMonths : READINESS_RULES.ageSmallMonths;
}

function tooYoung(
  input: ScreeningInput,
  ageMonths: number,
  gate: GateMonths,
  rules?: RuleChanges,
): Found {
  const rule = ageRule(input, rules);
  const { requiredMonths } = gate;
  const text = `${ageMonths} months old: no running in harness before ${requiredMonths} months${changeNote(rule, requiredMonths)}.`;
  const change = `Wait until ${requiredMonths} months, or the vet confirms closed growth plates on radiographs.`;
  const params = { ageMonths, ...gate };
  return found(
    { code: 'age-growth', gate: 'walking only', text, change, params },
    underRule(rule, requiredMonths, GROWTH, ['largeFromKg']),
  );
}

function betterWait(ageMonths: number, gate: GateMonths, rules: readonly RuleId[]): Found {
  const text = `${ageMonths} months old: waiting until ${gate.advisedMonths} months is advised (very large, or neutered early).`;
  const params = { ageMonths, ...gate };
  return found({ code: 'age-advice', gate: 'note', text, params }, { ...ADVICE, rules });
}

function senior(ageMonths: number, gate: GateMonths): Found {
  const text =
    'Senior: no upper age while fit and cleared by the vet; start with walking, one level lower.';
  const params = { ageMonths, ...gate };
  return found(
    { code: 'senior', gate: 'note', text, params },
    { ...SENIOR, rules: ['seniorFromPercent'] },
  );
}
