/** The public face of the science. */
export * from './assess/assess.ts';
export { weightCourse, type CourseInput, type CourseVisit } from './assess/course.ts';
export { rationByWeek, type WeekRation } from './assess/running.ts';
export type * from './assess/types.ts';
export * from './check.ts';
export * from './day.ts';
export * from './figure.ts';
export * from './nutrition.ts';
export * from './quantityText.ts';
export * from './sources.ts';
export * from './training.ts';
export * from './units.ts';
