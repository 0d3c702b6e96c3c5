import type { Ration } from '../../core/index.ts';
import type { FoodDecision } from './contract.ts';
import { switchedDiet } from './foodSwitch.ts';
import type {
  ClientInput,
  DogInput,
  LimbGrades,
  PlanRequest,
  Practice,
  VisitFacts,
} from './records.ts';

// The starting state of each form. A field without an answer is null or empty, never a guess that
// would be taken for a finding.

const UNSEEN: LimbGrades = { leftFore: null, rightFore: null, leftHind: null, rightHind: null };

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

export function blankClient(): ClientInput {
  return {
    name: '',
    phone: '',
    email: '',
    address: '',
    vetPractice: '',
    vetName: '',
    vetContact: '',
    notes: '',
  };
}

export function blankDog(): Omit<DogInput, 'clientId'> {
  return {
    name: '',
    breed: '',
    sex: 'female',
    neuter: 'unknown',
    neuteredAtMonths: null,
    birthDay: '',
    adultWeightKg: null,
    withersCm: null,
    coat: 'ordinary',
    shortNosed: false,
    sighthound: false,
    notes: '',
  };
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
  return {
    dogId,
    kind: previous === undefined ? 'intake' : 'follow-up',
    day,
    weightKg: null,
    weighingMethod: 'same scale',
    scaleStepKg: previous?.scaleStepKg ?? 0.1,
    bcs: null,
    muscle: null,
    lamenessWalk: { ...UNSEEN },
    lamenessTrot: { ...UNSEEN },
    trotLamenessAssessed: false,
    gaitNote: '',
    measurements: [],
    footfalls: [],
    signs: [],
    surgery: previous?.surgery ?? 'none',
    airwayDisease: previous?.airwayDisease ?? false,
    airwayClearance: previous?.airwayClearance ?? false,
    radiographicClearance: previous?.radiographicClearance ?? false,
    conditioning: previous?.conditioning ?? 'unconditioned',
    walkBase: previous?.walkBase ?? 'not tested',
    activity: previous?.activity ?? 'low',
    consent: previous?.consent ?? { given: false, vet: '', day: null, scope: '', expiryDay: null },
    overrides: previous?.overrides ?? [],
    targetWeightKg: previous?.targetWeightKg ?? null,
    foodGoal: previous?.foodGoal ?? 'hold',
    mealsPerDay: previous?.mealsPerDay ?? 2,
    weightLossDiet: previous?.weightLossDiet ?? false,
    diet: dietNow(switchedDiet(previous?.diet ?? [], decided?.foodSwitch ?? null), decided?.ration),
    notes: '',
  };
}

function dietNow(diet: VisitFacts['diet'], decided: Ration | null | undefined): VisitFacts['diet'] {
  return diet.map((item) => {
    const ration = decided?.items.find(
      ({ name, treat }) => name === item.name && treat === item.treat,
    );
    return ration === undefined
      ? item
      : { ...item, gramsPerDay: Math.round(ration.gramsPerDay * 10) / 10 };
  });
}

export function blankDietItem(treat = false): VisitFacts['diet'][number] {
  return {
    name: '',
    treat,
    kcalPer100g: 0,
    gramsPerDay: 0,
    gramsPerCup: null,
    fixedGrams: false,
    energyFrom: 'declared',
    label: null,
  };
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
