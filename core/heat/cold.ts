import type { Reason } from '../figure.ts';
import { OWN } from '../origin.ts';
import { saying } from '../quantityText.ts';
import { HEAT_RULES, type HeatRuleId, type HeatRuleValues } from '../rules/heat.ts';
import { changeNote, spelled } from '../rules/rule.ts';
import { provenanceOf } from '../rules/provenance.ts';
import { WATCH } from './advice.ts';
import type { ColdBand, ColdBandId, ColdLimits, HeatDog } from './types.ts';

/** A dog of this body condition and less is thin: no fat to hold the warmth (D). */
const THIN_UP_TO_BCS = 3;

/** What cold asks of this dog. Source: our own decision (D); no limit from research was found. */
export function coldLimits(dog: HeatDog, rules: HeatRuleValues): ColdLimits {
  const small = dog.weightKg != null && dog.weightKg < rules.coldCoatUnderKg;
  const thin = dog.bcs != null && dog.bcs <= THIN_UP_TO_BCS;
  return {
    warmUpBelowC: rules.coldWarmUpBelowC,
    warmUpMinutes: rules.coldWarmUpMinutes,
    coat: small || thin || dog.senior === true,
    halfBelowC: rules.coldHalfBelowC,
    noneBelowC: rules.coldNoneBelowC,
  };
}

function because(
  code: string,
  text: string,
  from: HeatRuleId,
  rules: HeatRuleValues,
  others: readonly HeatRuleId[] = [],
): Reason {
  const rule = HEAT_RULES[from];
  const value = rules[from];
  return {
    code,
    ...saying(`${text}${changeNote(rule, value)}.`),
    params: { [from]: value },
    ...provenanceOf(rule, value, others),
  };
}

function bandOf(tempC: number, limits: ColdLimits): ColdBandId {
  if (tempC < limits.noneBelowC) return 'no run';
  return tempC < limits.halfBelowC ? 'half the run time' : 'cold care';
}

function bandReason(band: ColdBandId, rules: HeatRuleValues): Reason {
  const below = (from: HeatRuleId) => `Below {${spelled(rules[from])} °C}`;
  if (band === 'no run') {
    return because('cold-none', `${below('coldNoneBelowC')} no run`, 'coldNoneBelowC', rules);
  }
  if (band === 'half the run time') {
    const text = `${below('coldHalfBelowC')} half the run time`;
    return because('cold-half', text, 'coldHalfBelowC', rules);
  }
  const text = `${below('coldWarmUpBelowC')} a warm-up of ${rules.coldWarmUpMinutes} minutes`;
  return because('cold-warm-up', text, 'coldWarmUpBelowC', rules, ['coldWarmUpMinutes']);
}

/** The advice for running in the cold. */
function adviceIn(band: ColdBandId, { warmUpMinutes, coat }: ColdLimits): string[] {
  if (band === 'no run') return ['Too cold to run. Short walks only.'];
  return [
    ...(band === 'half the run time'
      ? ['Run half of the planned minutes at most.']
      : ['Run as planned.']),
    `Warm up for ${warmUpMinutes} minutes.`,
    ...(coat ? ['A coat, also for the warm-up.'] : []),
    'No running on ice.',
    WATCH,
  ];
}

const SHARE: Readonly<Record<ColdBandId, number>> = {
  'cold care': 1,
  'half the run time': 0.5,
  'no run': 0,
};

/** What the cold of this air asks for; null where it is not cold. */
export function coldBand(tempC: number, dog: HeatDog, rules: HeatRuleValues): ColdBand | null {
  const limits = coldLimits(dog, rules);
  if (tempC >= limits.warmUpBelowC) return null;
  const band = bandOf(tempC, limits);
  const coatText = `Dogs under {${spelled(rules.coldCoatUnderKg)} kg}, thin dogs and seniors wear a coat in the cold`;
  const coat = because('cold-coat', coatText, 'coldCoatUnderKg', rules);
  const ice = { code: 'cold-ice', text: 'No running on ice.', params: {}, ...OWN };
  return {
    band,
    advice: adviceIn(band, limits),
    runShare: SHARE[band],
    reasons: [bandReason(band, rules), ...(limits.coat ? [coat] : []), ice],
  };
}
