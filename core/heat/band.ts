import type { Reason } from '../figure.ts';
import { saying } from '../quantityText.ts';
import type { RuleChanges } from '../rules/all.ts';
import { HEAT_RULES, heatRuleValues, type HeatRuleValues } from '../rules/heat.ts';
import { spelled, written, type Rule } from '../rules/rule.ts';
import { provenanceOf } from '../rules/provenance.ts';
import { heatAdvice } from './advice.ts';
import { checkAir, type Air } from './air.ts';
import { dewPointFigure, heatIndexFigure } from './airFigures.ts';
import { coldBand, coldLimits } from './cold.ts';
import {
  bandOfAir,
  bandOfTemperature,
  checkedLimits,
  forbidden,
  heatLadder,
  heatLimits,
  LADDER,
  LADDER_HUMIDITIES_PCT,
  stricterBand,
} from './limits.ts';
import { heatShift } from './shift.ts';
import type {
  HeatBand,
  HeatBandId,
  HeatBandInput,
  HeatDog,
  HeatLimits,
  HeatTable,
} from './types.ts';
import { shadeWbgtFigure } from './wetBulb.ts';

const RUN_SHARE: Readonly<Record<HeatBandId, number>> = {
  'usual care': 1,
  caution: 1,
  'half the run time': 0.5,
  'walk only': 0,
  'no run': 0,
};

/** Rules that move a limit; those of the cold have reasons of their own. */
const changedRules = (rules: HeatRuleValues) =>
  Object.values(HEAT_RULES).filter(
    ({ id, value }) => rules[id] !== value && !id.startsWith('cold') && id !== 'heatNotUsedWeeks',
  );

/** "Caution up to 18 °C (as published 15 °C)" */
function changeText(rule: Rule, value: number): string {
  return `${rule.name} ${written(rule, value)} (as published ${written(rule, rule.value)})`;
}

function limitReason(rules: HeatRuleValues, limits: HeatLimits): Reason {
  const { usualToC, cautionToC, halfToC, walkToC, wbgt } = limits;
  const changed = changedRules(rules);
  const texts = changed.map((rule) => changeText(rule, rules[rule.id]));
  const note = changed.length === 0 ? '' : ` Set by the practice: ${texts.join('; ')}.`;
  const { evidence, mark, sources } = HEAT_RULES.heatCautionToC;
  // No caution in the first warm spell: it is half the run time already.
  const caution = cautionToC > usualToC ? `caution to {${spelled(cautionToC)} °C}, ` : '';
  const damp = [wbgt.usualToC, wbgt.cautionToC, wbgt.halfToC, wbgt.walkToC]
    .filter((end, index, ends) => end !== ends[index - 1])
    .map((end) => `{${end.toFixed(1)} °C}`);
  return {
    code: 'heat-bands',
    ...saying(
      `Bands in shade air temperature for this dog: usual care to {${spelled(usualToC)} °C}, ${caution}half the run time to {${spelled(halfToC)} °C}, walk only to {${spelled(walkToC)} °C}, no run above. In damp air the bands by shade wet-bulb globe temperature hold where they are stricter: to ${damp.join(', ')}.${note}`,
    ),
    params: { usualToC, cautionToC, halfToC, walkToC },
    evidence,
    mark,
    sources: [
      ...(changed.length === 0 ? [] : (['practiceSetting'] as const)),
      ...sources,
      'stull2011',
    ],
    rules: [...new Set([...LADDER, 'heatHumidFromPct' as const, ...changed.map(({ id }) => id)])],
  };
}

/** Why the band is stricter than the air temperature alone would have it. */
function humidReason(wbgtC: number, byAir: HeatBandId, rules: HeatRuleValues): Reason {
  const { heatHumidFromPct } = HEAT_RULES;
  return {
    code: 'heat-humid',
    ...saying(
      `Damp air: panting cools less. By its shade wet-bulb globe temperature of {${wbgtC.toFixed(1)} °C} the band is stricter than by air temperature alone (${byAir}).`,
    ),
    params: { wbgtC, byAir },
    ...provenanceOf(heatHumidFromPct, rules.heatHumidFromPct, LADDER),
  };
}

/** The rules in force, and what they make of this dog. */
function forDog(dog: HeatDog, changes: RuleChanges | undefined) {
  const rules = heatRuleValues(changes);
  checkedLimits(rules);
  const shift = heatShift(dog, rules);
  const limits = heatLimits(rules, shift.shiftC, dog.acclimatised === false);
  const bandIn = (air: Air) => (forbidden(dog) ? 'no run' : bandOfAir(air, limits));
  return { rules, limits, bandIn, reasons: [limitReason(rules, limits), ...shift.reasons] };
}

/**
 * The dog's own heat band in this air, with what to do and why, and what the cold asks for. Not the
 * human heat index: on days of canine heat illness the median air temperature was 16.9 °C.
 *
 * The stricter of two: in shade air temperature to 10 °C usual care, to 15 caution, to 18 half the
 * run time, to 20 walk only, above no run; in shade wet-bulb globe temperature 7.9, 12.6, 15.5 and
 * 17.4 °C, the same limits at 70 % humidity. Both down by 3 °C for each burden, 6 at most;
 * short-nosed with clearance 6, without it no run; not used to warm weather, half from caution on.
 * Cold: below 0 °C a longer warm-up, and a coat for some; below −10 half; below −20 none.
 *
 * @throws RangeError for tempC outside −40–60 °C, humidityPct outside 0–100 %, bcs, weight, an
 *   unknown coat, or rules out of their range or whose limits do not rise.
 * @example
 * heatBand({ tempC: 17, humidityPct: 60 }) // => { band: 'half the run time', runShare: 0.5, … }
 * Sources: our own cautious choice (D), after Hall et al. 2022 (warmth on days of heat illness, S)
 * and Carter & Hall 2018 (10.7 % of readings after winter races exceeded 40.6 °C, S).
 */
export function heatBand({ tempC, humidityPct, dog = {}, rules: given }: HeatBandInput): HeatBand {
  const air = { tempC, humidityPct };
  checkAir(air);
  const { rules, limits, bandIn, reasons } = forDog(dog, given);
  const band = bandIn(air);
  const cold = coldBand(tempC, dog, rules);
  const byAir = bandOfTemperature(air, limits);
  const wbgt = shadeWbgtFigure(air);
  const humid = !forbidden(dog) && stricterBand(band, byAir);
  const heatIndex = heatIndexFigure(air);
  const dewPoint = dewPointFigure(air);
  // In the cold the words are those of the cold, unless the dog may run less for another reason.
  const inCold = cold !== null && RUN_SHARE[band] >= cold.runShare;
  return {
    band,
    cold,
    advice: inCold ? cold.advice : heatAdvice(band, tempC > rules.heatUsualToC),
    runShare: Math.min(RUN_SHARE[band], cold?.runShare ?? 1),
    limits,
    reasons: [
      ...reasons,
      ...(humid ? [humidReason(wbgt.value, byAir, rules)] : []),
      ...(cold?.reasons ?? []),
    ],
    heatIndexC: heatIndex.value,
    dewPointC: dewPoint?.value ?? null,
    figures: { heatIndex, dewPoint, wbgt },
  };
}

export const TABLE_TEMPS_C = [-5, 0, 5, 8, 10, 12, 14, 15, 16, 17, 18, 19, 20, 22, 25, 30] as const;
export const TABLE_HUMIDITIES_PCT = [30, 40, 50, 60, 70, 80, 85, 90, 100] as const;

/**
 * The dog's bands over a grid of temperature and humidity, for one page.
 * @example
 * heatTable({ tempsC: [9, 19], humiditiesPct: [60] }).rows // => [['usual care'], ['walk only']]
 */
export function heatTable(
  input: {
    readonly dog?: HeatDog;
    readonly tempsC?: readonly number[];
    readonly humiditiesPct?: readonly number[];
    readonly rules?: RuleChanges;
  } = {},
): HeatTable {
  const { dog = {}, tempsC = TABLE_TEMPS_C, humiditiesPct = TABLE_HUMIDITIES_PCT } = input;
  const { rules, limits, bandIn, reasons } = forDog(dog, input.rules);
  const rows = tempsC.map((tempC) =>
    humiditiesPct.map((humidityPct) => {
      checkAir({ tempC, humidityPct });
      return bandIn({ tempC, humidityPct });
    }),
  );
  return {
    tempsC,
    humiditiesPct,
    rows,
    limits,
    ladderHumiditiesPct: LADDER_HUMIDITIES_PCT,
    ladder: forbidden(dog) ? [] : heatLadder(limits),
    cold: coldLimits(dog, rules),
    notUsedWeeks: rules.heatNotUsedWeeks,
    reasons,
  };
}
