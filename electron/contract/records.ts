import { z } from 'zod';
import { STOP_SIGNS } from '../../core/ramp/reviewTypes.ts';
import { address, choice, line, notes, quantity, requiredLine, later } from './fields.ts';
import { dietItemInput, foodSwitchInput } from './food/records.ts';
import { CLIENT } from './records/client.ts';
import { FOOD_DECISIONS } from './records/decided.ts';
import { DOG } from './records/dog.ts';
import type { ValuesOf } from './records/fieldKinds.ts';
import { inputOf } from './records/input.ts';
import {
  clearanceInput,
  footfallsInput,
  injuryInput,
  limbGradesInput,
  measurementInput,
  overrideInput,
  palpationInput,
  questionnaireInput,
} from './records/parts.ts';
import { SESSION } from './records/session.ts';
import type { KEPT } from './records/stored.ts';
import { VISIT } from './records/visit.ts';

export * from './food/records.ts';
export * from './records/planRequest.ts';
export type { Footfall, LimbGrades, Measurement } from './records/parts.ts';

// What the front end may send to be kept. A record as it is read back has what the service adds.

export const PAPERS = ['A4', 'LETTER'] as const;
export const DAY_FORMATS = ['YYYY-MM-DD', 'DD.MM.YYYY', 'DD/MM/YYYY', 'MM/DD/YYYY'] as const;

export const LANGUAGES = ['en', 'de', 'fr', 'es'] as const;
export type Language = (typeof LANGUAGES)[number];

export const HANDOUT_KINDS = [
  'running-plan',
  'feeding-sheet',
  'bowl-labels',
  'progress-report',
  'heat-card',
  'kit-sheet',
  'strength-sheet',
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

export const practiceInput = later(() =>
  z.object({
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
    language: choice('Language of the owner’s sheets', LANGUAGES),
    /** `#rrggbb`, or empty for the program's own. */
    accent: z
      .string({ error: 'Accent colour must be text.' })
      .toLowerCase()
      .regex(/^(#[0-9a-f]{6})?$/, {
        error: 'Accent colour must be written like #1f4b7a, or left empty.',
      }),
    footer: line('Line at the foot of every page'),
    intakeSheets: sheetList('Sheet after an intake'),
    followUpSheets: sheetList('Sheet after a follow-up'),
  }),
);
export type Practice = z.output<ReturnType<typeof practiceInput>>;

export const clientInput = later(() => inputOf(CLIENT, {}));
export type ClientInput = ValuesOf<typeof CLIENT>;
export type Client = ValuesOf<typeof KEPT.client>;

export const dogInput = later(() => inputOf(DOG, {}));
export type DogInput = ValuesOf<typeof DOG>;
export type Dog = ValuesOf<typeof KEPT.dog>;

/** The lists of a visit. */
export const visitParts = later(() => ({
  lamenessWalk: limbGradesInput(),
  lamenessTrot: limbGradesInput(),
  measurements: z.array(measurementInput()).max(100),
  footfalls: footfallsInput(),
  signs: z.array(requiredLine('Sign')).max(40),
  overrides: z.array(overrideInput()).max(40),
  diet: z.array(dietItemInput()).max(20),
  lamenessClearances: z.array(clearanceInput()).max(8),
  injuries: z.array(injuryInput()).max(20),
  palpation: palpationInput(),
  questionnaires: z.array(questionnaireInput()).max(6),
  exercises: z.array(requiredLine('Exercise')).max(12).nullable(),
}));
export const visitFacts = later(() => inputOf(VISIT, visitParts()));
export type VisitFacts = ValuesOf<typeof VISIT>;

/** The practitioner's answer to the food the program proposes at this visit. */
export const foodDecisionInput = later(() =>
  z.object({
    decision: choice('Decision on the food', FOOD_DECISIONS.decision.words),
    /**
     * The day's energy the practitioner settled on; with `accepted` the proposal as it was seen, which
     * the service holds its own against (null: not seen on a form). Null where declined.
     */
    kcalPerDay: quantity('kcalPerDay').nullable(),
    /** Only when a food itself changes. */
    foodSwitch: foodSwitchInput().nullable(),
    note: notes('Note on the decision'),
  }),
);
export type FoodDecisionInput = z.output<ReturnType<typeof foodDecisionInput>>;

export const sessionParts = later(() => ({
  signs: z.array(choice('Stop sign', STOP_SIGNS)).max(STOP_SIGNS.length),
}));
export const sessionInput = later(() => inputOf(SESSION, sessionParts()));
export type SessionInput = ValuesOf<typeof SESSION>;

/** A rule the practice changed, and why. */
export interface RuleChange {
  readonly ruleId: string;
  readonly value: number;
  readonly reason: string;
  readonly updatedAt: string;
}
