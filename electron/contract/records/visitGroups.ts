import { FOOD_KINDS, YES_NO } from '../../../core/readiness/record.ts';
import type { Fields } from './fieldKinds.ts';

// Fields of a visit that belong together.

/** What the vet agreed to. */
export const CONSENT = {
  given: { kind: 'flag', label: 'Consent of the vet', since: 1 },
  vet: { kind: 'text', label: 'Consent, vet', as: 'line', since: 1 },
  day: { kind: 'day', label: 'Consent, given on', nullable: true, since: 1 },
  scope: { kind: 'text', label: 'Consent, for what', as: 'line', since: 1 },
  expiryDay: { kind: 'day', label: 'Consent, ends on', nullable: true, since: 1 },
} as const satisfies Fields;

/** Known disease of what running loads; null where nobody asked. */
export const DISEASE = {
  joints: {
    kind: 'word',
    label: 'Disease of joints',
    words: YES_NO,
    nullable: true,
    since: 4,
  },
  spine: { kind: 'word', label: 'Disease of the spine', words: YES_NO, nullable: true, since: 4 },
  heart: { kind: 'word', label: 'Disease of the heart', words: YES_NO, nullable: true, since: 4 },
  words: { kind: 'text', label: 'Disease in words', as: 'line', since: 4 },
} as const satisfies Fields;

export const HEAT_ILLNESS = {
  had: { kind: 'word', label: 'Earlier heat illness', words: YES_NO, nullable: true, since: 4 },
  day: { kind: 'day', label: 'Day of the heat illness', nullable: true, since: 4 },
} as const satisfies Fields;

/** How the dog is fed at home, beside the foods themselves. */
export const FEEDING = {
  fedBy: { kind: 'text', label: 'Who feeds the dog', as: 'line', since: 4 },
  otherPets: { kind: 'word', label: 'Other pets', words: YES_NO, nullable: true, since: 4 },
  freeChoice: {
    kind: 'word',
    label: 'Food stands out all day',
    words: YES_NO,
    nullable: true,
    since: 4,
  },
  scavenges: { kind: 'word', label: 'Scavenges', words: YES_NO, nullable: true, since: 4 },
  extras: { kind: 'text', label: 'Table food and supplements', as: 'line', since: 4 },
  foodKind: { kind: 'word', label: 'Kind of food', words: FOOD_KINDS, nullable: true, since: 4 },
} as const satisfies Fields;
