import { weighOut, type Ration } from '../../../core/index.ts';
import type { FoodDecision } from '../contract.ts';
import { switchedDiet } from '../food/switch.ts';
import type { ClientInput, DogInput, PlanRequest, Practice, VisitFacts } from '../records.ts';
import { blankOf, carriedOf } from './blank.ts';
import { CLIENT } from './client.ts';
import { DOG } from './dog.ts';
import { VISIT } from './visit.ts';

// The starting state of each form. A field without an answer is null or empty, never a guess that
// would be taken for a finding.

export function blankPractice(): Practice {
  return {
    name: '',
    practitioner: '',
    address: '',
    phone: '',
    email: '',
    registration: '',
    weightUnit: 'kg',
    energyUnit: 'kcal',
    distanceUnit: 'km',
    temperatureUnit: 'C',
    paper: 'A4',
    dayFormat: 'YYYY-MM-DD',
    language: 'en',
    accent: '',
    footer: '',
    intakeSheets: ['running-plan', 'feeding-sheet', 'kit-sheet'],
    followUpSheets: ['progress-report', 'running-plan', 'feeding-sheet'],
  };
}

export const blankClient = (): ClientInput => blankOf(CLIENT);

/** A new dog. Its sex has no word for "not known", so it is said by whoever begins, or left open. */
export function blankDog<S extends DogInput['sex'] | null>(sex: S) {
  const { clientId: _clientId, sex: _sex, ...others } = DOG;
  return { ...blankOf(others), sex };
}

/**
 * A new visit. At a follow-up, what usually stays as it was (diet, consent, target, scale) is
 * carried over from `previous`; what has to be looked at afresh (weight, score, gait, signs) is not.
 * Foods and their amounts start from what was `decided` since, where there is a decision.
 */
export function blankVisit(
  dogId: string,
  day: string,
  previous?: VisitFacts,
  decided: Pick<FoodDecision, 'ration' | 'foodSwitch'> | null = null,
): VisitFacts {
  const { diet, ...begun } = {
    ...blankOf(VISIT),
    ...(previous === undefined ? null : carriedOf(VISIT, previous)),
  };
  return {
    ...begun,
    dogId,
    kind: previous === undefined ? 'intake' : 'follow-up',
    day,
    diet: dietNow(switchedDiet(diet, decided?.foodSwitch ?? null), decided?.ration),
  };
}

/** The foods with the grams that the owner's sheet names. */
function dietNow(diet: VisitFacts['diet'], decided: Ration | null | undefined): VisitFacts['diet'] {
  const weighed = decided == null ? [] : weighOut(decided).items;
  return diet.map((item) => {
    const fed = weighed.find(({ name, treat }) => name === item.name && treat === item.treat);
    return fed === undefined ? item : { ...item, gramsPerDay: fed.gramsPerDay };
  });
}

export function blankPlanRequest(startDay: string, start: PlanRequest['start']): PlanRequest {
  return {
    startDay,
    start,
    sessionsPerWeek: 3,
    goal: { continuousMinutes: 30 },
    eventDay: null,
    capPercent: null,
    weekdays: null,
    daysOut: [],
    climbM: null,
    paceMinPerKm: null,
    laterStages: [],
  };
}
