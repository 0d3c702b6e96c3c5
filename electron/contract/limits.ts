import { marked } from '../../core/quantityText.ts';
import { DOG } from './records/dog.ts';
import { numbersOf } from './records/fieldKinds.ts';
import { limitSentence, QUANTITIES, wholeSentence, type Limit } from './records/quantities.ts';
import { SESSION } from './records/session.ts';
import { VISIT } from './records/visit.ts';

export * from './records/quantities.ts';

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

const MARKED = new Map(
  Object.values<Limit>(LIMITS).flatMap((limit) =>
    [limitSentence, wholeSentence].map((says) => [says(limit), says(limit, marked)] as const),
  ),
);

/** The sentence of a limit with its amounts marked; any other as it is. */
export const markedRefusal = (message: string): string => MARKED.get(message) ?? message;
