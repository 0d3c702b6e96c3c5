import { OWN } from '../origin.ts';
import { consentHolds } from './consent.ts';
import { found, type Found } from './reason.ts';
import type { Disease } from './record.ts';
import type { Gate, ScreeningInput } from './types.ts';

const DISEASES = [
  { organ: 'joints', code: 'disease-joints' },
  { organ: 'spine', code: 'disease-spine' },
  { organ: 'heart', code: 'disease-heart' },
] as const satisfies readonly { readonly organ: keyof Disease; readonly code: string }[];

/** With the consent of a named vet in force the work may go on, and the finding stays a note (D). */
const gateOf = (input: ScreeningInput): Gate => (consentHolds(input) ? 'note' : 'vet first');

/**
 * Disease of what running loads, earlier heat illness, lost muscle and medicine (all D: no study
 * says how far such a dog may run).
 */
export function knownReasons(input: ScreeningInput): Found[] {
  return [
    ...notAsked(input),
    ...diseaseReasons(input),
    ...heatIllnessReason(input),
    ...muscleReason(input),
    ...medicineReason(input),
  ];
}

/** What was told counts as asked for; silence does not. */
function isTold(input: ScreeningInput): boolean {
  const { surgery = 'none', injuries = [], disease = {}, medicine = '', heatIllness } = input;
  return (
    surgery !== 'none' ||
    injuries.length > 0 ||
    input.airwayDisease === true ||
    DISEASES.some(({ organ }) => disease[organ] === 'yes') ||
    (disease.words ?? '').trim() !== '' ||
    medicine.trim() !== '' ||
    heatIllness?.had === 'yes'
  );
}

function notAsked(input: ScreeningInput): Found[] {
  if (input.historyAsked !== false || isTold(input)) return [];
  const text = 'Surgery, injury, disease, medicine and heat illness have not been asked about.';
  const change = 'Ask the owner, and confirm that nothing is known or note what is.';
  return [found({ code: 'history-not-asked', gate: 'walking only', text, change }, OWN)];
}

function diseaseReasons(input: ScreeningInput): Found[] {
  const { disease = {} } = input;
  const words = (disease.words ?? '').trim().replace(/\.$/, '');
  return DISEASES.filter(({ organ }) => disease[organ] === 'yes').map(({ organ, code }) => {
    const text = `Disease of the ${organ} is known${words === '' ? '' : `: ${words}`}.`;
    const change = 'The treating vet, by name, consents to this work, and the consent is in force.';
    return found({ code, gate: gateOf(input), text, change }, OWN);
  });
}

function heatIllnessReason(input: ScreeningInput): Found[] {
  const { had, day } = input.heatIllness ?? {};
  if (had !== 'yes') return [];
  const when = day == null ? '' : `, on ${day}`;
  const text = `Heat illness before${when}: it may come back sooner.`;
  const change = 'The treating vet, by name, consents to this work, and the consent is in force.';
  return [found({ code: 'heat-illness', gate: gateOf(input), text, change }, OWN)];
}

function muscleReason({ muscle }: ScreeningInput): Found[] {
  if (muscle !== 'moderate loss' && muscle !== 'severe loss') return [];
  const text = `Muscle condition: ${muscle}.`;
  const change = 'The vet finds the cause, and the muscle comes back.';
  return [found({ code: 'muscle-lost', gate: 'vet first', text, change }, OWN)];
}

function medicineReason({ medicine = '' }: ScreeningInput): Found[] {
  const given = medicine.trim().replace(/\.$/, '');
  if (given === '') return [];
  const text = `Medicine: ${given}. It can hide pain or lameness, or change breath and heart.`;
  const change = 'Ask the treating vet what it means for running.';
  return [found({ code: 'medicine', gate: 'note', text, change }, OWN)];
}
