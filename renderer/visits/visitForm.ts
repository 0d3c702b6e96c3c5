import { blankPlanRequest, blankVisit } from '../../electron/contract/records/forms.ts';
import type { Programme } from '../../core/index.ts';
import type { DogFile } from '../../electron/contract/contract.ts';
import type {
  DietItem,
  FoodLabel,
  PlanRequest,
  Practice,
  SessionInput,
  VisitFacts,
} from '../../electron/contract/records.ts';
import { firstStepKg } from '../units/dimensions.ts';
import { blankFood, type FoodEntry } from './foodEntry.ts';
import { blankPlanAnswer, type PlanAnswerEntry } from './planAnswerEntry.ts';

type Nullable<T, K extends keyof T> = Omit<T, K> & { [P in K]: T[P] | null };

/** The shares on a label while they are being typed. */
export type LabelEntry = { [K in keyof FoodLabel]: FoodLabel[K] | null };

/** A food while it is being typed: its numbers may still be missing. */
export type DietEntry = Omit<Nullable<DietItem, 'kcalPer100g' | 'gramsPerDay'>, 'label'> & {
  label: LabelEntry | null;
};

/** The facts while they are being typed. */
export type VisitEntry = Omit<
  Nullable<VisitFacts, 'scaleStepKg' | 'mealsPerDay'>,
  'diet' | 'questionnaires'
> & {
  diet: DietEntry[];
  questionnaires: Nullable<VisitFacts['questionnaires'][number], 'total'>[];
};

/** The plan asked for while it is being typed; both goals are kept, one is sent. */
export interface PlanEntry {
  wanted: boolean;
  programme: Programme;
  /** How long the dog walks briskly today, min; null where not known. */
  walkMinutesNow: number | null;
  startDay: string;
  start: PlanRequest['start'];
  sessionsPerWeek: number | null;
  goalKind: 'minutes' | 'distance';
  goal: {
    continuousMinutes: number | null;
    distanceKm: number | null;
    paceMinPerKm: number | null;
  };
  eventDay: string | null;
  capPercent: number | null;
  /** Days of the week the owner can run, Monday = 0. */
  weekdays: Weekday[];
  daysOut: string[];
  climbM: number | null;
  /** How long the owner runs without a break today, min; null where not asked. */
  ownerMinutes: number | null;
  /** The owner's pace where the goal is in minutes; a distance brings its own. */
  paceMinPerKm: number | null;
  laterStages: LaterStage[];
}

export type LaterStage = PlanRequest['laterStages'][number];
export const LATER_STAGES: readonly LaterStage[] = ['pull', 'hills', 'speed'];

export type Weekday = NonNullable<PlanRequest['weekdays']>[number];
export const WEEKDAYS: readonly Weekday[] = [0, 1, 2, 3, 4, 5, 6];

/** Intake and follow-up in one form; the paths of its fields are those of the call's input. */
export interface VisitForm {
  visit: VisitEntry;
  plan: PlanEntry;
  food: FoodEntry;
  /** Results of sessions told at this visit, by now in the form alone. */
  sessions: SessionInput[];
  /** The answer to what a review makes of the plan in force. */
  review: PlanAnswerEntry;
  /** The revision that what is typed rests on; null for a new visit. */
  basedOn: number | null;
  /** Why a saved visit is changed. */
  reason: string;
}

const DEFAULT_SESSIONS = 3;
const DEFAULT_MINUTES = 30;

/** The form of a new visit: carries over from the last one what usually stays. */
export function newVisitForm(
  file: DogFile,
  today: string,
  weightUnit: Practice['weightUnit'] = 'kg',
): VisitForm {
  const previous = file.visits.at(-1);
  const decided = file.foodDecisions.at(-1) ?? null;
  const visit = blankVisit(file.dog.id, today, previous, decided);
  if (previous === undefined) visit.scaleStepKg = firstStepKg(weightUnit);
  return formOf(visit, file, previous === undefined);
}

/** The form of a kept visit, to be put right. */
export function keptVisitForm(file: DogFile, visitId: string): VisitForm | null {
  const visit = file.visits.find((kept) => kept.id === visitId);
  if (visit === undefined) return null;
  return { ...formOf(visit, file, false), basedOn: visit.revision };
}

function formOf(visit: VisitFacts, file: DogFile, planWanted: boolean): VisitForm {
  const asked = file.plans.find((plan) => plan.current)?.request;
  const goal = asked?.goal;
  return {
    visit: { ...visit },
    plan: {
      wanted: planWanted,
      programme: asked?.programme ?? 'running',
      walkMinutesNow: asked?.walkMinutesNow ?? null,
      startDay: visit.day,
      start: visit.conditioning,
      sessionsPerWeek: asked?.sessionsPerWeek ?? DEFAULT_SESSIONS,
      goalKind: goal !== undefined && 'distanceKm' in goal ? 'distance' : 'minutes',
      goal: {
        continuousMinutes:
          goal !== undefined && 'continuousMinutes' in goal
            ? goal.continuousMinutes
            : DEFAULT_MINUTES,
        distanceKm: goal !== undefined && 'distanceKm' in goal ? goal.distanceKm : null,
        paceMinPerKm: goal !== undefined && 'distanceKm' in goal ? goal.paceMinPerKm : null,
      },
      eventDay: asked?.eventDay ?? null,
      capPercent: asked?.capPercent ?? null,
      weekdays: [...(asked?.weekdays ?? WEEKDAYS)],
      daysOut: [...(asked?.daysOut ?? [])].filter((day) => day >= visit.day),
      climbM: asked?.climbM ?? null,
      ownerMinutes: asked?.ownerMinutes ?? null,
      paceMinPerKm: asked?.paceMinPerKm ?? null,
      laterStages: [...(asked?.laterStages ?? [])],
    },
    food: blankFood(visit.day),
    sessions: [],
    review: blankPlanAnswer(),
    basedOn: null,
    reason: '',
  };
}

export function blankLabel(): LabelEntry {
  return { proteinPct: null, fatPct: null, fibrePct: null, moisturePct: null, ashPct: null };
}

export function blankDietEntry(treat: boolean): DietEntry {
  return {
    name: '',
    treat,
    kcalPer100g: null,
    gramsPerDay: null,
    gramsPerCup: null,
    fixedGrams: false,
    energyFrom: 'declared',
    label: null,
  };
}

/** The facts as far as they can be computed with: lines that lack something are left out. */
export function factsOf(entry: VisitEntry): VisitFacts {
  return {
    ...entry,
    scaleStepKg: entry.scaleStepKg ?? firstStepKg('kg'),
    mealsPerDay: entry.mealsPerDay ?? 2,
    // A line without its day or name is not told yet; saving names what it lacks.
    lamenessClearances: entry.lamenessClearances.filter(({ day }) => day !== ''),
    injuries: entry.injuries.filter(({ structure, day }) => structure !== '' && day !== ''),
    questionnaires: entry.questionnaires.flatMap(({ total, ...told }) =>
      total === null || told.day === '' ? [] : [{ ...told, total }],
    ),
    diet: entry.diet.flatMap((item) => {
      const { kcalPer100g, gramsPerDay } = item;
      if (kcalPer100g === null || gramsPerDay === null) return [];
      return [{ ...item, kcalPer100g, gramsPerDay, label: wholeLabel(item.label) }];
    }),
  };
}

/** True once a share was told; a label that was only looked at is none. */
export const hasShares = (label: LabelEntry | null): boolean =>
  label !== null && Object.values(label).some((share) => share !== null);

/** The label once all its shares are there. */
export function wholeLabel(label: LabelEntry | null): FoodLabel | null {
  if (label === null) return null;
  const { proteinPct, fatPct, fibrePct, moisturePct, ashPct } = label;
  if (
    proteinPct === null ||
    fatPct === null ||
    fibrePct === null ||
    moisturePct === null ||
    ashPct === null
  ) {
    return null;
  }
  return { proteinPct, fatPct, fibrePct, moisturePct, ashPct };
}

/** The plan request as it is sent; null when none is wanted or it is not complete yet. */
export function planRequestOf(plan: PlanEntry): PlanRequest | null {
  // The goal of running is asked for when running begins.
  const goal =
    goalOf(plan) ?? (plan.programme === 'walking' ? { continuousMinutes: DEFAULT_MINUTES } : null);
  if (!plan.wanted || goal === null || plan.startDay === '' || plan.sessionsPerWeek === null) {
    return null;
  }
  return {
    ...blankPlanRequest(plan.startDay, plan.start),
    programme: plan.programme,
    ...(plan.walkMinutesNow === null ? {} : { walkMinutesNow: plan.walkMinutesNow }),
    sessionsPerWeek: plan.sessionsPerWeek,
    goal,
    eventDay: plan.eventDay,
    capPercent: plan.capPercent,
    weekdays: plan.weekdays.length === WEEKDAYS.length ? null : [...plan.weekdays].sort(),
    daysOut: [...plan.daysOut],
    climbM: plan.climbM,
    ...(plan.ownerMinutes === null ? {} : { ownerMinutes: plan.ownerMinutes }),
    paceMinPerKm: plan.goalKind === 'minutes' ? plan.paceMinPerKm : null,
    // A plan towards an event ends with it.
    laterStages:
      plan.eventDay === null
        ? LATER_STAGES.filter((stage) => plan.laterStages.includes(stage))
        : [],
  };
}

/** The pace the owner runs at, whichever way the goal is given; null while there is none. */
export function paceOf(plan: PlanEntry): number | null {
  return plan.goalKind === 'minutes' ? plan.paceMinPerKm : plan.goal.paceMinPerKm;
}

function goalOf({ goalKind, goal }: PlanEntry): PlanRequest['goal'] | null {
  if (goalKind === 'minutes') {
    const { continuousMinutes } = goal;
    return continuousMinutes === null ? null : { continuousMinutes };
  }
  const { distanceKm, paceMinPerKm } = goal;
  return distanceKm === null || paceMinPerKm === null ? null : { distanceKm, paceMinPerKm };
}
