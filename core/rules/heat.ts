import { from, OWN } from '../origin.ts';
import { valuesOf, ruleTable } from './rule.ts';

const band = {
  unit: '°C',
  ...from('D', 'D', 'ownDecision', 'hall2022', 'carterHall2018'),
} as const;
/**
 * Most the practice may set, °C (D): the sport limit for fit racing dogs, about 25 °C (S, second
 * hand), is the end of the ladder, and the lower rungs keep their distance from it.
 */
const MOST = { usual: 15, caution: 20, half: 23, walk: 25 } as const;
const note = 'Our own cautious band; no published limit for pet dogs was found.';

const COLD_NOTE = 'Our own; no limit from research was found for running in the cold.';
const cold = { unit: '°C', ...OWN, note: COLD_NOTE } as const;

/** Every number of the heat and cold bands. Temperatures are in the shade. */
export const HEAT_RULES = ruleTable({
  heatUsualToC: {
    name: 'Usual care up to',
    value: 10,
    ...band,
    range: [-5, MOST.usual],
    note,
  },
  heatCautionToC: {
    name: 'Caution up to',
    value: 15,
    ...band,
    range: [-5, MOST.caution],
    note,
  },
  heatHalfToC: {
    name: 'Half the run time up to',
    value: 18,
    ...band,
    range: [-5, MOST.half],
    note,
  },
  heatHumidFromPct: {
    name: 'The limits in air temperature hold up to',
    value: 70,
    unit: '% relative humidity',
    range: [50, 95],
    ...from('D', 'D', 'ownDecision', 'stull2011', 'carterHall2018', 'higginsIampietro'),
    note: 'Damper air counts by its shade wet-bulb globe temperature: the limits on it are those of the air temperature at this humidity, and the stricter of the two bands holds.',
  },
  heatWalkToC: {
    name: 'Walk only up to',
    value: 20,
    ...band,
    range: [-5, MOST.walk],
    sources: [...band.sources, 'raceLimits'],
    note: `${note} Sport rules for fit racing dogs are quoted as allowing about {25 °C} (second hand).`,
  },
  heatShiftC: {
    name: 'Shift of the bands for each burden',
    shift: true,
    value: 3,
    unit: '°C',
    range: [1, 6],
    ...OWN,
    note: 'Down, in air temperature and in wet-bulb globe temperature, for each of: body condition 6 and more, over {50 kg}, thick or dark coat, senior, not used to the weather.',
  },
  heatShiftMostC: {
    name: 'Largest shift of the bands',
    shift: true,
    value: 6,
    unit: '°C',
    range: [3, 12],
    ...OWN,
    note: 'A short-nosed dog with clearance is shifted by this much at once.',
  },
  heatBcsFrom: {
    name: 'Body condition counts as a burden from',
    value: 6,
    unit: 'of 9',
    range: [6, 8],
    whole: true,
    ...OWN,
    note: 'Fat insulates.',
  },
  heatHeavyOverKg: {
    name: 'Body weight counts as a burden over',
    value: 50,
    unit: 'kg',
    range: [25, 70],
    ...OWN,
    note: 'A heavy dog sheds heat more slowly.',
  },
  heatNotUsedWeeks: {
    name: 'First warm spell: half the run time for',
    value: 2,
    unit: 'weeks',
    range: [1, 6],
    whole: true,
    ...OWN,
    note: 'Then a dog counts as used to the warm weather.',
  },
  coldWarmUpBelowC: {
    name: 'Cold: a longer warm-up, and a coat for some, below',
    value: 0,
    ...cold,
    range: [-5, 10],
  },
  coldWarmUpMinutes: {
    name: 'Cold: warm-up',
    value: 15,
    unit: 'min',
    range: [10, 30],
    whole: true,
    ...OWN,
    note: COLD_NOTE,
  },
  coldCoatUnderKg: {
    name: 'Cold: a coat for dogs under',
    value: 10,
    unit: 'kg',
    range: [2, 30],
    ...OWN,
    note: 'A small dog cools faster. Thin dogs (body condition 3 and less) and seniors wear one too.',
  },
  coldHalfBelowC: {
    name: 'Cold: half the run time below',
    value: -10,
    ...cold,
    range: [-15, -5],
  },
  coldNoneBelowC: {
    name: 'Cold: no run below',
    value: -20,
    ...cold,
    range: [-30, -15],
  },
});

export type HeatRuleId = keyof typeof HEAT_RULES;
export type HeatRuleValues = Readonly<Record<HeatRuleId, number>>;

/** The published values, with `changes` put over them. */
export function heatRuleValues(
  changes: Readonly<Record<string, number | undefined>> = {},
): HeatRuleValues {
  return valuesOf(HEAT_RULES, changes);
}
