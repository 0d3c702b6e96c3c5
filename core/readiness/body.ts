import type { Provenance } from '../figure.ts';
import { from, OWN, PRACTICE } from '../origin.ts';
import type { RuleChanges, RuleId } from '../rules/all.ts';
import { READINESS_RULES, readinessRuleValues } from '../rules/readiness.ts';
import { changeNote, type Rule } from '../rules/rule.ts';
import { adviceRules, ageGate, isSenior } from './age.ts';
import { found, underRule, type Found } from './reason.ts';
import type { ScreeningInput } from './types.ts';

const GROWTH: Provenance = from(
  'C',
  'CP',
  'commonPractice',
  'sportRules',
  'hart2020',
  'plateClosure',
);
const ADVICE: Provenance = from('D', 'D', 'ownDecision', 'salmeri1991');
const SENIOR: Provenance = from('D', 'CP', 'commonPractice', 'aahaLifeStages');

/** Below this age a present weight says little of the adult one: months (D). */
const ADULT_WEIGHT_ASKED_MONTHS = 24;

const asksAdultWeight = ({ adultWeightKg }: ScreeningInput, ageMonths: number | null): boolean =>
  adultWeightKg === undefined && ageMonths !== null && ageMonths < ADULT_WEIGHT_ASKED_MONTHS;

/**
 * The adult weight the age gate counts with, kg; where none is known the later age counts. A dog
 * under 24 months whose adult weight is not known counts as one of the larger (D).
 */
export function gateWeightKg(
  input: ScreeningInput,
  ageMonths: number | null,
  rules?: RuleChanges,
): number {
  const known = input.adultWeightKg ?? input.weightKg ?? READINESS_RULES.giantFromKg.value;
  if (!asksAdultWeight(input, ageMonths)) return known;
  return Math.max(known, readinessRuleValues(rules).largeFromKg);
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
  if (bcs > bcsVetUpTo) return bcs <= THIN_UP_TO_BCS ? [thin(bcs)] : [];
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

/** Up to here a note is made of a thin dog (D). */
const THIN_UP_TO_BCS = 3;

function thin(bcs: number): Found {
  const text = `Body condition ${bcs} of 9: thin. Running asks for more food, not less.`;
  const change = 'Body condition 4 or 5.';
  return found({ code: 'bcs-thin', gate: 'note', text, change, params: { bcs } }, OWN);
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
  const weightKg = gateWeightKg(input, ageMonths, rules);
  const gate = ageGate(weightKg, input.neuteredAtMonths, rules);
  if (input.radiographicClearance === true) {
    return isSenior(ageMonths, weightKg, rules, input.shortNosed) ? [senior(ageMonths, gate)] : [];
  }
  const asked = asksAdultWeight(input, ageMonths) ? [adultWeightMissing()] : [];
  if (ageMonths < gate.requiredMonths)
    return [tooYoung(weightKg, ageMonths, gate, rules), ...asked];
  if (ageMonths < gate.advisedMonths) {
    const by = adviceRules(weightKg, input.neuteredAtMonths, rules);
    return [betterWait(ageMonths, gate, by), ...asked];
  }
  return isSenior(ageMonths, weightKg, rules, input.shortNosed)
    ? [senior(ageMonths, gate), ...asked]
    : asked;
}

function adultWeightMissing(): Found {
  const text = 'The adult weight is not known: the later age of larger dogs counts.';
  const change = 'Enter the expected adult weight.';
  return found({ code: 'adult-weight-unknown', gate: 'note', text, change }, OWN);
}

type GateMonths = ReturnType<typeof ageGate>;

/** The age rule that counts for this dog. */
function ageRule(weightKg: number, rules?: RuleChanges): Rule {
  const large = weightKg >= readinessRuleValues(rules).largeFromKg;
  return large ? READINESS_RULES.ageLargeMonths : READINESS_RULES.ageSmallMonths;
}

function tooYoung(
  weightKg: number,
  ageMonths: number,
  gate: GateMonths,
  rules?: RuleChanges,
): Found {
  const rule = ageRule(weightKg, rules);
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
