import { from } from '../origin.ts';
import { addMonths, monthsBetween, type IsoDay } from '../day.ts';
import type { StartLevel } from '../ramp/types.ts';
import type { RuleChanges } from '../rules/all.ts';
import { READINESS_RULES, readinessRuleValues } from '../rules/readiness.ts';
import { changeNote } from '../rules/rule.ts';
import { provenanceOf } from '../rules/provenance.ts';
import { ageGate, isSenior } from './age.ts';
import { ageReasons, conditionReasons, gateWeightKg } from './body.ts';
import { checkInput } from './checkInput.ts';
import { consentReasons, isRecordedClearance } from './consent.ts';
import { goalReasons, isGoalSetAside } from './goal.ts';
import { airwayReasons, isEmergency, signReasons } from './history.ts';
import { injuryReasons, isAfterInjury } from './injury.ts';
import { knownReasons } from './known.ts';
import {
  closesOnlyTheStart,
  isLame,
  lamenessReasons,
  standsWhateverIsWritten,
} from './lameness.ts';
import { found, underRule, type Found } from './reason.ts';
import type { Gate, Screening, ScreeningInput, ScreeningReason } from './types.ts';

const ORDER: readonly Gate[] = ['vet first', 'walking only', 'note'];

/** A written reason shorter than this says nothing a colleague could follow: characters (D). */
export const SHORTEST_REASON = 10;

/** From here a heavy dog starts as unconditioned (D; start lower when obese: Nielsen 2014, S). */
const HEAVY_FROM_BCS = 6;

/**
 * May this dog run in harness? Looks at every gate and gives all reasons at once; the outcome is
 * the strictest gate that was not set aside with a written reason.
 *
 * What is not known keeps the dog walking (D): age, body condition, any limb not looked at in walk
 * or trot, the walk base, `signs` left out altogether (an empty list says that there are none),
 * and `historyAsked` false with nothing told. `surgery`, `injuries`, `disease`, `heatIllness`, `medicine`, `shortNosed` and
 * `airwayDisease` left out count as none. Missing consent is a note, since local law decides; known
 * disease or heat illness without a consent in force is for the vet (D). A short nose or airway
 * disease needs `airwayClearance`; consent does not stand in for it. A sign that can be an emergency
 * is set aside only with a consent in force that names vet, day and scope (D). Lameness at walk, and
 * at trot above grade 1, is never set aside: a vet's clearance on record, by gait, limb and grade,
 * lets a dog walk with it. A reason of under `SHORTEST_REASON` characters sets nothing aside (D).
 *
 * A goal over the limits of this dog is a note that no plan is made with (see `openGoalLimits`).
 *
 * @throws RangeError naming the argument: goalMinutes 0–1440 min, bcs 1–9, weights 0.1–150 kg, lameness grades 0–5,
 *   ageMonths 0–360, neuteredAtMonths 1–240, days as calendar days, unknown words, and changed
 *   rules outside their range.
 * @example
 * screenForRunning(sample.ready)
 *   // => { outcome: 'ready to start', recommendedStart: 'unconditioned', … }
 * screenForRunning({ ...sample.ready, signs: ['cough'] }).outcome // => 'vet first'
 * Sources: common practice of the trade and our own cautious choices, marked on each reason;
 * growth: Hart et al. 2020, Salmeri et al. 1991; heat in short-nosed dogs: RVC VetCompass.
 */
export function screenForRunning(input: ScreeningInput): Screening {
  checkInput(input);
  const { rules } = input;
  const ageMonths = ageOf(input);
  const all = [
    ...signReasons(input),
    ...lamenessReasons(input),
    ...injuryReasons(input, rules),
    ...knownReasons(input),
    ...airwayReasons(input),
    ...bodyReasons(input, ageMonths, rules),
    ...walkBaseReasons(input, rules),
    ...consentReasons(input),
    ...goalReasons(input, rules),
    ...loosened(input, ageMonths),
  ];
  const reasons = all
    .map((entry) => ({
      ...entry,
      unseen: isUnseen(entry, input),
      overriddenBecause: overrideFor(input, entry),
    }))
    .sort((a, b) => rank(a) - rank(b));
  const outcome = outcomeOf(reasons);
  return {
    outcome,
    found: outcomeOf(reasons.filter(({ code, unseen }) => !unseen && !closesOnlyTheStart(code))),
    reasons,
    recommendedStart: outcome === 'ready to start' ? startLevel(input, ageMonths) : null,
    oldEnoughOn: oldEnoughOn(input, ageMonths),
  };
}

/** Emergencies, then vet first, walking only and notes. */
function rank({ code, gate }: Found): number {
  return isEmergency(code) ? -1 : ORDER.indexOf(gate);
}

/** Reasons that ask for an answer. */
const UNSEEN: ReadonlySet<string> = new Set([
  'walk-not-seen',
  'trot-not-seen',
  'signs-not-asked',
  'history-not-asked',
  'age-missing',
  'bcs-missing',
]);

const isUnseen = ({ code }: Found, { walkBase }: ScreeningInput): boolean =>
  UNSEEN.has(code) || (code === 'walk-base' && walkBase !== 'failed');

function outcomeOf(reasons: readonly ScreeningReason[]): Screening['outcome'] {
  const open = reasons.filter((entry) => entry.overriddenBecause === null);
  if (open.some(({ gate }) => gate === 'vet first')) return 'vet first';
  return open.some(({ gate }) => gate === 'walking only') ? 'walking only' : 'ready to start';
}

function ageOf(input: ScreeningInput): number | null {
  if (input.ageMonths !== undefined) return input.ageMonths;
  if (input.day === undefined || input.birthDay === undefined) return null;
  return Math.max(0, monthsBetween(input.birthDay, input.day));
}

function overrideFor(input: ScreeningInput, entry: Found): string | null {
  if (entry.gate === 'note' && !isGoalSetAside(entry.code)) return null;
  if (standsWhateverIsWritten(entry)) return null;
  if (isEmergency(entry.code) && !isRecordedClearance(input)) return null;
  const override = input.overrides?.find(
    ({ code, reason: why }) => code === entry.code && why.trim().length >= SHORTEST_REASON,
  );
  return override?.reason ?? null;
}

function bodyReasons(
  input: ScreeningInput,
  ageMonths: number | null,
  rules?: RuleChanges,
): Found[] {
  return [...conditionReasons(input, rules), ...ageReasons(input, ageMonths, rules)];
}

/** Gates that the published rules would close and the practice's own leave open. */
function loosened(input: ScreeningInput, ageMonths: number | null): Found[] {
  const inForce = bodyReasons(input, ageMonths, input.rules).map(({ code }) => code);
  return bodyReasons(input, ageMonths)
    .filter(({ code, gate }) => gate !== 'note' && !inForce.includes(code))
    .map(({ text, rules = [] }) =>
      found(
        {
          code: 'loosened-rule',
          gate: 'note',
          text: `The practice has set a milder rule. As published: ${text}`,
        },
        { ...from('D', 'D', 'practiceSetting'), rules },
      ),
    );
}

function walkBaseReasons({ walkBase }: ScreeningInput, rules?: RuleChanges): Found[] {
  if (walkBase === 'passed') return [];
  const rule = READINESS_RULES.walkBaseMinutes;
  const minutes = readinessRuleValues(rules).walkBaseMinutes;
  const text =
    walkBase === 'failed' ? 'The walk base was not passed.' : 'The walk base has not been tested.';
  const change = `${minutes} min brisk walk twice in a week, sound, and clear the next day${changeNote(rule, minutes)}.`;
  return [
    found(
      { code: 'walk-base', gate: 'walking only', text, change, params: { minutes } },
      underRule(rule, minutes, provenanceOf(rule, rule.value)),
    ),
  ];
}

/** The start the record supports: never above what the practitioner judged, one lower for a senior. */
function startLevel(input: ScreeningInput, ageMonths: number | null): StartLevel {
  const judged = input.conditioning ?? 'unconditioned';
  const afterInjury = isAfterInjury(input, input.rules);
  if (judged === 'post-injury' || afterInjury || isLame(input)) return 'post-injury';
  const weightKg = gateWeightKg(input, ageMonths, input.rules);
  const senior = ageMonths !== null && isSenior(ageMonths, weightKg, input.rules, input.shortNosed);
  const heavy = (input.bcs ?? 0) >= HEAVY_FROM_BCS;
  return senior || heavy ? 'unconditioned' : judged;
}

function oldEnoughOn(input: ScreeningInput, ageMonths: number | null): IsoDay | null {
  if (ageMonths === null || input.birthDay === undefined || input.radiographicClearance === true) {
    return null;
  }
  const weightKg = gateWeightKg(input, ageMonths, input.rules);
  const { requiredMonths } = ageGate(weightKg, input.neuteredAtMonths, input.rules);
  return ageMonths < requiredMonths ? addMonths(input.birthDay, requiredMonths) : null;
}

/**
 * What keeps a dog from starting, and stops no plan in force, is a note or nothing there.
 * @example onPlan(screenForRunning({}).reasons).filter(({ unseen }) => unseen) // => []
 */
export const onPlan = (reasons: Screening['reasons']): Screening['reasons'] =>
  reasons
    .filter(({ unseen }) => !unseen)
    .map((reason) => (closesOnlyTheStart(reason.code) ? { ...reason, gate: 'note' } : reason));
