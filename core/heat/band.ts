import { ArgumentError } from '../check.ts';
import type { Reason } from '../figure.ts';
import type { RuleChanges } from '../rules/all.ts';
import { HEAT_RULES, heatRuleValues, type HeatRuleValues } from '../rules/heat.ts';
import { changeNote, provenanceOf } from '../rules/rule.ts';
import { checkAir, dewPoint, heatIndex, type Air } from './air.ts';
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

function checkedLimits(values: HeatRuleValues): void {
  const ladder = [
    values.heatUsualToC,
    values.heatCautionToC,
    values.heatHalfToC,
    values.heatWalkToC,
  ];
  if (ladder.every((limit, index) => index === 0 || limit >= ladder[index - 1]!)) return;
  throw new ArgumentError(
    'rules',
    '°C',
    undefined,
    `The limits of the heat bands must rise: heatUsualToC, heatCautionToC, heatHalfToC, heatWalkToC are ${ladder.join(', ')} °C`,
  );
}

function bandAt({ tempC, humidityPct }: Air, limits: HeatLimits): HeatBandId {
  if (tempC > limits.walkToC) return 'no run';
  if (tempC > limits.halfToC) return 'walk only';
  const humid = humidityPct >= limits.humidFromPct && tempC >= limits.humidFromC;
  if (tempC > limits.cautionToC || humid) return 'half the run time';
  return tempC > limits.usualToC ? 'caution' : 'usual care';
}

const forbidden = (dog: HeatDog): boolean => dog.shortNosed === true && dog.cleared === false;

function limitReason(rules: HeatRuleValues, limits: HeatLimits): Reason {
  const rule = HEAT_RULES.heatWalkToC;
  const changed = [
    HEAT_RULES.heatUsualToC,
    HEAT_RULES.heatCautionToC,
    HEAT_RULES.heatHalfToC,
    HEAT_RULES.heatHumidFromC,
    rule,
  ].find(({ id, value }) => rules[id] !== value);
  const { usualToC, cautionToC, halfToC, walkToC } = limits;
  const note = changed === undefined ? '' : changeNote(changed, rules[changed.id]);
  return {
    code: 'heat-bands',
    text: `Bands in shade air temperature for this dog: usual care to ${usualToC} °C, caution to ${cautionToC}, half the run time to ${halfToC}, walk only to ${walkToC}, no run above${note}.`,
    params: { usualToC, cautionToC, halfToC, walkToC },
    ...provenanceOf(changed ?? rule, rules[(changed ?? rule).id]),
  };
}

function humidReason(rules: HeatRuleValues): Reason {
  return {
    code: 'heat-humid',
    text: `Humid air (${rules.heatHumidFromPct} % and more): panting cools less. Take the cautious end of the advice.`,
    params: { humidityPct: rules.heatHumidFromPct },
    evidence: 'A',
    mark: 'S',
    sources: ['hall2022', 'ownDecision'],
  };
}

/**
 * The dog's own heat band in this air, with what to do and why. Not the human heat index: on days
 * of canine heat illness the median air temperature was 16.9 °C.
 *
 * Limits in shade air temperature for an ordinary dog: to 10 °C usual care, to 15 caution, to 18
 * (and in humid air of 85 % and more from 16) half the run time, to 20 walk only, above no run.
 * Down by 3 °C for each burden, 6 at most; short-nosed with clearance 6.
 *
 * @throws RangeError for tempC outside −40–60 °C, humidityPct outside 0–100 %, bcs, weight, or
 *   rules whose limits do not rise.
 * Sources: our own cautious choice (C/D), after Hall et al. 2022 and Carter & Hall 2018 (S).
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
  return {
    band,
    advice: HEAT_ADVICE[band],
    runShare: RUN_SHARE[band],
    limits,
    reasons: [limitReason(rules, limits), ...shift.reasons, ...(humid ? [humidReason(rules)] : [])],
    heatIndexC: heatIndex(air),
    dewPointC: humidityPct < 0.1 ? null : dewPoint(air),
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
