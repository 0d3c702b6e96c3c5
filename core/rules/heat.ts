import { OWN_RULE, valuesOf, type RuleTable } from './rule.ts';

const band = {
  unit: '°C',
  min: -5,
  evidence: 'D',
  mark: 'D',
  sources: ['ownDecision', 'hall2022', 'carterHall2018'],
} as const;
/**
 * Most the practice may set, °C (D): the sport limit for fit racing dogs, about 25 °C (S, second
 * hand), is the end of the ladder, and the lower rungs keep their distance from it.
 */
const MOST = { usual: 15, caution: 20, half: 23, walk: 25 } as const;
const note = 'Our own cautious band; no published limit for pet dogs was found.';

const COLD_NOTE = 'Our own; no limit from research was found for running in the cold.';
const cold = { unit: '°C', ...OWN_RULE, note: COLD_NOTE } as const;

/** Every number of the heat and cold bands. Temperatures are in the shade. */
export const HEAT_RULES = {
  heatUsualToC: {
    id: 'heatUsualToC',
    name: 'Usual care up to',
    value: 10,
    ...band,
    max: MOST.usual,
    note,
  },
  heatCautionToC: {
    id: 'heatCautionToC',
    name: 'Caution up to',
    value: 15,
    ...band,
    max: MOST.caution,
    note,
  },
  heatHalfToC: {
    id: 'heatHalfToC',
    name: 'Half the run time up to',
    value: 18,
    ...band,
    max: MOST.half,
    note,
  },
  heatHumidFromPct: {
    id: 'heatHumidFromPct',
    name: 'The limits in air temperature hold up to',
    value: 70,
    unit: '% relative humidity',
    min: 50,
    max: 95,
    evidence: 'D',
    mark: 'D',
    sources: ['ownDecision', 'stull2011', 'carterHall2018', 'higginsIampietro'],
    note: 'Damper air counts by its shade wet-bulb globe temperature: the limits on it are those of the air temperature at this humidity, and the stricter of the two bands holds.',
  },
  heatWalkToC: {
    id: 'heatWalkToC',
    name: 'Walk only up to',
    value: 20,
    ...band,
    max: MOST.walk,
    sources: [...band.sources, 'raceLimits'],
    note: `${note} Sport rules for fit racing dogs are quoted as allowing about {25 °C} (second hand).`,
  },
  heatShiftC: {
    id: 'heatShiftC',
    name: 'Shift of the bands for each burden',
    shift: true,
    value: 3,
    unit: '°C',
    min: 1,
    max: 6,
    ...OWN_RULE,
    note: 'Down, in air temperature and in wet-bulb globe temperature, for each of: body condition 6 and more, over {50 kg}, thick or dark coat, senior, not used to the weather.',
  },
  heatShiftMostC: {
    id: 'heatShiftMostC',
    name: 'Largest shift of the bands',
    shift: true,
    value: 6,
    unit: '°C',
    min: 3,
    max: 12,
    ...OWN_RULE,
    note: 'A short-nosed dog with clearance is shifted by this much at once.',
  },
  heatBcsFrom: {
    id: 'heatBcsFrom',
    name: 'Body condition counts as a burden from',
    value: 6,
    unit: 'of 9',
    min: 6,
    max: 8,
    whole: true,
    ...OWN_RULE,
    note: 'Fat insulates.',
  },
  heatHeavyOverKg: {
    id: 'heatHeavyOverKg',
    name: 'Body weight counts as a burden over',
    value: 50,
    unit: 'kg',
    min: 25,
    max: 70,
    ...OWN_RULE,
    note: 'A heavy dog sheds heat more slowly.',
  },
  heatNotUsedWeeks: {
    id: 'heatNotUsedWeeks',
    name: 'First warm spell: half the run time for',
    value: 2,
    unit: 'weeks',
    min: 1,
    max: 6,
    whole: true,
    ...OWN_RULE,
    note: 'Then a dog counts as used to the warm weather.',
  },
  coldWarmUpBelowC: {
    id: 'coldWarmUpBelowC',
    name: 'Cold: a longer warm-up, and a coat for some, below',
    value: 0,
    ...cold,
    min: -5,
    max: 10,
  },
  coldWarmUpMinutes: {
    id: 'coldWarmUpMinutes',
    name: 'Cold: warm-up',
    value: 15,
    unit: 'min',
    min: 10,
    max: 30,
    whole: true,
    ...OWN_RULE,
    note: COLD_NOTE,
  },
  coldCoatUnderKg: {
    id: 'coldCoatUnderKg',
    name: 'Cold: a coat for dogs under',
    value: 10,
    unit: 'kg',
    min: 2,
    max: 30,
    ...OWN_RULE,
    note: 'A small dog cools faster. Thin dogs (body condition 3 and less) and seniors wear one too.',
  },
  coldHalfBelowC: {
    id: 'coldHalfBelowC',
    name: 'Cold: half the run time below',
    value: -10,
    ...cold,
    min: -15,
    max: -5,
  },
  coldNoneBelowC: {
    id: 'coldNoneBelowC',
    name: 'Cold: no run below',
    value: -20,
    ...cold,
    min: -30,
    max: -15,
  },
} as const satisfies RuleTable;

export type HeatRuleId = keyof typeof HEAT_RULES;
export type HeatRuleValues = Readonly<Record<HeatRuleId, number>>;

/** The published values, with `changes` put over them. */
export function heatRuleValues(
  changes: Readonly<Record<string, number | undefined>> = {},
): HeatRuleValues {
  return valuesOf(HEAT_RULES, changes);
}
