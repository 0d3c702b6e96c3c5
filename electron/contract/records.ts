import { z } from 'zod';
import { JOINTS, MOVEMENTS } from '../../core/gait/types.ts';
import { NEXT_DAY_RESPONSES, SESSION_OUTCOMES, STOP_SIGNS } from '../../core/ramp/reviewTypes.ts';
import {
  address,
  choice,
  day,
  flag,
  id,
  line,
  notes,
  quantity,
  requiredLine,
  whole,
} from './fields.ts';
import { dietItemInput } from './foodRecords.ts';

export * from './foodRecords.ts';

// What the front end may send to be kept. A record as it is read back is its input plus `Stored`.

/** What the service adds to a record it keeps. Times are UTC instants in ISO text. */
export interface Stored {
  readonly id: string;
  readonly createdAt: string;
  readonly updatedAt: string;
}

/** A record whose changes are counted: a save names the revision it was read at. */
export interface Revised extends Stored {
  readonly revision: number;
}

export const SEXES = ['female', 'male'] as const;
export const NEUTER_STATES = ['intact', 'neutered', 'unknown'] as const;
export const COATS = ['ordinary', 'thick', 'dark', 'thick and dark'] as const;
export const VISIT_KINDS = ['intake', 'follow-up'] as const;
export const MUSCLE_CONDITIONS = ['normal', 'mild loss', 'moderate loss', 'severe loss'] as const;
export const LIMBS = ['leftFore', 'rightFore', 'leftHind', 'rightHind'] as const;
export const WEIGHING_METHODS = ['same scale', 'other scale', 'harness on', 'wet coat'] as const;
export const ACTIVITIES = ['low', 'moderate', 'high', 'working'] as const;
export const STARTS = ['conditioned', 'unconditioned', 'post-injury'] as const;
export const WALK_BASES = ['passed', 'failed', 'not tested'] as const;
export const FOOD_GOALS = ['lose', 'hold', 'gain'] as const;
export const SURGERY_STATES = ['none', 'cleared in writing', 'not cleared'] as const;
export const PAPERS = ['A4', 'LETTER'] as const;
export const DAY_FORMATS = ['YYYY-MM-DD', 'DD.MM.YYYY', 'DD/MM/YYYY', 'MM/DD/YYYY'] as const;

export const LANGUAGES = ['en', 'de', 'fr', 'es'] as const;
export type Language = (typeof LANGUAGES)[number];

export const HANDOUT_KINDS = [
  'running-plan',
  'feeding-sheet',
  'progress-report',
  'heat-card',
  'kit-sheet',
  'vet-letter',
  'assessment-record',
] as const;
export type HandoutKind = (typeof HANDOUT_KINDS)[number];

/** The sheets of one bundle, in the order they are printed. */
export const sheetList = (label: string) =>
  z.array(choice(label, HANDOUT_KINDS)).max(HANDOUT_KINDS.length);

/** A checked logo: base64 for PNG and JPEG, markup for SVG. */
export interface PracticeLogo {
  readonly mediaType: 'image/png' | 'image/jpeg' | 'image/svg+xml';
  readonly data: string;
}

export const practiceInput = z.object({
  name: requiredLine('Name of the practice'),
  practitioner: line('Name of the practitioner'),
  address: address('Address'),
  phone: line('Phone'),
  email: line('E-mail'),
  registration: address('Registration text'),
  weightUnit: choice('Unit of weight', ['kg', 'lb']),
  energyUnit: choice('Unit of energy', ['kcal', 'kJ']),
  distanceUnit: choice('Unit of distance', ['km', 'mi']),
  temperatureUnit: choice('Unit of temperature', ['C', 'F']),
  paper: choice('Paper size', PAPERS),
  dayFormat: choice('Format of days', DAY_FORMATS),
  language: choice("Language of the owner's sheets", LANGUAGES),
  /** `#rrggbb`, or empty for the program's own. */
  accent: z
    .string({ error: 'Accent colour must be text.' })
    .toLowerCase()
    .regex(/^(#[0-9a-f]{6})?$/, { error: 'Accent colour must be written #rrggbb, or left empty.' }),
  footer: line('Line at the foot of every page'),
  intakeSheets: sheetList('Sheet after an intake'),
  followUpSheets: sheetList('Sheet after a follow-up'),
});
export type Practice = z.output<typeof practiceInput>;

export const clientInput = z.object({
  name: requiredLine('Name of the owner'),
  phone: line('Phone'),
  email: line('E-mail'),
  address: address('Address'),
  vetPractice: line('Vet practice'),
  vetName: line('Name of the vet'),
  vetContact: line('Contact of the vet'),
  notes: notes('Notes on the owner'),
});
export type ClientInput = z.output<typeof clientInput>;
export type Client = ClientInput & Revised;

export const dogInput = z.object({
  clientId: id('The owner'),
  name: requiredLine('Name of the dog'),
  breed: line('Breed'),
  sex: choice('Sex', SEXES),
  neuter: choice('Neuter status', NEUTER_STATES),
  neuteredAtMonths: quantity('neuteredAtMonths').nullable(),
  birthDay: day('Day of birth'),
  adultWeightKg: quantity('adultWeightKg').nullable(),
  withersCm: quantity('withersCm').nullable(),
  coat: choice('Coat', COATS),
  shortNosed: flag('Short-nosed'),
  sighthound: flag('Sighthound build'),
  notes: notes('Notes on the dog'),
});
export type DogInput = z.output<typeof dogInput>;
export type Dog = DogInput &
  Revised & {
    /** When the dog was put away, its record kept; null while it is seen. */
    readonly archivedAt: string | null;
  };

/** One measurement on a limb: a joint angle in degrees, thigh girth in cm, standing weight in kg. */
export const measurementInput = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('joint angle'),
    limb: choice('Limb', LIMBS),
    joint: choice('Joint', JOINTS),
    movement: choice('Movement', MOVEMENTS),
    value: quantity('jointAngle'),
    note: line('Note on the measurement'),
  }),
  z.object({
    kind: z.literal('thigh girth'),
    limb: choice('Limb', LIMBS),
    value: quantity('girthCm'),
    note: line('Note on the measurement'),
  }),
  z.object({
    kind: z.literal('standing weight'),
    limb: choice('Limb', LIMBS),
    value: quantity('standingKg'),
    note: line('Note on the measurement'),
  }),
]);
export type Measurement = z.output<typeof measurementInput>;

/** Times of touch-down and lift-off of one limb, seconds from any start, in order. */
export const footfallInput = z.object({
  limb: choice('Limb', LIMBS),
  touchDowns: z.array(quantity('footfallSeconds')).max(500),
  liftOffs: z.array(quantity('footfallSeconds')).max(500),
});
export type Footfall = z.output<typeof footfallInput>;

const grade = whole('lameness').nullable();
const limbGrades = z.object({
  leftFore: grade,
  rightFore: grade,
  leftHind: grade,
  rightHind: grade,
});
/** Lameness 0–5 per limb; null = not looked at. */
export type LimbGrades = z.output<typeof limbGrades>;

export const consentInput = z.object({
  given: flag('Consent of the vet'),
  vet: line('Vet who consented'),
  day: day('Day of the consent').nullable(),
  scope: line('Scope of the consent'),
  expiryDay: day('Day the consent ends').nullable(),
});
export type VetConsent = z.output<typeof consentInput>;

export const overrideInput = z.object({
  code: requiredLine('Rule'),
  reason: requiredLine('Reason for overriding a rule'),
});
export type Override = z.output<typeof overrideInput>;

/** What the practitioner saw, measured and was told. */
export const visitFacts = z.object({
  dogId: id('The dog'),
  kind: choice('Kind of visit', VISIT_KINDS),
  day: day('Day of the visit'),
  weightKg: quantity('weightKg').nullable(),
  weighingMethod: choice('How the dog was weighed', WEIGHING_METHODS),
  scaleStepKg: quantity('scaleStepKg'),
  bcs: whole('bcs').nullable(),
  muscle: choice('Muscle condition', MUSCLE_CONDITIONS).nullable(),
  lamenessWalk: limbGrades,
  lamenessTrot: limbGrades,
  /** A vet has assessed the lameness seen at trot. */
  trotLamenessAssessed: flag('Lameness at trot assessed by a vet'),
  gaitNote: notes('Gait note'),
  measurements: z.array(measurementInput).max(100),
  footfalls: z
    .array(footfallInput)
    .max(4)
    .refine((timed) => new Set(timed.map(({ limb }) => limb)).size === timed.length, {
      error: 'Each limb can be timed once a visit.',
    }),
  signs: z.array(requiredLine('Sign')).max(40),
  surgery: choice('Surgery', SURGERY_STATES),
  airwayDisease: flag('Airway disease'),
  airwayClearance: flag('Written clearance for short nose or airways'),
  radiographicClearance: flag('Growth plates closed on radiographs'),
  conditioning: choice('Starting condition', STARTS),
  walkBase: choice('Walk base', WALK_BASES),
  activity: choice('Daily activity', ACTIVITIES),
  consent: consentInput,
  overrides: z.array(overrideInput).max(40),
  targetWeightKg: quantity('targetWeightKg').nullable(),
  foodGoal: choice('Aim of feeding', FOOD_GOALS),
  mealsPerDay: whole('mealsPerDay'),
  weightLossDiet: flag('Complete diet made for weight loss'),
  diet: z.array(dietItemInput).max(20),
  notes: notes('Notes on the visit'),
});
export type VisitFacts = z.output<typeof visitFacts>;

export const goalInput = z.union([
  z.object({ continuousMinutes: quantity('continuousMinutes') }),
  z.object({ distanceKm: quantity('distanceKm'), paceMinPerKm: quantity('paceMinPerKm') }),
]);

export const LATER_STAGES = ['pull', 'hills', 'speed'] as const;

/** What the practitioner asks of the plan; the service has `core` build the ramp from it. */
export const planRequest = z.object({
  startDay: day('First day of the plan'),
  start: choice('Starting level', STARTS),
  sessionsPerWeek: whole('sessionsPerWeek'),
  goal: goalInput,
  eventDay: day('Day of the event').nullable(),
  capPercent: quantity('capPercent').nullable(),
  /** Days of the week the owner can run, Monday = 0; null for any. */
  weekdays: z
    .array(z.literal([0, 1, 2, 3, 4, 5, 6]))
    .max(7)
    .nullable(),
  /** Days without running: holidays, away. */
  daysOut: z.array(day('Day without running')).max(400),
  /** Climb of each outing, m. */
  climbM: quantity('climbM').nullable(),
  /** The owner's pace, where the goal is in minutes. */
  paceMinPerKm: quantity('paceMinPerKm').nullable(),
  /** What is added after the goal, one change at a time. */
  laterStages: z.array(choice('Later stage', LATER_STAGES)).max(3),
});
export type PlanRequest = z.output<typeof planRequest>;

/** What the owner tells of one planned session; one record a day. */
export const sessionInput = z.object({
  day: day('Day of the session'),
  outcome: choice('Outcome of the session', SESSION_OUTCOMES),
  runMinutes: quantity('runMinutes').nullable(),
  nextDay: choice('Response on the next day', NEXT_DAY_RESPONSES).nullable(),
  signs: z.array(choice('Stop sign', STOP_SIGNS)).max(STOP_SIGNS.length),
  note: notes('Note on the session'),
});
export type SessionInput = z.output<typeof sessionInput>;

/** A rule the practice changed, and why. */
export interface RuleChange {
  readonly ruleId: string;
  readonly value: number;
  readonly reason: string;
  readonly updatedAt: string;
}
