import type { Provenance } from '../figure.ts';
import { from, OWN, PRACTICE } from '../origin.ts';
import { found, type Found } from './reason.ts';
import { RED_FLAGS, type RedFlag } from './signs.ts';
import type { ScreeningInput } from './types.ts';

const SHORT_NOSED: Provenance = from('A', 'S', 'vetCompass');

const codeOf = (id: RedFlag): string => `sign-${id}`;
const EMERGENCY_CODES: readonly string[] = RED_FLAGS.filter(({ emergency }) => emergency).map(
  ({ id }) => codeOf(id),
);

/** True for the code of a sign that can be an emergency. */
export function isEmergency(code: string): boolean {
  return EMERGENCY_CODES.includes(code);
}

/** Warning signs (CP), and the note that nobody asked for them (D). */
export function signReasons({ signs }: ScreeningInput): Found[] {
  if (signs === undefined) {
    const text = 'The warning signs have not been asked about.';
    const change = 'Go through the list of signs with the owner.';
    return [found({ code: 'signs-not-asked', gate: 'walking only', text, change }, OWN)];
  }
  return RED_FLAGS.filter(({ id }) => signs.includes(id)).map(({ id, label, emergency }) => {
    const change = emergency
      ? 'This can be an emergency: call the vet now. It can only be set aside with a consent in force that names the vet, its day and what it covers.'
      : 'The vet examines the dog and clears it in writing.';
    return found({ code: codeOf(id), gate: 'vet first', text: `${label}.`, change }, PRACTICE);
  });
}

/** Breathing that limits cooling, without the vet's written clearance (CP; S). */
export function airwayReasons({
  shortNosed,
  airwayDisease,
  airwayClearance,
}: ScreeningInput): Found[] {
  if ((shortNosed !== true && airwayDisease !== true) || airwayClearance === true) return [];
  const text =
    shortNosed === true
      ? 'Short-nosed: more than twice the odds of heat illness.'
      : 'Airway disease: breathing limits cooling.';
  const change =
    'The vet clears the dog for running in writing. Consent to other work does not count.';
  const provenance = shortNosed === true ? SHORT_NOSED : PRACTICE;
  return [found({ code: 'airway', gate: 'vet first', text, change }, provenance)];
}
