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

/** Every number of the heat bands. Temperatures are in the shade. */
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
  heatHumidFromC: {
    id: 'heatHumidFromC',
    name: 'In humid air, half the run time at the latest from',
    value: 16,
    ...band,
    max: MOST.caution,
    note: 'The median temperature on days of canine heat illness was 16.9 °C; the line is our choice.',
  },
  heatHumidFromPct: {
    id: 'heatHumidFromPct',
    name: 'Air counts as humid from',
    value: 85,
    unit: '% relative humidity',
    min: 50,
    max: 95,
    evidence: 'D',
    mark: 'D',
    sources: ['ownDecision', 'hall2022'],
    note,
  },
  heatWalkToC: {
    id: 'heatWalkToC',
    name: 'Walk only up to',
    value: 20,
    ...band,
    max: MOST.walk,
    sources: [...band.sources, 'raceLimits'],
    note: `${note} Sport rules for fit racing dogs are quoted as allowing about 25 °C (second hand).`,
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
    note: 'Down, for each of: body condition 6 and more, over 50 kg, thick or dark coat, senior, not used to the weather.',
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
} as const satisfies RuleTable;

export type HeatRuleId = keyof typeof HEAT_RULES;
export type HeatRuleValues = Readonly<Record<HeatRuleId, number>>;

/** The published values, with `changes` put over them. */
export function heatRuleValues(
  changes: Readonly<Record<string, number | undefined>> = {},
): HeatRuleValues {
  return valuesOf(HEAT_RULES, changes);
}
