import { QUANTITIES } from './quantities.ts';
import { DOG } from './records/dog.ts';
import { numbersOf } from './records/fieldKinds.ts';
import { SESSION } from './records/session.ts';
import { VISIT } from './records/visit.ts';

export { limitSentence, wholeSentence, TEXT_LENGTH, type Limit } from './quantities.ts';

/**
 * What may be typed, by name: the numbers of the records and all others. The schemas at the
 * service's edge and the hints beside the form fields both read it.
 */
export const LIMITS = {
  ...QUANTITIES,
  ...numbersOf(DOG),
  ...numbersOf(VISIT),
  ...numbersOf(SESSION),
} as const;

export type LimitName = keyof typeof LIMITS;
