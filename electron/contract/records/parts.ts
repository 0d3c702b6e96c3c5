import { z } from 'zod';
import { JOINTS, MOVEMENTS } from '../../../core/gait/types.ts';
import { LIMBS } from '../../../core/readiness/types.ts';
import {
  GAITS,
  INJURY_KINDS,
  SIDES,
  type PalpationRegion,
} from '../../../core/readiness/record.ts';
import { choice, day, line, quantity, requiredLine, later, whole } from '../fields.ts';

// The lists of a visit, each with its own schema.

/** One measurement on a limb: a joint angle in degrees, thigh girth in cm, standing weight in kg. */
export const measurementInput = later(() =>
  z.discriminatedUnion('kind', [
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
  ]),
);
export type Measurement = z.output<ReturnType<typeof measurementInput>>;

/** Times of touch-down and lift-off of one limb, seconds from any start, in order. */
const footfallInput = later(() =>
  z.object({
    limb: choice('Limb', LIMBS),
    touchDowns: z.array(quantity('footfallSeconds')).max(500),
    liftOffs: z.array(quantity('footfallSeconds')).max(500),
  }),
);
export type Footfall = z.output<ReturnType<typeof footfallInput>>;

const grade = whole('lameness').nullable();
export const limbGradesInput = later(() =>
  z.object({
    leftFore: grade,
    rightFore: grade,
    leftHind: grade,
    rightHind: grade,
  }),
);
/** Lameness 0–5 per limb; null = not looked at. */
export type LimbGrades = z.output<ReturnType<typeof limbGradesInput>>;

export const overrideInput = later(() =>
  z.object({
    code: requiredLine('Rule'),
    reason: requiredLine('Reason for overriding a rule'),
  }),
);
export type Override = z.output<ReturnType<typeof overrideInput>>;

export const footfallsInput = later(() =>
  z
    .array(footfallInput())
    .max(4)
    .refine((timed) => new Set(timed.map(({ limb }) => limb)).size === timed.length, {
      error: 'Each limb can be timed once a visit.',
    }),
);

/** A vet saw a lameness and cleared the dog for work with it. */
export const clearanceInput = later(() =>
  z.object({
    vet: requiredLine('Vet who cleared the lameness'),
    day: day('Day of the clearance'),
    gait: choice('Gait', GAITS),
    limb: choice('Limb', LIMBS),
    grade: whole('lameness'),
    scope: line('What the dog was cleared for'),
  }),
);
export type Clearance = z.output<ReturnType<typeof clearanceInput>>;

export const injuryInput = later(() =>
  z.object({
    kind: choice('Injury or surgery', INJURY_KINDS),
    structure: requiredLine('Structure injured or operated on'),
    side: choice('Side', SIDES),
    day: day('Day of the injury or surgery').nullable(),
    done: line('What was done'),
  }),
);
export type InjuryEntry = z.output<ReturnType<typeof injuryInput>>;

const pain = whole('palpation').nullable();
export const palpationInput = later(() =>
  z.object({
    neck: pain,
    back: pain,
    'loin and pelvis': pain,
    'left fore': pain,
    'right fore': pain,
    'left hind': pain,
    'right hind': pain,
  } satisfies Record<PalpationRegion, typeof pain>),
);
/** Pain on palpation 0–4 by region; null = not pressed. */
export type PalpationGrades = z.output<ReturnType<typeof palpationInput>>;

export const questionnaireInput = later(() =>
  z.object({
    name: requiredLine('Name of the questionnaire'),
    day: day('Day of the questionnaire'),
    total: whole('questionnaireTotal'),
  }),
);
export type Questionnaire = z.output<ReturnType<typeof questionnaireInput>>;
