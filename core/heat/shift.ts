import { inRange, oneOf, weightInRange } from '../check.ts';
import type { Provenance, Reason } from '../figure.ts';
import { from } from '../origin.ts';
import { saying } from '../quantityText.ts';
import type { RuleId } from '../rules/all.ts';
import { HEAT_RULES, type HeatRuleValues } from '../rules/heat.ts';
import { changeNote, spelled } from '../rules/rule.ts';
import { provenanceOf } from '../rules/provenance.ts';
import type { HeatDog } from './types.ts';

/** How far this dog's bands lie below the ordinary ones, and why. */
export interface HeatShift {
  readonly shiftC: number;
  readonly reasons: readonly Reason[];
}

const COATS = ['ordinary', 'thick', 'dark', 'thick and dark'] as const;

interface Burden {
  readonly code: string;
  readonly text: string;
  /** The rule that draws the line for it, where there is one. */
  readonly from?: RuleId;
}

function burdens(dog: HeatDog, rules: HeatRuleValues): Burden[] {
  const found: Burden[] = [];
  const { bcs, weightKg, coat } = dog;
  if (bcs != null && bcs >= rules.heatBcsFrom) {
    const text = `Body condition ${bcs} of 9: fat insulates.`;
    found.push({ code: 'heat-bcs', text, from: 'heatBcsFrom' });
  }
  if (weightKg != null && weightKg > rules.heatHeavyOverKg) {
    const text = `Over {${spelled(rules.heatHeavyOverKg)} kg}: a heavy dog sheds heat more slowly.`;
    found.push({ code: 'heat-heavy', text, from: 'heatHeavyOverKg' });
  }
  if (coat !== undefined && coat !== 'ordinary') {
    const text = `Coat ${coat}: takes up or holds more heat.`;
    found.push({ code: 'heat-coat', text });
  }
  if (dog.senior === true) found.push({ code: 'heat-senior', text: 'Senior dog.' });
  if (dog.acclimatised === false) {
    const weeks = `${rules.heatNotUsedWeeks} ${rules.heatNotUsedWeeks === 1 ? 'week' : 'weeks'}`;
    const text = `Not used to warm weather: for the first ${weeks} of it half the run time as soon as caution begins.`;
    found.push({ code: 'heat-not-used', text, from: 'heatNotUsedWeeks' });
  }
  return found;
}

/**
 * Adds up what makes heat harder for this dog. A thick and dark coat counts once.
 * @throws RangeError for bcs outside 1–9, a weight outside 0.1–150 kg or an unknown coat.
 * Sources: our own choice (D); short-nosed dogs: RVC VetCompass (S) for the odds.
 */
export function heatShift(dog: HeatDog, rules: HeatRuleValues): HeatShift {
  if (dog.bcs != null) inRange('dog.bcs', dog.bcs, 'of 9', { min: 1, max: 9 });
  if (dog.weightKg != null) weightInRange('dog.weightKg', dog.weightKg);
  if (dog.coat !== undefined) oneOf('dog.coat', dog.coat, COATS);
  const most = rules.heatShiftMostC;
  const each = rules.heatShiftC;
  const reasons = burdens(dog, rules).map(({ code, text, from }) => ({
    code,
    ...saying(
      `${text} The bands lie {${spelled(each)} °C lower}${changeNote(HEAT_RULES.heatShiftC, each)}.`,
    ),
    params: { shiftC: each },
    ...provenanceOf(HEAT_RULES.heatShiftC, each, from === undefined ? [] : [from]),
  }));
  const shortNosed: Reason[] =
    dog.shortNosed === true ? [shortNosedReason(most, dog.cleared !== true)] : [];
  // Where no temperature allows running, how far limits would move says nothing.
  if (dog.shortNosed === true && dog.cleared !== true) return { shiftC: most, reasons: shortNosed };
  const sum = each * reasons.length + (dog.shortNosed === true ? most : 0);
  const capped: Reason[] = sum > most ? [cappedReason(most)] : [];
  return { shiftC: Math.min(most, sum), reasons: [...shortNosed, ...reasons, ...capped] };
}

function shortNosedReason(shiftC: number, notCleared: boolean): Reason {
  const odds: Provenance = from('A', 'S', 'vetCompass', 'ownDecision');
  if (notCleared) {
    return {
      code: 'heat-short-nosed-not-cleared',
      text: 'Short-nosed without the vet’s written clearance: no running at any temperature.',
      params: {},
      ...odds,
      change: 'The vet’s written clearance.',
    };
  }
  return {
    code: 'heat-short-nosed',
    ...saying(
      `Short-nosed, more than twice the odds of heat illness: the bands lie {${spelled(shiftC)} °C lower}. Only with the vet’s written clearance.`,
    ),
    params: { shiftC },
    ...odds,
    rules: ['heatShiftMostC'],
  };
}

function cappedReason(most: number): Reason {
  return {
    code: 'heat-shift-capped',
    ...saying(
      `Together the bands lie {${spelled(most)} °C lower}, the most by our rule${changeNote(HEAT_RULES.heatShiftMostC, most)}. With several burdens stay on the cautious side.`,
    ),
    params: { shiftC: most },
    ...provenanceOf(HEAT_RULES.heatShiftMostC, most),
  };
}
