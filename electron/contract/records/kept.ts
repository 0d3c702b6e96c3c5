import { z } from 'zod';
import {
  SOURCES,
  type Breach,
  type ChangeoverCalendar,
  type Figure,
  type FoodProposal,
  type Ramp,
  type Ration,
  type Reason,
  type SourceId,
} from '../../../core/index.ts';
import { BREACH_CODES } from '../../../core/ramp/editTypes.ts';
import { day } from '../fields.ts';
import type { FoodDecision, PlanReview } from '../results.ts';

// What core made and a record keeps as it stood. It is read back as it is, never computed anew; so
// a bundle is held against these shapes. Objects are loose: a later release may have kept more.

type Kept<T> = z.ZodType<T, T>;

const LONGEST_TEXT = 5000;
const text = z.string().max(LONGEST_TEXT);
const date = day('A day');
const minutes = z.number().min(0).max(100_000);
const amount = z.number().min(-1e9).max(1e9);
const index = z.int().min(0).max(10_000);

const source = z.custom<SourceId>((id) => typeof id === 'string' && Object.hasOwn(SOURCES, id), {
  error: 'A source is not in the register of this program.',
});
const provenance = {
  evidence: z.enum(['A', 'B', 'C', 'D']),
  mark: z.enum(['S', 'M', 'C', 'CP', 'D']),
  sources: z.array(source).max(50),
};

const reason = z.looseObject({
  ...provenance,
  code: text,
  text,
  said: text.optional(),
  params: z.record(z.string(), z.union([amount, text])),
  change: text.optional(),
});
const keptReason = reason as unknown as Kept<Reason>;
const reasons = z.array(keptReason).max(500);

const figure = z.looseObject({
  ...provenance,
  id: text,
  label: text,
  value: amount,
  unit: text,
  low: amount.optional(),
  high: amount.optional(),
  rangeMeaning: text.optional(),
  formula: text,
  inputs: z
    .array(z.looseObject({ label: text, value: z.union([amount, text]), unit: text }))
    .max(200),
  notes: z.array(text).max(50),
});
const keptFigure = figure as unknown as Kept<Figure>;

const stage = z.enum(['time', 'pull', 'hills', 'speed']);
const focus = z.enum(['pull', 'hills', 'speed']).nullable();
const session = z.looseObject({
  day: date,
  kind: z.enum(['bouts', 'continuous', 'walk']),
  repeats: index,
  runMin: minutes,
  walkMin: minutes,
  runMinutes: minutes,
  effort: z.enum(['easy', 'medium', 'long']),
  surface: z.enum(['soft-flat', 'soft-trail', 'soft-hilly']),
  focus,
  dose: z.looseObject({ times: index, seconds: amount }).optional(),
  warmUpMin: minutes,
  coolDownMin: minutes,
  distanceKm: amount.nullable(),
  edited: z.boolean().optional(),
});
const week = z.looseObject({
  number: index,
  startDay: date,
  recovery: z.boolean(),
  easyBeforeEvent: z.boolean(),
  stage,
  step: text,
  stepIndex: index,
  capMinutes: minutes,
  runMinutes: minutes,
  sessions: z.array(session).max(7),
  paceSetBy: z.enum(['dog', 'owner', 'both']).optional(),
  edited: z.boolean().optional(),
});
const goal = z.union([
  z.looseObject({ continuousMinutes: minutes }),
  z.looseObject({ distanceKm: amount, paceMinPerKm: amount }),
]);
const rampRequest = z.looseObject({
  programme: z.enum(['walking', 'running']).optional(),
  startDay: date,
  start: z.enum(['conditioned', 'unconditioned', 'post-injury']),
  sessionsPerWeek: z.int().min(1).max(7),
  goal,
  eventDay: date.optional(),
  capPercent: amount.optional(),
  weekdays: z.array(z.literal([0, 1, 2, 3, 4, 5, 6])).optional(),
  notBeforeDay: date.optional(),
  daysOut: z.array(date).max(1000).optional(),
  paceMinPerKm: amount.optional(),
  ownerMinutes: minutes.optional(),
  walkMinutesNow: minutes.optional(),
  laterStages: z.array(z.enum(['pull', 'hills', 'speed'])).optional(),
  rules: z.record(z.string(), amount).optional(),
  resume: z
    .looseObject({
      weekNumber: index,
      peakMinutes: minutes,
      previousMinutes: minutes,
      stepIndex: index,
      sessionsOnStep: index,
      longestMinutes: minutes,
      fullestMinutes: minutes.optional(),
      lastRunDay: date.nullable(),
      firstWeekMinutes: minutes.nullable(),
      reviewedOn: date,
    })
    .optional(),
});
const ramp = z.looseObject({
  request: rampRequest,
  version: index,
  rules: z.record(z.string(), amount),
  capPercent: amount,
  weeks: z.array(week).max(1000),
  stages: z
    .array(z.looseObject({ id: stage, fromDay: date, untilDay: date.nullable(), text }))
    .max(10),
  goalReachedOn: date.nullable(),
  earliestGoalDay: date.nullable(),
  earliestEventDay: date.nullable(),
  withinReach: z
    .looseObject({
      continuousMinutes: minutes,
      distanceKm: amount.nullable(),
      sessionMinutes: minutes,
      sessionKm: amount.nullable(),
    })
    .nullable(),
  collisions: z.array(z.looseObject({ rules: z.array(text).max(100), text })).max(100),
  reasons,
});
export const keptRamp = ramp as unknown as Kept<Ramp>;

export const keptReview = z.looseObject({
  decision: text,
  reasons,
}) as unknown as Kept<PlanReview>;

const breach = reason.extend({
  code: z.enum(BREACH_CODES),
  weekIndex: index,
  day: date.nullable(),
  gravity: z.enum(['breach', 'note']),
  keptBecause: text.nullable(),
});
export const keptBreaches = z.array(breach).max(1000) as unknown as Kept<readonly Breach[]>;

const ration = z.looseObject({
  kcalPerDay: amount,
  mealsPerDay: z.int().min(1).max(20),
  items: z
    .array(
      z.looseObject({
        name: text,
        treat: z.boolean(),
        fixedGrams: z.boolean(),
        kcalPer100g: amount,
        gramsPerDay: amount,
        gramsPerMeal: amount,
        kcalPerDay: amount,
        cupsPerDay: amount.nullable(),
      }),
    )
    .max(50),
  treatAllowanceKcal: amount,
  treatKcal: amount,
});
export const keptRation = ration as unknown as Kept<Ration>;

export const keptChangeover = z.looseObject({
  ...provenance,
  oldFood: text,
  newFood: text,
  steps: z
    .array(z.looseObject({ day: date, newPercent: amount, oldGrams: amount, newGrams: amount }))
    .max(60),
}) as unknown as Kept<ChangeoverCalendar>;

const reference = z.looseObject({
  label: text,
  kcalPerDay: amount,
  low: amount.optional(),
  high: amount.optional(),
  source,
});
export const keptProposal = z.looseObject({
  verdict: z.enum(['start', 'change', 'keep', 'wait', 'refer']),
  kcalPerDay: amount.nullable(),
  ration: ration.nullable(),
  treatAllowanceKcal: amount.nullable(),
  reasons,
  warnings: reasons,
  referral: text.nullable(),
  waitingFor: text.nullable(),
  nextWeighInDay: date,
  references: z.array(reference).max(50),
  figure: figure.nullable(),
}) as unknown as Kept<FoodProposal>;

export const keptKnown = z.looseObject({
  weightKg: amount,
  targetWeightKg: amount,
  intakeKcal: amount,
  runningKcalPerDay: amount,
  maintenance: keptFigure,
  own: keptFigure,
  trend: keptFigure.nullable(),
}) as unknown as Kept<FoodDecision['known']>;
