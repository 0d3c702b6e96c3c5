import { z } from 'zod';
import {
  SOURCES,
  type Breach,
  type ChangeoverCalendar,
  type Figure,
  type FoodProposal,
  type Ramp,
  type Ration,
  type RampRuleId,
  type RampRuleValues,
  type Reason,
  type RuleChanges,
  type RuleId,
  type SourceId,
} from '../../../core/index.ts';
import { BREACH_CODES } from '../../../core/ramp/editTypes.ts';
import { day } from '../fields.ts';
import type { FoodDecision, PlanReview } from '../results.ts';

// What core made and a record keeps as it stood. It is read back as it is, never computed anew; so
// a bundle is held against these shapes. Objects are loose: a later release may have kept more.

type Kept<T> = z.ZodType<T, T>;

/** What is declared of a type, alike for what core makes and for what a loose schema reads. */
type Declared<T> = T extends string | number | boolean | null
  ? T
  : T extends readonly (infer Item)[]
    ? Declared<Item>[]
    : {
        -readonly [K in keyof T as string extends K ? never : K]: Declared<
          Exclude<T[K], undefined>
        >;
      };

type Same<A, B> =
  (<X>() => X extends A ? 1 : 2) extends <X>() => X extends B ? 1 : 2 ? true : false;

/** The schema of what core makes as `T`. One that leaves a field out, or reads another, does not compile. */
const keeps =
  <T>() =>
  <S extends z.ZodType>(
    schema: S & (Same<Declared<z.output<S>>, Declared<T>> extends true ? unknown : never),
  ): Kept<T> =>
    schema as unknown as Kept<T>;

const LONGEST_TEXT = 5000;
const text = z.string().max(LONGEST_TEXT);
const date = day('A day');
const minutes = z.number().min(0).max(100_000);
const amount = z.number().min(-1e9).max(1e9);
const index = z.int().min(0).max(10_000);

const source = z.custom<SourceId>((id) => typeof id === 'string' && Object.hasOwn(SOURCES, id), {
  error: 'A source is not in the register of this program.',
});
/** Which rules there are changes from release to release: one that is not known is kept as it is. */
const ruleId = z.custom<RuleId>((id) => typeof id === 'string' && id.length <= 100);
const rampRuleId = ruleId as z.ZodType<RampRuleId>;
const ruleValues = z.record(z.string(), amount);
const provenance = {
  evidence: z.enum(['A', 'B', 'C', 'D']),
  mark: z.enum(['S', 'M', 'C', 'CP', 'D']),
  sources: z.array(source).max(50),
  rules: z.array(ruleId).max(100).optional(),
};

const reason = z.looseObject({
  ...provenance,
  code: text,
  text,
  said: text.optional(),
  params: z.record(z.string(), z.union([amount, text])),
  change: text.optional(),
});
const reasons = z.array(keeps<Reason>()(reason)).max(500);

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
const keptFigure = keeps<Figure>()(figure);

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
  rung: index.optional(),
  returning: z.boolean().optional(),
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
const recentRun = z.looseObject({
  day: date,
  minutes,
  response: z.enum(['clean', 'mild', 'setback', 'other']),
});
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
  rules: (ruleValues as z.ZodType<RuleChanges>).optional(),
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
      rung: index.optional(),
      lastRung: z.int().min(-1).max(10_000).optional(),
      returning: z.boolean().optional(),
      holdsFirst: z.boolean().optional(),
      lightWeekBefore: z.boolean().optional(),
      recent: z.array(recentRun).max(1000).optional(),
      reviewedOn: date,
    })
    .optional(),
});
const ramp = z.looseObject({
  request: rampRequest,
  version: index,
  rules: z.custom<RampRuleValues>((values) => ruleValues.safeParse(values).success),
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
  collisions: z.array(z.looseObject({ rules: z.array(rampRuleId).max(100), text })).max(100),
  reasons,
});
export const keptRamp = keeps<Ramp>()(ramp);

export const keptReview = keeps<PlanReview>()(z.looseObject({ decision: text, reasons }));

const breach = reason.extend({
  code: z.enum(BREACH_CODES),
  weekIndex: index,
  day: date.nullable(),
  gravity: z.enum(['breach', 'note']),
  keptBecause: text.nullable(),
});
export const keptBreaches = z.array(keeps<Breach>()(breach)).max(1000);

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
export const keptRation = keeps<Ration>()(ration);

const changeover = z.looseObject({
  ...provenance,
  oldFood: text,
  newFood: text,
  steps: z
    .array(z.looseObject({ day: date, newPercent: amount, oldGrams: amount, newGrams: amount }))
    .max(60),
});
export const keptChangeover = keeps<ChangeoverCalendar>()(changeover);

const reference = z.looseObject({
  label: text,
  kcalPerDay: amount,
  low: amount.optional(),
  high: amount.optional(),
  source,
});
const forecast = z.looseObject({
  kcalPerDay: amount,
  percentPerWeek: amount,
  low: amount,
  high: amount,
});
const proposal = z.looseObject({
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
  forecast: forecast.optional(),
});
export const keptProposal = keeps<FoodProposal>()(proposal);

const known = z.looseObject({
  weightKg: amount,
  targetWeightKg: amount,
  intakeKcal: amount,
  runningKcalPerDay: amount,
  maintenance: keptFigure,
  own: keptFigure,
  trend: keptFigure.nullable(),
});
export const keptKnown = keeps<FoodDecision['known']>()(known);
