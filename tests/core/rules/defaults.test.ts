import { describe, expect, it } from 'vitest';
import { GAIT_RULES } from '../../../core/rules/gait.ts';
import { HEAT_RULES } from '../../../core/rules/heat.ts';
import { READINESS_RULES } from '../../../core/rules/readiness.ts';

/**
 * Every default as it was taken from its source, or decided: a change of one is a decision about
 * dogs, and is made here as well. Marks: S read in the source, M from memory, C our arithmetic,
 * CP common practice, D our own decision.
 */
type Default = readonly [value: number, unit: string, mark: string, sources: string];

const AGE = 'commonPractice sportRules plateClosure';
const IN_HEAT = 'ownDecision hall2022 carterHall2018';

const READINESS: Readonly<Record<string, Default>> = {
  ageSmallMonths: [12, 'months', 'CP', AGE],
  ageLargeMonths: [18, 'months', 'CP', AGE],
  largeFromKg: [20, 'kg', 'D', 'hart2020 ownDecision'],
  giantFromKg: [40, 'kg', 'D', 'ownDecision'],
  ageGiantAdvisedMonths: [24, 'months', 'D', 'ownDecision'],
  earlyNeuterBeforeMonths: [12, 'months', 'D', 'ownDecision'],
  earlyNeuterExtraMonths: [6, 'months', 'D', 'salmeri1991 ownDecision'],
  bcsWalkOnlyFrom: [8, 'of 9', 'CP', 'commonPractice'],
  bcsVetUpTo: [2, 'of 9', 'CP', 'commonPractice'],
  seniorFromPercent: [75, '%', 'S', 'aahaLifeStages mcmillan2024'],
  walkBaseMinutes: [30, 'min', 'D', 'ownDecision'],
};

const HEAT: Readonly<Record<string, Default>> = {
  heatUsualToC: [10, '°C', 'D', IN_HEAT],
  heatCautionToC: [15, '°C', 'D', IN_HEAT],
  heatHalfToC: [18, '°C', 'D', IN_HEAT],
  heatHumidFromPct: [
    70,
    '% relative humidity',
    'D',
    'ownDecision stull2011 carterHall2018 higginsIampietro',
  ],
  heatWalkToC: [20, '°C', 'D', `${IN_HEAT} raceLimits`],
  heatShiftC: [3, '°C', 'D', 'ownDecision'],
  heatShiftMostC: [6, '°C', 'D', 'ownDecision'],
  heatBcsFrom: [6, 'of 9', 'D', 'ownDecision'],
  heatHeavyOverKg: [50, 'kg', 'D', 'ownDecision'],
  heatNotUsedWeeks: [2, 'weeks', 'D', 'ownDecision'],
  coldWarmUpBelowC: [0, '°C', 'D', 'ownDecision'],
  coldWarmUpMinutes: [15, 'min', 'D', 'ownDecision'],
  coldCoatUnderKg: [10, 'kg', 'D', 'ownDecision'],
  coldHalfBelowC: [-10, '°C', 'D', 'ownDecision'],
  coldNoneBelowC: [-20, '°C', 'D', 'ownDecision'],
};

const GAIT: Readonly<Record<string, Default>> = {
  froudeTrot: [0.5, '', 'M', 'froudeGaits'],
  froudeCanterLow: [2, '', 'M', 'froudeGaits'],
  froudeCanterHigh: [3, '', 'M', 'froudeGaits'],
  jointErrorDegrees: [6, '°', 'S', 'jaegger2002'],
  girthErrorCm: [1, 'cm', 'S', 'bascunan2016'],
  standingErrorPercent: [5, '% of the reading', 'D', 'ownDecision'],
  hindDifferencePercent: [8.7, '% of body weight', 'C', 'hyytiainen2012'],
  pairPhaseTolerance: [10, '% of the stride', 'D', 'ownDecision'],
};

describe.each([
  ['readiness', READINESS_RULES, READINESS],
  ['heat', HEAT_RULES, HEAT],
  ['gait', GAIT_RULES, GAIT],
] as const)('the defaults of %s', (_subject, rules, pinned) => {
  it.each(Object.entries<Default>(pinned))('%s is as it was taken', (id, wanted) => {
    const { value, unit, mark, sources } = Object.values(rules).find((rule) => rule.id === id)!;
    expect([value, unit, mark, sources.join(' ')]).toEqual(wanted);
  });
});
