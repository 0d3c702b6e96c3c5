import type { Provenance } from '../figure.ts';
import { from, OWN, PRACTICE } from '../origin.ts';
import { saying, type Saying } from '../quantityText.ts';

/** A paragraph for screens and handouts. `code` is stable: wording files translate it. */
export interface CareText extends Provenance, Saying {
  readonly code: string;
}

const coolFirst: Provenance = from('A', 'S', 'heatFirstAid');

/** Heat illness: printed on every running handout. */
export const HEAT_FIRST_AID: readonly CareText[] = [
  {
    code: 'heat-stop',
    text: 'Heavy panting that does not ease, a wide dark tongue, staggering, vomiting or collapse: stop at once. This is an emergency.',
    ...PRACTICE,
  },
  {
    code: 'heat-cool-first',
    text: 'Cool first, transport second: begin to cool where you are, then drive to the vet.',
    ...coolFirst,
  },
  {
    code: 'heat-immersion',
    text: 'A young, healthy dog: put it into water up to the neck, and hold its head up.',
    ...coolFirst,
  },
  {
    code: 'heat-evaporation',
    text: 'An old or ill dog: pour water over the whole body, and keep air moving over it.',
    ...coolFirst,
  },
  {
    code: 'heat-vet',
    text: 'Call the vet on the way, even if the dog seems well again.',
    ...PRACTICE,
  },
];

/** Hot ground. */
export const HOT_GROUND: readonly CareText[] = [
  {
    code: 'hot-ground',
    ...saying(
      'In the sun asphalt is far hotter than the air: about {52 °C} at {25 °C} air, about {57 °C} at {30 °C}.',
    ),
    ...from('C', 'S', 'berens1970'),
  },
  {
    code: 'hand-test',
    text: 'Hold the back of your hand on the ground. If you cannot keep it there, neither can the paws.',
    ...PRACTICE,
  },
  {
    code: 'early-or-late',
    text: 'In summer run early or late, carry water, and offer it every 15 to 20 minutes.',
    ...PRACTICE,
  },
];

/** Cold; the bands of the dog stand apart. */
export const COLD: readonly CareText[] = [
  {
    code: 'cold-no-limit',
    text: 'No limit from research was found for running in the cold; ours are cautious choices.',
    ...PRACTICE,
  },
  {
    code: 'cold-ice',
    text: 'No running on ice.',
    ...OWN,
  },
  {
    code: 'cold-boots',
    text: 'Boots only in extreme conditions: the claws give grip.',
    ...PRACTICE,
  },
];

/** Why the bands are lower than the limits of some sport rules. */
export const SPORT_LIMIT_NOTE: CareText = {
  code: 'sport-limits',
  ...saying(
    'Sport rules for fit racing dogs are quoted as allowing up to about {25 °C} (second hand). A pet that is being built up is no racing dog, so our bands are lower.',
  ),
  ...from('C', 'S', 'raceLimits'),
};
