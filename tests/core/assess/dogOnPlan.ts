import fc from 'fast-check';
import { addDays } from '../../../core/day.ts';
import {
  buildRamp,
  presentState,
  type PresentDecision,
  type PresentInput,
  type PresentPlan,
  type RampRequest,
  type ToldResult,
} from '../../../core/index.ts';
import { grownDog, visit } from './visits.ts';

/** The first day of the plan: a Monday. */
export const DAY = '2026-03-02';
export const on = (days: number): string => addDays(DAY, days);

export const request: RampRequest = {
  startDay: DAY,
  start: 'unconditioned',
  sessionsPerWeek: 3,
  goal: { continuousMinutes: 10 },
};
export const ramp = buildRamp(request);
export const walks = buildRamp({
  ...request,
  programme: 'walking',
  goal: { continuousMinutes: 30 },
});
export const sessions = ramp.weeks.flatMap((week) => week.sessions);
export const lastDay = sessions.at(-1)!.day;

export const plan = (changes: Partial<PresentPlan> = {}): PresentPlan => ({
  version: 1,
  madeOn: DAY,
  ramp,
  current: true,
  visitId: 'visit-1',
  createdAt: `${DAY}T09:00:00Z`,
  review: null,
  ...changes,
});

export const told = (day: string, changes: Partial<ToldResult> = {}): ToldResult => ({
  day,
  outcome: 'done',
  runMinutes: null,
  nextDay: 'normal',
  signs: [],
  note: '',
  updatedAt: `${day}T18:00:00Z`,
  ...changes,
});

/** All sessions before a day, done and clean. */
export const doneBefore = (day: string): ToldResult[] =>
  sessions.filter((session) => session.day < day).map((session) => told(session.day));

/** The `count`th visit, of a dog at its weight. */
export const seen = (count: number, day: string, changes: Parameters<typeof visit>[2] = {}) => ({
  ...visit(day, 27, { kcal: 1100, ...changes }),
  id: `visit-${count}`,
});

export const decided = (
  decidedOn: string,
  visitId: string,
  kcalPerDay = 1100,
): PresentDecision => ({
  decidedOn,
  visitId,
  kcalPerDay,
  known: { runningKcalPerDay: 0 },
  proposal: { nextWeighInDay: addDays(decidedOn, 14) },
});

type Rest = Partial<PresentInput<PresentPlan, PresentDecision>['record']> &
  Partial<Pick<PresentInput<PresentPlan, PresentDecision>, 'plans' | 'results'>>;

/** Where a dog seen on the first day stands on `day`, on the plan and with nothing told. */
export function standing(day: string, { plans = [plan()], results = [], ...record }: Rest = {}) {
  const input = { dog: grownDog, visits: [seen(1, DAY)], foodDecisions: [], ...record, day };
  return presentState({ record: input, plans, results })!;
}

/** What may be told of the sessions of the plan; null: nothing. */
export const tellings = fc.array(
  fc.option(
    fc.record({
      outcome: fc.constantFrom<ToldResult['outcome']>('done', 'shortened', 'missed', 'held'),
      longestRunMinutes: fc.option(fc.integer({ min: 1, max: 12 })),
    }),
  ),
  { minLength: sessions.length, maxLength: sessions.length },
);
export const resultsOf = (list: readonly (Partial<ToldResult> | null)[]): ToldResult[] =>
  list.flatMap((each, index) => (each === null ? [] : [told(sessions[index]!.day, each)]));
