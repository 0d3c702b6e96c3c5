/** The public face of the science. */
export * from './assess/assess.ts';
export {
  lastKnown,
  weighingsUpTo,
  weightCourse,
  type CourseInput,
  type CourseVisit,
} from './assess/course.ts';
export * from './assess/plannedWeeks.ts';
export * from './assess/planReview.ts';
export * from './assess/presentLine.ts';
export * from './assess/presentState.ts';
export { goalLimitsOf } from './assess/screening.ts';
export { nextWeighIn } from './assess/weighIn.ts';
export { rationByWeek, type WeekRation } from './assess/running.ts';
export { targetInForce, toldTarget, type TargetVisit } from './assess/target.ts';
export type * from './assess/types.ts';
export { askedSessions, unaskedDays, waitsFor } from './assess/unasked.ts';
export * from './check.ts';
export * from './chip.ts';
export * from './day.ts';
export * from './figure.ts';
export * from './nutrition.ts';
export type { EvidenceLevel, Mark, Origin } from './origin.ts';
export * from './practice/dogYear.ts';
export * from './practice/programmes.ts';
export * from './practice/share.ts';
export * from './practice/year.ts';
export * from './quantityText.ts';
export * from './sources.ts';
export { runAgainstPlan, type PlannedRuns, type RunAgainstPlan } from './track/match.ts';
export { trackOutings } from './track/outing.ts';
export type * from './track/types.ts';
export * from './training.ts';
export * from './units.ts';
