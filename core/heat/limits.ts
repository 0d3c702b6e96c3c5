import { ArgumentError } from '../check.ts';
import type { RuleChanges } from '../rules/all.ts';
import { HEAT_RULES, heatRuleValues, type HeatRuleValues } from '../rules/heat.ts';
import { written } from '../rules/rule.ts';
import type { Air } from './air.ts';
import {
  HEAT_BANDS,
  type HeatBandId,
  type HeatDog,
  type HeatLimits,
  type HeatRungs,
  type HeatStep,
} from './types.ts';
import { shadeWbgt } from './wetBulb.ts';

/** The rules whose limits are the bands. */
export const LADDER = ['heatUsualToC', 'heatCautionToC', 'heatHalfToC', 'heatWalkToC'] as const;
const RUNGS = ['usualToC', 'cautionToC', 'halfToC', 'walkToC'] as const;

/** The columns of a printed ladder: ordinary, damp, and wet air of rain or fog. */
export const LADDER_HUMIDITIES_PCT = [60, 80, 100] as const;

/** @throws RangeError naming every limit when they do not rise. */
export function checkedLimits(values: HeatRuleValues): void {
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
 * @example
 * checkHeatLimits({ heatUsualToC: 15, heatCautionToC: 12 })
 *   // throws The limits of the heat bands must rise
 */
export function checkHeatLimits(changes: RuleChanges): void {
  checkedLimits(heatRuleValues(changes));
}

function moved(rungs: HeatRungs, shiftC: number, notUsed: boolean): HeatRungs {
  const { usualToC, cautionToC, halfToC, walkToC } = rungs;
  return {
    usualToC: usualToC - shiftC,
    // In the first warm spell caution is half the run time already.
    cautionToC: (notUsed ? usualToC : cautionToC) - shiftC,
    halfToC: halfToC - shiftC,
    walkToC: walkToC - shiftC,
  };
}

/**
 * The limits of a dog, both kinds moved down by `shiftC`. Those in wet-bulb globe temperature are
 * those of the air at the reference humidity: 7.9, 12.6, 15.5 and 17.4 °C as published, at 70 %.
 * Source: our own decision (D) after Stull 2011 (C).
 */
export function heatLimits(rules: HeatRuleValues, shiftC: number, notUsed: boolean): HeatLimits {
  const damp = (tempC: number) => shadeWbgt({ tempC, humidityPct: rules.heatHumidFromPct });
  const { heatUsualToC, heatCautionToC, heatHalfToC, heatWalkToC } = rules;
  const air = {
    usualToC: heatUsualToC,
    cautionToC: heatCautionToC,
    halfToC: heatHalfToC,
    walkToC: heatWalkToC,
  };
  const wbgt = {
    usualToC: damp(heatUsualToC),
    cautionToC: damp(heatCautionToC),
    halfToC: damp(heatHalfToC),
    walkToC: damp(heatWalkToC),
  };
  return { ...moved(air, shiftC, notUsed), wbgt: moved(wbgt, shiftC, notUsed), shiftC };
}

/** A short-nosed dog runs only with a clearance that is on record: an unknown one is none. */
export const forbidden = (dog: HeatDog): boolean => dog.shortNosed === true && dog.cleared !== true;

const bandOn = (value: number, rungs: HeatRungs): HeatBandId =>
  HEAT_BANDS[RUNGS.filter((rung) => value > rungs[rung]).length]!;

/**
 * True when `a` is stricter than `b`.
 * @example stricterBand('walk only', 'caution') // => true
 */
export function stricterBand(a: HeatBandId, b: HeatBandId): boolean {
  return HEAT_BANDS.indexOf(a) > HEAT_BANDS.indexOf(b);
}

/**
 * In frost, and in air drier than 10 %, Stull's fit falls where humidity rises. There it decides
 * nothing (the limits lie far above) or is taken at 10 %, so that damper air is never milder.
 */
const WBGT_FROM_C = 0;
const WBGT_FROM_PCT = 10;

/** The band of the air by its temperature alone. */
export const bandOfTemperature = ({ tempC }: Air, limits: HeatLimits): HeatBandId =>
  bandOn(tempC, limits);

/** The stricter of the band by air temperature and the band by wet-bulb globe temperature. */
export function bandOfAir(air: Air, limits: HeatLimits): HeatBandId {
  const byAir = bandOfTemperature(air, limits);
  if (air.tempC < WBGT_FROM_C) return byAir;
  const humidityPct = Math.max(WBGT_FROM_PCT, air.humidityPct);
  const byWbgt = bandOn(shadeWbgt({ tempC: air.tempC, humidityPct }), limits.wbgt);
  return stricterBand(byWbgt, byAir) ? byWbgt : byAir;
}

/** Halvings of at most 65 °C down to under a millionth of a degree. */
const HALVINGS = 26;

/** The air temperature up to which no band stricter than `band` holds at this humidity, °C. */
function endsAt(band: HeatBandId, humidityPct: number, limits: HeatLimits): number {
  const fits = (tempC: number) => !stricterBand(bandOfAir({ tempC, humidityPct }, limits), band);
  const top = limits[RUNGS[HEAT_BANDS.indexOf(band)]!];
  if (fits(top)) return top;
  let low = Math.min(WBGT_FROM_C, top);
  let high = top;
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** Where the bands of a dog end in ordinary, damp and wet air; a band without width is left out. */
export function heatLadder(limits: HeatLimits): HeatStep[] {
  const steps = HEAT_BANDS.filter((band) => band !== 'no run').map((band) => ({
    band,
    toC: LADDER_HUMIDITIES_PCT.map((humidityPct) => endsAt(band, humidityPct, limits)),
  }));
  return steps.filter(
    ({ toC }, index) =>
      index === 0 || toC.some((end, column) => end > steps[index - 1]!.toC[column]!),
  );
}
