import { describe, expect, it } from 'vitest';
import { GAIT_RULES } from '../../../core/rules/gait.ts';
import { HEAT_RULES } from '../../../core/rules/heat.ts';
import { RAMP_RULES } from '../../../core/rules/ramp.ts';
import { READINESS_RULES } from '../../../core/rules/readiness.ts';

/**
 * Every default as it was taken from its source, or decided: a change of one is a decision about
 * dogs, and is made here as well. Marks: S read in the source, M from memory, C our arithmetic,
 * CP common practice, D our own decision.
 */
type Default = readonly [value: number, unit: string, mark: string, sources: string];

const AGE = 'commonPractice sportRules plateClosure';
const WEEKLY = 'frandsen2025 buist2008 nielsen2014 ownDecision';
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
  goalShortMinutes: [30, 'min', 'D', 'ownDecision'],
  goalHeavyFromBcs: [6, 'of 9', 'D', 'ownDecision'],
  goalLongMinutes: [90, 'min', 'D', 'ownDecision'],
  afterInjuryMonths: [12, 'months', 'D', 'ownDecision'],
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

const RAMP: Readonly<Record<string, Default>> = {
  sessionRisePercent: [10, '%', 'S', 'frandsen2025'],
  sessionStepMinutes: [2, 'run-minutes', 'D', 'ownDecision'],
  sessionWindowDays: [30, 'days', 'S', 'frandsen2025'],
  capConditioned: [20, '%', 'D', WEEKLY],
  capUnconditioned: [20, '%', 'D', WEEKLY],
  capPostInjury: [15, '%', 'D', WEEKLY],
  smallStepMinutes: [2, 'min a week', 'D', 'ownDecision'],
  shortWeekMinutes: [20, 'min a week', 'D', 'ownDecision'],
  twoWeekRisePercent: [30, '%', 'S', 'nielsen2014'],
  recoveryEvery: [4, 'weeks', 'D', 'ownDecision'],
  recoveryPercent: [70, '% of the highest week', 'D', 'ownDecision'],
  recoverySkipPercent: [75, '% of the highest week', 'D', 'ownDecision'],
  easyBeforeEventPercent: [70, '% of the week before', 'D', 'ownDecision'],
  boutsConditioned: [6, 'bouts of 1 min', 'D', 'ownDecision'],
  boutsUnconditioned: [4, 'bouts of 1 min', 'D', 'nielsen2014 ownDecision'],
  boutsPostInjury: [4, 'bouts of half a minute', 'D', 'ownDecision'],
  sessionsPerStep: [2, 'sessions', 'S', 'trials2023'],
  boutsPerSession: [2, 'bouts a session', 'D', 'ownDecision'],
  mostBouts: [10, 'bouts', 'D', 'ownDecision'],
  leastSharePercent: [60, '% of the longest of its week', 'D', 'ownDecision'],
  leastContinuousMinutes: [5, 'min', 'D', 'ownDecision'],
  equalUntilMinutes: [20, 'min', 'D', 'zinkVanDyke ownDecision'],
  mediumPercent: [75, '% of the longest', 'D', 'ownDecision'],
  stageWeeks: [3, 'weeks', 'D', 'ownDecision'],
  warmUpMinutes: [10, 'min', 'CP', 'commonPractice'],
  coolDownMinutes: [10, 'min', 'CP', 'commonPractice'],
  breakRepeatDays: [7, 'days', 'D', 'ownDecision'],
  breakShortDays: [14, 'days', 'D', 'ownDecision'],
  breakShortPercent: [25, '%', 'D', 'ownDecision'],
  breakLongDays: [28, 'days', 'D', 'ownDecision'],
  breakLongPercent: [50, '%', 'D', 'ownDecision'],
  returnRisePercent: [25, '%', 'D', 'ownDecision'],
  illnessPercent: [50, '%', 'D', 'ownDecision'],
  illnessRestDays: [2, 'days', 'D', 'ownDecision'],
  daysOffAfterBack: [2, 'days', 'M', 'sorenessRules'],
  setbackDays: [28, 'days', 'D', 'ownDecision'],
  settledAfter: [6, 'clean sessions', 'D', 'ownDecision'],
  walkDays: [5, 'a week', 'D', 'ownDecision'],
  walkFirstMinutes: [10, 'min', 'D', 'ownDecision'],
  walkStepMinutes: [5, 'min', 'D', 'ownDecision'],
  pullFirstMinutes: [5, 'min', 'D', 'ownDecision'],
  pullStepMinutes: [5, 'min', 'D', 'ownDecision'],
  hillTimes: [4, 'times', 'D', 'ownDecision'],
  hillMinutes: [1, 'min', 'D', 'ownDecision'],
  speedTimes: [4, 'times', 'D', 'ownDecision'],
  speedSeconds: [20, 's', 'D', 'ownDecision'],
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
  ['the ramp', RAMP_RULES, RAMP],
] as const)('the defaults of %s', (_subject, rules, pinned) => {
  it.each(Object.entries<Default>(pinned))('%s is as it was taken', (id, wanted) => {
    const { value, unit, mark, sources } = Object.values(rules).find((rule) => rule.id === id)!;
    expect([value, unit, mark, sources.join(' ')]).toEqual(wanted);
  });
  it('are all named here', () => {
    expect(Object.keys(pinned).sort()).toEqual(Object.keys(rules).sort());
  });
});
