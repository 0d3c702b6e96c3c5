import type { Begun } from './blank.ts';
import type { Fields } from './fieldKinds.ts';
import { FOOD, HISTORY, NOTES, PLAN } from './visitAsked.ts';
import { GAIT, SIGNS, WEIGHT, WHY } from './visitSeen.ts';

/** What the practitioner saw, measured and was told at a visit, in the parts of its form. */
export const VISIT_PARTS = {
  why: WHY,
  weight: WEIGHT,
  gait: GAIT,
  signs: SIGNS,
  history: HISTORY,
  plan: PLAN,
  food: FOOD,
  notes: NOTES,
} as const satisfies Readonly<Record<string, Fields>>;
export type VisitPart = keyof typeof VISIT_PARTS;

export const VISIT = {
  dogId: { kind: 'id', label: 'The dog', fixed: true, since: 1 },
  ...WHY,
  ...WEIGHT,
  ...GAIT,
  ...SIGNS,
  ...HISTORY,
  ...PLAN,
  ...FOOD,
  ...NOTES,
} as const satisfies Fields & Begun<Fields>;
