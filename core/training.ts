export * from './ramp/build.ts';
export * from './ramp/path.ts';
export type * from './ramp/types.ts';
export * from './readiness/age.ts';
export * from './readiness/screen.ts';
export * from './readiness/signs.ts';
export type * from './readiness/types.ts';
export * from './rules/ramp.ts';
