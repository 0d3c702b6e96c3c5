import { ArgumentError } from '../check.ts';
import type { Reason } from '../figure.ts';
import type { RuleChanges } from '../rules/all.ts';
import { HEAT_RULES, heatRuleValues, type HeatRuleValues } from '../rules/heat.ts';
import { provenanceOf, spelled, written, type Rule } from '../rules/rule.ts';
import { checkAir, type Air } from './air.ts';
import { dewPointFigure, heatIndexFigure } from './airFigures.ts';
import { heatLimits, heatShift } from './shift.ts';
import {
  HEAT_BANDS,
  type HeatBand,
  type HeatBandId,
  type HeatBandInput,
  type HeatDog,
  type HeatLimits,
  type HeatTable,
} from './types.ts';

/** What each band asks for. Texts are common practice; the limits between bands are our own. */
export const HEAT_ADVICE: Readonly<Record<HeatBandId, readonly string[]>> = {
  'usual care': ['Run as planned. Offer water every 15 to 20 minutes.'],
  caution: [
    'Run as planned, in the shade where you can. Offer water every 15 to 20 minutes.',
    'Watch the dog: a wide, long tongue, or falling behind, means stop and walk.',
  ],
  'half the run time': [
    'Run half of the planned minutes at most, early or late in the day and in the shade.',
    'Carry water and offer it every 15 minutes.',
  ],
  'walk only': ['Do not run. Walk in the shade, with water.'],
  'no run': ['No running. Short walks in the coolest hours only.'],
};

const RUN_SHARE: Readonly<Record<HeatBandId, number>> = {
  'usual care': 1,
  caution: 1,
  'half the run time': 0.5,
  'walk only': 0,
  'no run': 0,
};

/** The rules whose limits are the bands. */
const LADDER = ['heatUsualToC', 'heatCautionToC', 'heatHalfToC', 'heatWalkToC'] as const;

function checkedLimits(values: HeatRuleValues): void {
  const ladder = LADDER.map((id) => values[id]);
  if (ladder.every((limit, index) => index === 0 || limit >= ladder[index - 1]!)) return;
  const texts = LADDER.map((id) => `${HEAT_RULES[id].name} ${written(HEAT_RULES[id], values[id])}`);
  throw new ArgumentError(
    'rules',
    '°C',
    undefined,
    `The limits of the heat bands must rise, but are: ${texts.join(', ')}`,
  );
}

/**
 * For a practice that changes its rules one by one: do the limits of the bands still rise?
 * @throws RangeError naming every limit when they do not, or a rule that is out of its range.
 */
export function checkHeatLimits(changes: RuleChanges): void {
  checkedLimits(heatRuleValues(changes));
}

function bandAt({ tempC, humidityPct }: Air, limits: HeatLimits): HeatBandId {
  if (tempC > limits.walkToC) return 'no run';
  if (tempC > limits.halfToC) return 'walk only';
  const humid = humidityPct >= limits.humidFromPct && tempC >= limits.humidFromC;
  if (tempC > limits.cautionToC || humid) return 'half the run time';
  return tempC > limits.usualToC ? 'caution' : 'usual care';
}

/** A short-nosed dog runs only with a clearance that is on record: an unknown one is none. */
const forbidden = (dog: HeatDog): boolean => dog.shortNosed === true && dog.cleared !== true;

const changedRules = (rules: HeatRuleValues) =>
  Object.values(HEAT_RULES).filter(({ id, value }) => rules[id] !== value);

/** "Caution up to 18 °C (as published 15 °C)" */
function changeText(rule: Rule, value: number): string {
  return `${rule.name} ${written(rule, value)} (as published ${written(rule, rule.value)})`;
}

function limitReason(rules: HeatRuleValues, limits: HeatLimits): Reason {
  const { usualToC, cautionToC, halfToC, walkToC } = limits;
  const changed = changedRules(rules);
  const texts = changed.map((rule) => changeText(rule, rules[rule.id]));
  const note = changed.length === 0 ? '' : ` Set by the practice: ${texts.join('; ')}.`;
  const { evidence, mark, sources } = HEAT_RULES.heatCautionToC;
  return {
    code: 'heat-bands',
    text: `Bands in shade air temperature for this dog: usual care to ${spelled(usualToC)} °C, caution to ${spelled(cautionToC)} °C, half the run time to ${spelled(halfToC)} °C, walk only to ${spelled(walkToC)} °C, no run above.${note}`,
    params: { usualToC, cautionToC, halfToC, walkToC },
    evidence,
    mark,
    sources: changed.length === 0 ? sources : ['practiceSetting', ...sources],
    rules: [...new Set([...LADDER, ...changed.map(({ id }) => id)])],
  };
}

function humidReason(rules: HeatRuleValues): Reason {
  const { heatHumidFromPct } = HEAT_RULES;
  return {
    code: 'heat-humid',
    text: `Humid air (${rules.heatHumidFromPct} % and more): panting cools less. Take the cautious end of the advice.`,
    params: { humidityPct: rules.heatHumidFromPct },
    ...provenanceOf(heatHumidFromPct, rules.heatHumidFromPct, ['heatHumidFromC']),
  };
}

/**
 * The dog's own heat band in this air, with what to do and why. Not the human heat index: on days
 * of canine heat illness the median air temperature was 16.9 °C.
 *
 * Limits in shade air temperature for an ordinary dog: to 10 °C usual care, to 15 caution, to 18
 * (and in humid air of 85 % and more from 16) half the run time, to 20 walk only, above no run.
 * Down by 3 °C for each burden, 6 at most; short-nosed with clearance 6, without it no run.
 *
 * @throws RangeError for tempC outside −40–60 °C, humidityPct outside 0–100 %, bcs, weight, an
 *   unknown coat, or rules out of their range or whose limits do not rise.
 * Sources: our own cautious choice (D), after Hall et al. 2022 (warmth on days of heat illness, S)
 * and Carter & Hall 2018 (10.7 % of readings after winter races exceeded 40.6 °C, S).
 */
export function heatBand({
  tempC,
  humidityPct,
  dog = {},
  rules: changes,
}: HeatBandInput): HeatBand {
  const air = { tempC, humidityPct };
  checkAir(air);
  const rules = heatRuleValues(changes);
  checkedLimits(rules);
  const shift = heatShift(dog, rules);
  const limits = heatLimits(rules, shift.shiftC);
  const band = forbidden(dog) ? 'no run' : bandAt(air, limits);
  const humid = humidityPct >= rules.heatHumidFromPct && tempC >= limits.humidFromC;
  const heatIndexOfAir = heatIndexFigure(air);
  const dewPointOfAir = dewPointFigure(air);
  return {
    band,
    advice: HEAT_ADVICE[band],
    runShare: RUN_SHARE[band],
    limits,
    reasons: [limitReason(rules, limits), ...shift.reasons, ...(humid ? [humidReason(rules)] : [])],
    heatIndexC: heatIndexOfAir.value,
    dewPointC: dewPointOfAir?.value ?? null,
    figures: { heatIndex: heatIndexOfAir, dewPoint: dewPointOfAir },
  };
}

export const TABLE_TEMPS_C = [-5, 0, 5, 8, 10, 12, 14, 15, 16, 17, 18, 19, 20, 22, 25, 30] as const;
export const TABLE_HUMIDITIES_PCT = [30, 40, 50, 60, 70, 80, 85, 90, 100] as const;

/** The dog's bands over a grid of temperature and humidity, for one page. */
export function heatTable(
  input: {
    readonly dog?: HeatDog;
    readonly tempsC?: readonly number[];
    readonly humiditiesPct?: readonly number[];
    readonly rules?: RuleChanges;
  } = {},
): HeatTable {
  const { dog = {}, tempsC = TABLE_TEMPS_C, humiditiesPct = TABLE_HUMIDITIES_PCT } = input;
  const rules = heatRuleValues(input.rules);
  checkedLimits(rules);
  const shift = heatShift(dog, rules);
  const limits = heatLimits(rules, shift.shiftC);
  const rows = tempsC.map((tempC) =>
    humiditiesPct.map((humidityPct) => {
      checkAir({ tempC, humidityPct });
      return forbidden(dog) ? 'no run' : bandAt({ tempC, humidityPct }, limits);
    }),
  );
  const reasons = [limitReason(rules, limits), ...shift.reasons];
  return { tempsC, humiditiesPct, rows, limits, reasons };
}

/** True when `a` is stricter than `b`. */
export function stricterBand(a: HeatBandId, b: HeatBandId): boolean {
  return HEAT_BANDS.indexOf(a) > HEAT_BANDS.indexOf(b);
}
