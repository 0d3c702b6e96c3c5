import { FOOD_KINDS } from '../../../core/readiness/record.ts';
import { yesOrNo, type Fields } from './fieldKinds.ts';

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
  joints: yesOrNo('Disease of joints', 4),
  spine: yesOrNo('Disease of the spine', 4),
  heart: yesOrNo('Disease of the heart', 4),
  words: { kind: 'text', label: 'Disease in words', as: 'line', since: 4 },
} as const satisfies Fields;

export const HEAT_ILLNESS = {
  had: yesOrNo('Earlier heat illness', 4),
  day: { kind: 'day', label: 'Day of the heat illness', nullable: true, since: 4 },
} as const satisfies Fields;

/** How the dog is fed at home, beside the foods themselves. */
export const FEEDING = {
  fedBy: { kind: 'text', label: 'Who feeds the dog', as: 'line', since: 4 },
  otherPets: yesOrNo('Other pets', 4),
  freeChoice: yesOrNo('Food stands out all day', 4),
  scavenges: yesOrNo('Scavenges', 4),
  extras: { kind: 'text', label: 'Table food and supplements', as: 'line', since: 4 },
  foodKind: { kind: 'word', label: 'Kind of food', words: FOOD_KINDS, nullable: true, since: 4 },
} as const satisfies Fields;
