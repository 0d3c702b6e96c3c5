import { PRACTICE } from '../origin.ts';
import { found, type Found } from './reason.ts';
import type { ScreeningInput } from './types.ts';

type Asked = Pick<ScreeningInput, 'consent' | 'day'>;
type Given = Asked & { readonly consent: NonNullable<Asked['consent']> };

const isLater = ({ consent, day }: Given): boolean =>
  day !== undefined && (consent.day ?? day) > day;

const isExpired = ({ consent, day }: Given): boolean =>
  day !== undefined && (consent.expiryDay ?? day) < day;

/**
 * True when a named vet's consent holds on the day: given, not dated later, not ended. An expiry
 * that cannot be compared, because the day is not known, does not hold.
 */
export function consentHolds({ consent, day }: Asked): boolean {
  if (consent?.given !== true || (consent.vet ?? '').trim() === '') return false;
  if (consent.expiryDay != null && day === undefined) return false;
  return !isLater({ consent, day }) && !isExpired({ consent, day });
}

/** True for a consent that holds and is a clearance on record: vet, day and what it covers (D). */
export function isRecordedClearance(asked: Asked): boolean {
  const { day, scope = '' } = asked.consent ?? {};
  return consentHolds(asked) && day != null && scope.trim() !== '';
}

/** Missing, incomplete, later or ended consent: notes, since local law decides (CP). */
export function consentReasons({ consent, day }: Asked): Found[] {
  if (consent?.given !== true) {
    const text =
      'No consent of the treating vet is recorded. In many countries it is required; local law decides.';
    const change = 'Record who consented, when, to what, and until when.';
    return [found({ code: 'consent-missing', gate: 'note', text, change }, PRACTICE)];
  }
  const asked = { consent, day };
  return [...later(asked), ...ended(asked), ...incomplete(asked)];
}

function later(asked: Given): Found[] {
  const { day } = asked.consent;
  if (day == null || !isLater(asked)) return [];
  const text = `The vet’s consent is dated ${day}, after this day: it does not count yet.`;
  const change = 'Correct the day, or wait for it.';
  const params = { day };
  return [found({ code: 'consent-later', gate: 'note', text, change, params }, PRACTICE)];
}

function ended(asked: Given): Found[] {
  const day = asked.consent.expiryDay;
  if (day == null || !isExpired(asked)) return [];
  const text = `The vet’s consent ended on ${day}.`;
  const change = 'Ask the vet to renew it.';
  const params = { day };
  return [found({ code: 'consent-expired', gate: 'note', text, change, params }, PRACTICE)];
}

function incomplete({ consent: { vet = '', day, scope = '' } }: Given): Found[] {
  const missing = [
    vet.trim() === '' ? 'the vet' : '',
    day == null ? 'the day' : '',
    scope.trim() === '' ? 'what it covers' : '',
  ].filter((part) => part !== '');
  if (missing.length === 0) return [];
  const text = `The consent is not complete: ${missing.join(', ')} not recorded.`;
  const change = 'Record who consented, when, and to what.';
  return [found({ code: 'consent-incomplete', gate: 'note', text, change }, PRACTICE)];
}
